import { pick } from '../../list/at.ts';
import { succeeding } from '../job/record.ts';
import type { Design } from '../schema.ts';
import type { Edit, EditKind, EditOf, EditProblem, EditResult } from './kinds.ts';
import { editOf, found, indexOf, itemsOf, problem, withItems } from './list.ts';
import { replace, replaceAll } from './replace.ts';

export * from './kinds.ts';

const APPLY: { readonly [K in EditKind]: (design: Design, edit: EditOf<K>) => EditResult } = {
  insert,
  remove,
  replace,
  move,
  set,
};

/** Applies one edit. The design that came in is never changed. */
export function applyEdit(design: Design, edit: Edit): EditResult {
  const apply = APPLY[edit.kind] as (design: Design, edit: Edit) => EditResult;
  return apply(design, edit);
}

export type EditsResult =
  | { readonly ok: true; readonly design: Design; readonly inverse: readonly Edit[] }
  | { readonly ok: false; readonly problem: EditProblem };

/** Applies edits one after the other, all or none; `inverse` takes them back in one go. */
export function applyEdits(design: Design, edits: readonly Edit[]): EditsResult {
  let now = design;
  const inverse: Edit[] = [];
  for (let i = 0; i < edits.length; ) {
    const run = replacesFrom(edits, i);
    const step = run.length > 1 ? replaceAll(now, run) : applyEdit(now, pick(edits, i));
    if (!step.ok) return step;
    now = step.design;
    for (const back of Array.isArray(step.inverse) ? step.inverse : [step.inverse]) inverse.push(back);
    i += Math.max(1, run.length);
  }
  return { ok: true, design: now, inverse: inverse.reverse() };
}

/** The edits from a place on that exchange items of one list: a hand that carries many parts makes many. */
function replacesFrom(edits: readonly Edit[], from: number): EditOf<'replace'>[] {
  const found: EditOf<'replace'>[] = [];
  for (let i = from; i < edits.length; i++) {
    const edit = edits[i];
    if (edit?.kind !== 'replace' || (found[0] && found[0].list !== edit.list)) break;
    found.push(edit);
  }
  return found;
}

/** Sets a whole field. What was said of the job is never forgotten: an earlier record is told as a later word. */
function set(design: Design, edit: EditOf<'set'>): EditResult {
  const inverse = { kind: 'set', field: edit.field, value: design[edit.field] } as Edit;
  const value = edit.field === 'job' ? succeeding(design.job, edit.value) : edit.value;
  return { ok: true, design: { ...design, [edit.field]: value }, inverse };
}

/** Puts an item into a list, at the end when no place is given. */
function insert(design: Design, edit: EditOf<'insert'>): EditResult {
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

/** Takes one item out of a list; what refers to it is the caller's matter (see `removal.ts`). */
function remove(design: Design, edit: EditOf<'remove'>): EditResult {
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

/** Moves an item to another place in its list: `to` is its index afterwards. */
function move(design: Design, edit: EditOf<'move'>): EditResult {
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
