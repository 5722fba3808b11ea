import type { Design } from '../schema.ts';
import type { Edit, EditOf, EditResult } from './kinds.ts';
import { editOf, found, itemsOf, problem, withItems } from './list.ts';

/** Exchanges an item for another with the same id. */
export function replace(design: Design, edit: EditOf<'replace'>): EditResult {
  const { list, id, item } = edit;
  if (item.id !== id) return problem('id-changed', list, id);
  const there = found(design, list, id);
  if (!there.ok) return there;
  const { items, at, item: before } = there;
  return {
    ok: true,
    design: withItems(design, list, items.with(at, item)),
    inverse: editOf({ kind: 'replace', list, id, item: before }),
  };
}

interface EditsDone {
  readonly ok: true;
  readonly design: Design;
  readonly inverse: readonly Edit[];
}

/** Exchanges several items of one list in one go: all or none, as one after the other. */
export function replaceAll(
  design: Design,
  edits: readonly EditOf<'replace'>[],
): EditsDone | Extract<EditResult, { readonly ok: false }> {
  const list = edits[0]?.list;
  if (list === undefined) return { ok: true, design, inverse: [] };
  const items = [...itemsOf(design, list)];
  const places = new Map(items.map((item, i) => [item.id, i]));
  const inverse: Edit[] = [];
  for (const { id, item } of edits) {
    if (item.id !== id) return problem('id-changed', list, id);
    const at = places.get(id);
    const before = at === undefined ? undefined : items[at];
    if (at === undefined || !before) return problem('no-such-id', list, id);
    items[at] = item;
    inverse.push(editOf({ kind: 'replace', list, id, item: before }));
  }
  return { ok: true, design: withItems(design, list, items), inverse };
}
