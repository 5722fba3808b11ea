import { LISTS } from '../../design/edit/edit.ts';
import type { Design } from '../../design/schema.ts';

/** The first free id of the form `word-n` in a design. */
export function freeId(design: Design, word: string, alsoTaken: ReadonlySet<string> = new Set()): string {
  const taken = new Set<string>(alsoTaken);
  for (const list of LISTS) {
    for (const { id } of design[list] ?? []) if (id.startsWith(word)) taken.add(id);
  }
  return numberedId(taken, word);
}

/** The first `word-n` that is free. */
export function numberedId(taken: ReadonlySet<string>, word: string): string {
  let n = 1;
  while (taken.has(`${word}-${n}`)) n++;
  return `${word}-${n}`;
}

/** The first name of the form `Word n` that none of some things has. */
export function freeName(named: readonly { readonly name: string }[], word: string): string {
  const taken = new Set(named.map(({ name }) => name));
  let n = 1;
  while (taken.has(`${word} ${n}`)) n++;
  return `${word} ${n}`;
}

/** A name with the first number from `first` on that is free; names alike but for capitals are taken. */
export function numberedName(taken: ReadonlySet<string>, name: string, first: number): string {
  let n = first;
  while (taken.has(`${name} ${n}`.toLowerCase())) n++;
  return `${name} ${n}`;
}
