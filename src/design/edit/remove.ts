import type { Design } from '../schema.ts';
import type { EditOf, EditResult } from './kinds.ts';
import { editOf, indexOf, itemsOf, problem, withItems } from './list.ts';

/** Takes one item out of a list; what refers to it is the caller's matter (see `removal.ts`). */
export function remove(design: Design, edit: EditOf<'remove'>): EditResult {
  const { list, id } = edit;
  const at = indexOf(design, list, id);
  const items = itemsOf(design, list);
  const item = items[at];
  if (!item) return problem('no-such-id', list, id);
  return {
    ok: true,
    design: withItems(design, list, items.toSpliced(at, 1)),
    inverse: editOf({ kind: 'insert', list, item, at }),
  };
}
