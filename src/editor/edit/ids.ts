import type { Design } from '../../design/schema.ts';

/** The first free id of the form `word-n` in a design. */
export function freeId(design: Design, word: string, alsoTaken: ReadonlySet<string> = new Set()): string {
  const taken = new Set<string>(alsoTaken);
  for (const list of [
    design.parts,
    design.rules,
    design.groups,
    design.joints,
    design.keepClears,
    design.finishes,
    design.stocks,
    design.owned,
    design.fonts,
    design.pictures ?? [],
    design.photos ?? [],
  ]) {
    for (const { id } of list) if (id.startsWith(word)) taken.add(id);
  }
  return numberedId(taken, word);
}

/** The first `word-n` that is free. */
export function numberedId(taken: ReadonlySet<string>, word: string): string {
  let n = 1;
  while (taken.has(`${word}-${n}`)) n++;
  return `${word}-${n}`;
}

/** The first free name of the form `Word n`. */
export function freeName(names: readonly string[], word: string): string {
  let n = 1;
  while (names.includes(`${word} ${n}`)) n++;
  return `${word} ${n}`;
}

/** A name with the first number from `first` on that is free; names alike but for capitals are taken. */
export function numberedName(taken: ReadonlySet<string>, name: string, first: number): string {
  let n = first;
  while (taken.has(`${name} ${n}`.toLowerCase())) n++;
  return `${name} ${n}`;
}
