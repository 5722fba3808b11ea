import type { Box } from '../../geometry/shape.ts';
import { sameValue } from '../../list/sameValue.ts';
import { applyEdits, type Edit } from '../edit/edit.ts';
import { inserting, removing, replacing } from '../edit/make.ts';
import { isLettered } from '../made.ts';
import { mentionsOf, partsOfRule } from '../references.ts';
import { editsToRemove } from '../removal.ts';
import type { Assembly, Design, Group, Part, Rule } from '../schema.ts';
import { answersOf, idsIn, type MadeAssembly, make, type Naming, rolesOf } from './make.ts';
import type { Kept, Supplies } from './question.ts';
import { assemblyOf } from './table.ts';

/** What other answers come to. */
export interface Remade {
  readonly edits: readonly Edit[];
  /** Names of parts that the person had altered and that the new answers leave no room for. */
  readonly lost: readonly string[];
}

/**
 * The edits by which an assembly has other answers. What it would be by the old answers is made once more beside what
 * it is: fields that differ were altered by the person and stay, what the person took away stays away, and where a rule
 * was altered the part keeps its place. Only what has no role any more goes, and is told where it had been altered.
 *
 * @param answers those that change
 * @param box where the whole lies now
 */
export function remade(
  design: Design,
  group: Group,
  answers: Kept,
  { box, has, nameOf }: { readonly box: Box; readonly has: Supplies; readonly nameOf: Naming },
): Remade | null {
  const { assembly } = group;
  const kind = assembly && assemblyOf(assembly.kind);
  if (!assembly || !kind) return null;
  const before = answersOf(kind, assembly.answers, box, has);
  const after = answersOf(kind, { ...before, ...answers }, box, has);
  const idOf = idsBy(design, group, assembly);
  const old = make(kind, before, { box, has, idOf, nameOf });
  const now = make(kind, after, { box, has, idOf, nameOf });
  return exchanged(design, group, { ...assembly, answers: after }, old, now);
}

/** The ids that roles have, and free ones for new roles. */
function idsBy(design: Design, group: Group, { parts, rules }: Assembly): (role: string) => string {
  const taken = new Set(idsIn(design));
  const given = new Map<string, string>([
    ...Object.entries(parts),
    ...Object.entries(rules).map(([role, id]) => [`rule.${role}`, id] as const),
  ]);
  return (role) => {
    const known = given.get(role);
    if (known !== undefined) return known;
    let id = `${group.id}.${role}`;
    for (let n = 2; taken.has(id); n++) id = `${group.id}.${role}-${n}`;
    taken.add(id);
    given.set(role, id);
    return id;
  };
}

/**
 * The edits from what is to what the new answers make: rules first, so that none is pared down to what stays of its
 * parts, then the parts that go, then what comes.
 */
function exchanged(
  design: Design,
  group: Group,
  assembly: Assembly,
  old: MadeAssembly,
  now: MadeAssembly,
): Remade {
  const own = new Set(group.parts);
  const byHand = placedByHand(design, old);
  const ruled = ruleEdits(design, old, now);
  const gone = ownParts(
    design,
    own,
    [...old.parts.values()].filter(({ id }) => !has(now.parts, id)),
  );
  const cleared = after(design, ruled);
  const removal = editsToRemove(
    cleared,
    gone.map(({ id }) => id),
  );
  const left = after(cleared, removal);
  const put = partEdits({ before: design, left }, own, old, now);
  const there = after(left, put);
  const edits = [...ruled, ...removal, ...put, ...newRules(there, byHand, old, now)];
  const kept = there.groups.find(({ id }) => id === group.id) ?? group;
  const item: Group = {
    ...kept,
    parts: [...kept.parts.filter((id) => left.parts.some((part) => part.id === id)), ...inserted(put)],
    assembly: { ...assembly, ...rolesOf(now) },
  };
  edits.push(replacing('groups', item));
  const swapped = ownParts(design, own, [...now.parts.values()]).filter(({ id, kind }) => {
    const was = find(old.parts, id);
    return was !== undefined && was.kind === kind && find(now.parts, id)?.kind !== kind;
  });
  const lost = [...gone, ...swapped].filter(
    (part) =>
      AXES.some((axis) => byHand.has(`${part.id} ${axis}`)) || isAltered(part, find(old.parts, part.id)),
  );
  return { edits, lost: lost.map(({ name }) => name) };
}

const AXES = ['x', 'y'] as const;

function after(design: Design, edits: readonly Edit[]): Design {
  const done = applyEdits(design, edits);
  return done.ok ? done.design : design;
}

const find = <T extends { readonly id: string }>(made: ReadonlyMap<string, T>, id: string): T | undefined =>
  [...made.values()].find((one) => one.id === id);
