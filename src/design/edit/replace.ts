import type { Design } from '../schema.ts';
import type { EditOf, EditResult } from './kinds.ts';
import { editOf, indexOf, itemsOf, problem, withItems } from './list.ts';

/** Exchanges an item for another with the same id. */
export function replace(design: Design, edit: EditOf<'replace'>): EditResult {
  const { list, id, item } = edit;
  if (item.id !== id) return problem('id-changed', list, id);
  const at = indexOf(design, list, id);
  const items = itemsOf(design, list);
  const before = items[at];
  if (!before) return problem('no-such-id', list, id);
  return {
    ok: true,
    design: withItems(design, list, items.with(at, item)),
    inverse: editOf({ kind: 'replace', list, id, item: before }),
  };
}
