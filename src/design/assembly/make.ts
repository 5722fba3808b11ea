import type { Box } from '../../geometry/shape.ts';
import type { Assembly, Design, Group, Part, Rule } from '../schema.ts';
import { Building, type Called, GROUND } from './building.ts';
import type { AssemblyKind } from './kind.ts';
import { type Answer, isAnswer, type Kept, type Size, type Supplies } from './question.ts';
import { ASSEMBLIES, type AssemblyName } from './table.ts';

/** What a part of an assembly is called, by words of a language. */
export type Naming = (called: Called) => string;

/** An assembly with what it is made of, by the roles that those have in it. */
export interface MadeAssembly {
  readonly parts: ReadonlyMap<string, Part>;
  readonly rules: ReadonlyMap<string, Rule>;
}

/** Makes what some answers say. */
export function make(
  kind: AssemblyKind,
  answers: Kept,
  {
    box,
    has,
    idOf,
    nameOf,
  }: {
    readonly box: Box;
    readonly has: Supplies;
    readonly idOf: (role: string) => string;
    readonly nameOf: Naming;
  },
): MadeAssembly {
  const building = new Building(idOf, box, has);
  kind.make(building, answers);
  const parts = [...building.parts].map(
    ([role, { part, called }]) => [role, { ...part, name: nameOf(called) }] as const,
  );
  return { parts: new Map(parts), rules: building.rules };
}

/**
 * The answers by which a group was made, each as its question allows it: one that does not, as when its stock is gone,
 * is answered as at first.
 */
export function answersOf(kind: AssemblyKind, kept: Kept, size: Size, has: Supplies): Kept {
  const answers = Object.entries(kind.questions).map(([name, question]): [string, Answer] => {
    const answer = Object.hasOwn(kept, name) ? kept[name] : undefined;
    return [name, isAnswer(question, answer, has) ? answer : question.first(size, has)];
  });
  return Object.fromEntries(answers);
}

/** What is to be put into a design for a new assembly: its parts, the ground first, their rules, and the group. */
export interface NewAssembly {
  readonly parts: readonly [Part, ...Part[]];
  readonly rules: readonly Rule[];
  readonly group: Group;
}

/**
 * A new assembly over a box.
 * @param given answers that are not left to the rule
 */
export function newAssembly(
  design: Design,
  name: AssemblyName,
  {
    box,
    has,
    called,
    nameOf,
    given = {},
  }: {
    readonly box: Box;
    readonly has: Supplies;
    readonly called: string;
    readonly nameOf: Naming;
    readonly given?: Kept;
  },
): NewAssembly {
  const kind = ASSEMBLIES[name];
  const base = freeBase(design, name);
  const idOf = (role: string) => `${base}.${role}`;
  const answers = answersOf(kind, given, box, has);
  const made = make(kind, answers, { box, has, idOf, nameOf });
  const group: Group = {
    id: base,
    name: called,
    parts: [...made.parts.values()].map(({ id }) => id),
    assembly: { kind: name, answers, ...rolesOf(made) },
  };
  // Every kind makes its ground first.
  const parts = [...made.parts.values()] as [Part, ...Part[]];
  return { parts, rules: [...made.rules.values()], group };
}

/** What has which role in an assembly as it was made. */
export const rolesOf = ({ parts, rules }: MadeAssembly): Pick<Assembly, 'parts' | 'rules'> => ({
  parts: Object.fromEntries([...parts].map(([role, { id }]) => [role, id])),
  rules: Object.fromEntries([...rules].map(([role, { id }]) => [role, id])),
});

/** The ids of all that lies on the face or is said of it. */
export const idsIn = (design: Design): string[] =>
  [design.parts, design.rules, design.groups, design.joints, design.keepClears].flatMap((list) =>
    list.map(({ id }) => id),
  );

/** The first `word-n` that nothing in a design is called, nor begins with. */
function freeBase(design: Design, word: string): string {
  const ids = idsIn(design);
  for (let n = 1; ; n++) {
    const base = `${word}-${n}`;
    if (!ids.some((id) => id === base || id.startsWith(`${base}.`))) return base;
  }
}

/** The part that takes the place of a whole assembly; undefined where it is gone. */
export const groundOf = (design: Design, { assembly, parts }: Group): Part | undefined => {
  const id = assembly?.parts[GROUND];
  return id !== undefined && parts.includes(id) ? design.parts.find((part) => part.id === id) : undefined;
};

/** A group that is no longer asked how it was made. */
export const takenApart = ({ assembly: _, ...group }: Group): Group => group;
