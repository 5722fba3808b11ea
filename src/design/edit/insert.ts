import type { Design } from '../schema.ts';
import type { EditOf, EditResult } from './kinds.ts';
import { indexOf, itemsOf, problem, withItems } from './list.ts';

/** Puts an item into a list, at the end when no place is given. */
export function insert(design: Design, edit: EditOf<'insert'>): EditResult {
  const { list, item } = edit;
  if (indexOf(design, list, item.id) >= 0) return problem('id-taken', list, item.id);
  const items = itemsOf(design, list);
  const at = Math.max(0, Math.min(edit.at ?? items.length, items.length));
  return {
    ok: true,
    design: withItems(design, list, items.toSpliced(at, 0, item)),
    inverse: { kind: 'remove', list, id: item.id },
  };
}
