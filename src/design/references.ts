import { keptBy } from '../list/keptBy.ts';
import { inSlot, slotsOf } from './rule/table.ts';
import type { Rule } from './schema.ts';

/** What a rule is about: `follow` take their place from `lead`, unless something stronger holds them. */
export interface Mentions {
  readonly lead: readonly string[];
  readonly follow: readonly string[];
}

/** What a rule names, in the order of its fields: face, levels, parts and members of arrays. */
export const mentionsOf = keptBy((rule: Rule): Mentions => {
  const lead: string[] = [];
  const follow: string[] = [];
  for (const slot of slotsOf(rule)) {
    if (slot.is === 'edge') (slot.role === 'lead' ? lead : follow).push(inSlot(rule, slot).of);
    else if (slot.is === 'part') (slot.role === 'lead' ? lead : follow).push(inSlot(rule, slot));
    else if (slot.is === 'thing') lead.push(inSlot(rule, slot));
    else if (slot.is === 'parts') {
      const [first, ...more] = inSlot(rule, slot);
      if (first !== undefined) (slot.role === 'share' ? lead : follow).push(first);
      follow.push(...more);
    }
  }
  return { lead, follow };
});

/** Parts that a rule lists by id: it moves, sizes or copies them. */
export const partsListedBy = (rule: Rule): readonly string[] =>
  slotsOf(rule).flatMap((slot) =>
    slot.is === 'part' ? [inSlot(rule, slot)] : slot.is === 'parts' ? inSlot(rule, slot) : [],
  );

/** The part a reference names, if it names one: `p1` and `p1[2,0]` name `p1`; `face` and `level:rim` none. */
export function partOfReference(of: string): readonly string[] {
  if (of === 'face' || of.startsWith('level:')) return [];
  const bracket = of.indexOf('[');
  return [bracket < 0 ? of : of.slice(0, bracket)];
}

/** Every part that a rule has to do with, each once: those that it lists first. */
export const partsOfRule = keptBy((rule: Rule): readonly string[] => {
  const named = slotsOf(rule).flatMap((slot) =>
    slot.is === 'thing' ? [inSlot(rule, slot)] : slot.is === 'edge' ? [inSlot(rule, slot).of] : [],
  );
  return [...new Set([...partsListedBy(rule), ...named.flatMap(partOfReference)])];
});
