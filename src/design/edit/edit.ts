import type { Design } from '../schema.ts';
import { insert } from './insert.ts';
import type { Edit, EditKind, EditOf, EditProblem, EditResult } from './kinds.ts';
import { move } from './move.ts';
import { remove } from './remove.ts';
import { replace } from './replace.ts';
import { set } from './set.ts';

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
  for (const edit of edits) {
    const step = applyEdit(now, edit);
    if (!step.ok) return step;
    now = step.design;
    inverse.push(step.inverse);
  }
  return { ok: true, design: now, inverse: inverse.reverse() };
}
