import type { Design } from '../schema.ts';

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
  'pictures',
  'photos',
] as const;
export type List = (typeof LISTS)[number];
export type ItemOf<L extends List> = NonNullable<Design[L]>[number];

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
  'supplies',
  'pages',
  'light',
  'job',
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