const has = (made: ReadonlyMap<string, { readonly id: string }>, id: string): boolean =>
  find(made, id) !== undefined;
const inserted = (edits: readonly Edit[]): string[] =>
  edits.flatMap((edit) => (edit.kind === 'insert' && edit.list === 'parts' ? [edit.item.id] : []));

/** Of some parts those that still are in the group, as they are now. */
const ownParts = (design: Design, own: ReadonlySet<string>, made: readonly Part[]): Part[] =>
  made.flatMap(({ id }) => (own.has(id) ? (design.parts.find((part) => part.id === id) ?? []) : []));

/** Whether a person gave a part something that its assembly did not. */
const isAltered = (is: Part, made: Part | undefined): boolean =>
  made === undefined || !sameValue({ ...is, ...WITHOUT }, { ...made, ...WITHOUT });

/** What says where a part is and what it is called: rules and the person have that. */
const WITHOUT = { name: '', box: null, length: 0 };

/** Parts along axes where a rule of theirs is not as it was made: a hand has put them where they are. */
function placedByHand(design: Design, old: MadeAssembly): ReadonlySet<string> {
  const is = new Map(design.rules.map((rule) => [rule.id, rule]));
  const altered = [...old.rules.values()].filter((rule) => !sameValue(is.get(rule.id), rule));
  return new Set(altered.flatMap(heldBy));
}

/** What a rule places, and along which axis. */
const heldBy = (rule: Rule): string[] =>
  AXES.flatMap((axis) =>
    'axis' in rule && rule.axis !== axis ? [] : mentionsOf(rule).follow.map((part) => `${part} ${axis}`),
  );

/** Rules that are as they were made go or change with the answers; altered ones are the person's. */
function ruleEdits(design: Design, old: MadeAssembly, now: MadeAssembly): Edit[] {
  const parts = new Set(
    [...design.parts, ...[...now.parts.values()].filter(({ id }) => !has(old.parts, id))].map(({ id }) => id),
  );
  const is = new Map(design.rules.map((rule) => [rule.id, rule]));
  return [...old.rules].flatMap(([role, rule]): Edit[] => {
    if (!sameValue(is.get(rule.id), rule)) return [];
    const item = now.rules.get(role);
    if (!item) return [removing('rules', rule.id)];
    if (sameValue(item, rule) || !partsOfRule(item).every((id) => parts.has(id))) return [];
    return [{ kind: 'replace', list: 'rules', id: rule.id, item }];
  });
}

/**
 * New parts come in; of those that were there the fields change that were as they were made.
 * @param before with the parts that go: what the others say of those is not theirs
 */
function partEdits(
  { before, left }: { readonly before: Design; readonly left: Design },
  own: ReadonlySet<string>,
  old: MadeAssembly,
  now: MadeAssembly,
): Edit[] {
  return [...now.parts].flatMap(([role, item]): Edit[] => {
    const made = old.parts.get(role);
    if (!made) return [inserting('parts', item)];
    const [was] = ownParts(before, own, [item]);
    const [is] = ownParts(left, own, [item]);
    if (!was || !is) return [];
    const next = is.kind === item.kind ? keeping(is, was, made, item) : { ...item, name: is.name };
    return sameValue(next, is) ? [] : [{ kind: 'replace', list: 'parts', id: is.id, item: next }];
  });
}

/** A part as it is to be, but for the fields that a person gave it; letters are kept field by field. */
function keeping(is: Part, was: Part, made: Part, next: Part): Part {
  const kept = { ...is, ...asMade(was, made, next) } as Part;
  if (!isLettered(is) || !isLettered(was) || !isLettered(made) || !isLettered(next)) return kept;
  const lettering = { ...is.lettering, ...asMade(was.lettering, made.lettering, next.lettering) };
  return { ...kept, lettering } as Part;
}

/** The new values of fields that are as they were made. */
function asMade<T extends object>(was: T, made: T, next: T): Partial<T> {
  const fields = Object.entries(next).filter(
    ([field]) => !(field in WITHOUT) && sameValue(was[field as keyof T], made[field as keyof T]),
  );
  return Object.fromEntries(fields) as Partial<T>;
}

/** Rules of new roles, but for those of parts that a hand has put in place or that are gone. */
function newRules(design: Design, byHand: ReadonlySet<string>, old: MadeAssembly, now: MadeAssembly): Edit[] {
  const parts = new Set(design.parts.map(({ id }) => id));
  return [...now.rules].flatMap(([role, item]): Edit[] => {
    if (old.rules.has(role) || heldBy(item).some((held) => byHand.has(held))) return [];
    return partsOfRule(item).every((id) => parts.has(id)) ? [inserting('rules', item)] : [];
  });
}
