import type { Resources } from '../resources.ts';
import type { Group } from '../schema.ts';
import type { Answer } from './question.ts';
import { assemblyOf } from './table.ts';

/**
 * A copy of a group, which remembers how it was made by the names of its own parts and rules; what its answers are made
 * of is called as it is where the copy goes.
 */
export function copiedGroup(
  group: Group,
  idOf: (id: string) => string,
  ruleOf: (id: string) => string,
  rename: (list: keyof Resources, id: string) => string,
): Group {
  const { assembly } = group;
  const copy = { ...group, id: idOf(group.id), parts: group.parts.map(idOf) };
  if (!assembly) return copy;
  const named = (roles: Readonly<Record<string, string>>, by: (id: string) => string) =>
    Object.fromEntries(Object.entries(roles).map(([role, id]) => [role, by(id)]));
  const questions = assemblyOf(assembly.kind)?.questions ?? {};
  const answers = Object.entries(assembly.answers).map(([name, answer]): [string, Answer] => {
    const is = questions[name]?.is;
    const list = is === 'stock' ? 'stocks' : is === 'finish' ? 'finishes' : null;
    return [name, list && typeof answer === 'string' ? rename(list, answer) : answer];
  });
  return {
    ...copy,
    assembly: {
      ...assembly,
      answers: Object.fromEntries(answers),
      parts: named(assembly.parts, idOf),
      rules: named(assembly.rules, ruleOf),
    },
  };
}
