import { pick } from '../../list/at.ts';
import type { Design } from '../schema.ts';
import { insert } from './insert.ts';
import type { Edit, EditKind, EditOf, EditProblem, EditResult } from './kinds.ts';
import { move } from './move.ts';
import { remove } from './remove.ts';
import { replace, replaceAll } from './replace.ts';
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
