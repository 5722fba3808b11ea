import type { Design } from '../schema.ts';
import { insert } from './insert.ts';
import { move } from './move.ts';
import { remove } from './remove.ts';
import { replace } from './replace.ts';
import { set } from './set.ts';

/** Fields of a design that are lists of things with ids, and that edits work on item by item. */
export const LISTS = [
  'parts',
  'rules',
  'groups',
  'joints',
  'finishes',
  'stocks',
  'owned',
  'keepClears',
  'fonts',
] as const;
export type List = (typeof LISTS)[number];
export type ItemOf<L extends List> = Design[L][number];

/** Fields that are set as a whole. */
export const FIELDS = [
  'name',
  'date',
  'note',
  'measure',
  'bed',
  'shop',
  'paint',
  'fastening',
  'load',
  'pages',
  'light',
] as const;
export type Field = (typeof FIELDS)[number];

type PerList<F extends { [L in List]: unknown }> = F[List];
type PerField<F extends { [K in Field]: unknown }> = F[Field];

/** The smallest changes there are. Each is plain JSON, and applying one also gives the edit that takes it back. */
export type Edit =
  | PerList<{
      [L in List]: {
        readonly kind: 'insert';
        readonly list: L;
        readonly item: ItemOf<L>;
        readonly at?: number;
      };
    }>
  | { readonly kind: 'remove'; readonly list: List; readonly id: string }
  | PerList<{
      [L in List]: {
        readonly kind: 'replace';
        readonly list: L;
        readonly id: string;
        readonly item: ItemOf<L>;
      };
    }>
  | { readonly kind: 'move'; readonly list: List; readonly id: string; readonly to: number }
  | PerField<{ [K in Field]: { readonly kind: 'set'; readonly field: K; readonly value: Design[K] } }>;

export type EditKind = Edit['kind'];
export type EditOf<K extends EditKind> = Extract<Edit, { readonly kind: K }>;

/** Why an edit cannot be applied: the design does not hold what the edit names. */
export interface EditProblem {
  readonly code: 'no-such-id' | 'id-taken' | 'id-changed';
  readonly list: List;
  readonly id: string;
}

export type EditResult =
  | { readonly ok: true; readonly design: Design; readonly inverse: Edit }
  | { readonly ok: false; readonly problem: EditProblem };

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
