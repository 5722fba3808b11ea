import type { Edit, ItemOf, List } from './kinds.ts';

/** Puts an item at the end of a list. */
export const inserting = <L extends List>(list: L, item: ItemOf<L>): Edit =>
  ({ kind: 'insert', list, item }) as Edit;

/** Puts an item in the place of the one with its id. */
export const replacing = <L extends List>(list: L, item: ItemOf<L>): Edit =>
  ({ kind: 'replace', list, id: item.id, item }) as Edit;

/** Takes an item out of a list. */
export const removing = (list: List, id: string): Edit => ({ kind: 'remove', list, id });
