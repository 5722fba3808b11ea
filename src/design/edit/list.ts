import type { Design } from '../schema.ts';
import type { Edit, EditProblem, List } from './kinds.ts';

interface WithId {
  readonly id: string;
}

const NO_ITEMS: readonly WithId[] = [];

/** The items of a list, seen only as things with ids. */
export function itemsOf(design: Design, list: List): readonly WithId[] {
  return design[list] ?? NO_ITEMS;
}

export function indexOf(design: Design, list: List, id: string): number {
  return itemsOf(design, list).findIndex((item) => item.id === id);
}

/** An item of a list, with its place and the list it is in; a problem where there is none of that id. */
export function found(design: Design, list: List, id: string) {
  const items = itemsOf(design, list);
  const at = indexOf(design, list, id);
  const item = items[at];
  return item ? ({ ok: true, items, at, item } as const) : problem('no-such-id', list, id);
}

/** The one place where a list of the design is exchanged; callers hand items of that list's own type. */
export function withItems(design: Design, list: List, items: readonly WithId[]): Design {
  // A design without pictures or photos has no list of them.
  const none = (list === 'pictures' || list === 'photos') && items.length === 0;
  return { ...design, [list]: none ? undefined : items };
}

/** An edit that puts an item of `list` somewhere; the pair is of one type because it came from that list. */
export function editOf(edit: {
  kind: 'insert' | 'replace';
  list: List;
  item: WithId;
  id?: string;
  at?: number;
}): Edit {
  return edit as unknown as Edit;
}

export function problem(
  code: EditProblem['code'],
  list: List,
  id: string,
): { ok: false; problem: EditProblem } {
  return { ok: false, problem: { code, list, id } };
}
