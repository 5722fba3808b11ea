import { pick } from '../list/at.ts';
import type { Edit } from './edit/edit.ts';
import { removing, replacing } from './edit/make.ts';
import { namesOneOf, withStopsAt } from './ends.ts';
import { partOfReference } from './references.ts';
import { inSlot, slotsOf, withFields } from './rule/table.ts';
import type { Design, Part, Rule } from './schema.ts';

/**
 * The edits that take parts (or keep-clears) out of a design together with what only makes sense with
 * them: rules that would be left without a part, joints, memberships of groups. Parts that lay on a
 * removed part lie on the face afterwards, and ends that stopped at one are square.
 */
export function editsToRemove(design: Design, ids: readonly string[]): Edit[] {
  const gone = new Set(ids);
  const edits: Edit[] = [];
  for (const rule of design.rules) {
    const kept = withoutParts(rule, gone);
    if (kept === null) edits.push(removing('rules', rule.id));
    else if (kept !== rule) edits.push(replacing('rules', kept));
  }
  for (const joint of design.joints) {
    if (joint.parts.some((p) => partOfReference(p).some((id) => gone.has(id)))) {
      edits.push(removing('joints', joint.id));
    }
  }
  for (const group of design.groups) {
    const parts = group.parts.filter((p) => !gone.has(p));
    if (parts.length === 0 && group.parts.length > 0) edits.push(removing('groups', group.id));
    else if (parts.length < group.parts.length) {
      edits.push(replacing('groups', { ...group, parts }));
    }
  }
  const goes = namesOneOf(gone);
  for (const part of design.parts) {
    if (gone.has(part.id)) edits.push(removing('parts', part.id));
    else {
      const cut = withStopsAt(part, (at) => (goes(at) ? null : at));
      const item: Part = goes(part.on) ? { ...cut, on: 'face', onChosen: undefined } : cut;
      if (item !== part) edits.push(replacing('parts', item));
    }
  }
  for (const keep of design.keepClears) {
    if (gone.has(keep.id)) edits.push(removing('keepClears', keep.id));
  }
  return edits;
}

/** The rule without the parts that go: itself, a smaller rule, or null when nothing useful is left. */
export function withoutParts(rule: Rule, gone: ReadonlySet<string>): Rule | null {
  const goes = (of: string) => partOfReference(of).some((id) => gone.has(id));
  let kept = rule;
  for (const slot of slotsOf(rule)) {
    if (slot.is === 'edge' && goes(inSlot(rule, slot).of)) return null;
    if ((slot.is === 'part' || slot.is === 'thing') && goes(inSlot(rule, slot))) return null;
    if (slot.is !== 'parts') continue;
    const parts = inSlot(rule, slot);
    const stays = (_: unknown, i: number) => !gone.has(pick(parts, i));
    const left = parts.filter(stays);
    if (left.length === parts.length) continue;
    if (left.length < slot.least) return null;
    kept = withFields(kept, { [slot.field]: left });
    if (slot.beside === undefined) continue;
    const beside = (rule[slot.beside as keyof Rule] as unknown as readonly number[]).filter(stays);
    if (beside.length === 0) return null;
    kept = withFields(kept, { [slot.beside]: beside });
  }
  return kept;
}
