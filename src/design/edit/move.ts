import type { Design } from '../schema.ts';
import type { EditOf, EditResult } from './kinds.ts';
import { found, withItems } from './list.ts';

/** Moves an item to another place in its list: `to` is its index afterwards. */
export function move(design: Design, edit: EditOf<'move'>): EditResult {
  const { list, id } = edit;
  const there = found(design, list, id);
  if (!there.ok) return there;
  const { items, at, item } = there;
  const to = Math.max(0, Math.min(edit.to, items.length - 1));
  return {
    ok: true,
    design: withItems(design, list, items.toSpliced(at, 1).toSpliced(to, 0, item)),
    inverse: { kind: 'move', list, id, to: at },
  };
}
