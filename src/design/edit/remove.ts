import type { Design } from '../schema.ts';
import type { EditOf, EditResult } from './kinds.ts';
import { editOf, found, withItems } from './list.ts';

/** Takes one item out of a list; what refers to it is the caller's matter (see `removal.ts`). */
export function remove(design: Design, edit: EditOf<'remove'>): EditResult {
  const { list, id } = edit;
  const there = found(design, list, id);
  if (!there.ok) return there;
  const { items, at, item } = there;
  return {
    ok: true,
    design: withItems(design, list, items.toSpliced(at, 1)),
    inverse: editOf({ kind: 'insert', list, item, at }),
  };
}
