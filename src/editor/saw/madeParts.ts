import { GROUND } from '../../design/assembly/building.ts';
import { answersOf, type MadeAssembly, make } from '../../design/assembly/make.ts';
import { assemblyOf } from '../../design/assembly/table.ts';
import type { Assembly, Design, Group } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { sameValue } from '../../list/sameValue.ts';
import { namingOf, suppliesIn } from '../edit/built.ts';

/** Something of a list that an assembly makes: by which group, the place of its role there, and what is other. */
type Told = readonly [group: number, role: number, other: Readonly<Record<string, unknown>>];
type Item = Readonly<Record<string, unknown>>;

/** A design in which what its assemblies make again is told by that. */
type Packed = Omit<Design, 'parts' | 'rules' | 'groups'> & {
  readonly parts: readonly (Told | Item)[];
  readonly rules: readonly (Told | Item)[];
  readonly groups: readonly Item[];
};

/** A design without what its assemblies make of their answers alone: a link is short, and the other end makes that. */
export function withoutMade(design: Design): Packed {
  const made = design.groups.map((group) => {
    const box = design.parts.find(({ id }) => id === group.assembly?.parts[GROUND])?.box;
    return box && madeBy(design, group, box);
  });
  const told = (list: 'parts' | 'rules') => {
    const by = new Map(
      made.flatMap((one, g) =>
        one ? [...one[list].values()].map((item, n) => [item.id, [g, n, item]] as const) : [],
      ),
    );
    return (item: Item): Told | Item => {
      const found = by.get(String(item.id));
      if (!found) return item;
      const [g, n, is] = found;
      if (Object.keys(is).some((key) => !(key in item))) return item;
      // Where the whole lies is told with its ground, and with nothing else of it.
      return [g, n, otherThan(item, is, list === 'parts' && n === 0 ? ['box'] : [])];
    };
  };
  return {
    ...design,
    parts: design.parts.map(told('parts')),
    rules: design.rules.map(told('rules')),
    groups: design.groups.map((group, g) => {
      const ids = made[g] && idsOf(group, made[g]);
      const { assembly } = group;
      if (!assembly || !ids || !sameValue({ ...assembly, ...ids.assembly }, assembly)) return group;
      const { parts: _, rules: __, ...rest } = assembly;
      const { parts, ...own } = group;
      return { ...own, ...(sameValue(parts, ids.parts) ? {} : { parts }), assembly: rest };
    }),
  };
}

/** The data of a design with all that its assemblies make. What is not as `withoutMade` tells it stays, for the door of files. */
export function withMade(packed: Packed): unknown {
  const grounds = new Map<number, Box>();
  for (const part of packed.parts)
    if (isTold(part) && part[1] === 0) grounds.set(part[0], part[2].box as Box);
  const groups = packed.groups.map((item, g): { group: Item; made: MadeAssembly | undefined } => {
    const box = grounds.get(g);
    const group = item as unknown as Group;
    if (!box || !group.assembly) return { group: item, made: undefined };
    const told = 'parts' in group.assembly;
    const made = madeBy(packed, told ? group : withoutRoles(group), box);
    if (!made || told) return { group: item, made };
    const ids = idsOf(group, made);
    const { id, name, parts = ids.parts, assembly } = group;
    return { group: { id, name, parts, assembly: { ...assembly, ...ids.assembly } }, made };
  });
  const made =
    (list: 'parts' | 'rules') =>
    (item: Told | Item): unknown => {
      if (!isTold(item)) return item;
      const [g, n, other] = item;
      const from = groups[g]?.made;
      const is = from && [...from[list].values()][n];
      return is && { ...is, ...other };
    };
  return {
    ...packed,
    parts: packed.parts.map(made('parts')),
    rules: packed.rules.map(made('rules')),
    groups: groups.map(({ group }) => group),
  };
}

const isTold = (item: Told | Item): item is Told => Array.isArray(item);

const withoutRoles = (group: Group): Group => {
  const assembly = { ...group.assembly, parts: {}, rules: {} } as Assembly;
  return { ...group, assembly };
};

/** What a group's answers make over a box, under the ids that it has; those that no role has are made of its own. */
function madeBy(design: Pick<Design, 'stocks' | 'finishes' | 'measure'>, group: Group, box: Box) {
  const { assembly } = group;
  const kind = assembly && assemblyOf(assembly.kind);
  if (!assembly || !kind) return undefined;
  const has = suppliesIn(design);
  const given = new Map([
    ...Object.entries(assembly.parts),
    ...Object.entries(assembly.rules).map(([role, id]) => [`rule.${role}`, id] as const),
  ]);
  const idOf = (role: string) => given.get(role) ?? `${group.id}.${role}`;
  return make(kind, answersOf(kind, assembly.answers, box, has), { box, has, idOf, nameOf: namingOf(group) });
}

/** Ids that a group has where all of it is as it was made first. */
function idsOf({ id }: Group, { parts, rules }: MadeAssembly) {
  const roles = [...parts.keys()].map((role) => [role, `${id}.${role}`] as const);
  const held = [...rules.keys()].map((role) => [role, `${id}.rule.${role}`] as const);
  return {
    parts: roles.map(([, part]) => part),
    assembly: { parts: Object.fromEntries(roles), rules: Object.fromEntries(held) },
  };
}

/** The fields in which something is other than it was made, and some others. */
const otherThan = (item: Item, made: object, also: readonly string[]): Item =>
  Object.fromEntries(
    Object.entries(item).filter(
      ([key, value]) => also.includes(key) || !sameValue(value, (made as Item)[key]),
    ),
  );
