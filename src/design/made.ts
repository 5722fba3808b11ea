import type { Member, Part, PartArray, PartKind } from './schema.ts';

/** What a kind of part is made as. */
type Made =
  /** Bars sawn from lengths of stock, which meet in joints. */
  | 'bars'
  /** A piece of a sheet. */
  | 'sheet'
  /** Boards sawn to the outline of a shape that they fill. */
  | 'boards'
  /** Paint on what is there. */
  | 'paint'
  /** Bought, and screwed on. */
  | 'bought'
  /** Several of another kind. */
  | 'many';

/** Every kind of part; a kind without a line here does not compile. */
const MADE = {
  strip: 'bars',
  run: 'bars',
  panel: 'sheet',
  sign: 'sheet',
  fitting: 'bought',
  painted: 'paint',
  lettering: 'paint',
  fill: 'boards',
  array: 'many',
} as const satisfies Readonly<Record<PartKind, Made>>;

interface Kinded {
  readonly kind: PartKind;
}

/** What has a kind that is made so: a part, a member, what was laid of it, its solid. */
export type MadeAs<T, M extends Made> = T & {
  readonly kind: { [K in PartKind]: (typeof MADE)[K] extends M ? K : never }[PartKind];
};

export const isBars = <T extends Kinded>(part: T): part is MadeAs<T, 'bars'> => MADE[part.kind] === 'bars';
/** The ids of all that is made of bars, such as laid parts. */
export const idsOfBars = (all: readonly (Kinded & { readonly id: string })[]): ReadonlySet<string> =>
  new Set(all.filter((one) => isBars(one)).map(({ id }) => id));
export const isSheet = <T extends Kinded>(part: T): part is MadeAs<T, 'sheet'> => MADE[part.kind] === 'sheet';
export const isBoards = <T extends Kinded>(part: T): part is MadeAs<T, 'boards'> =>
  MADE[part.kind] === 'boards';
export const isPaint = <T extends Kinded>(part: T): part is MadeAs<T, 'paint'> => MADE[part.kind] === 'paint';
export const isBought = <T extends Kinded>(part: T): part is MadeAs<T, 'bought'> =>
  MADE[part.kind] === 'bought';
export const isMany = <T extends Kinded>(part: T): part is MadeAs<T, 'many'> => MADE[part.kind] === 'many';

/** What has letters on it. */
export const isLettered = <T extends Kinded>(part: T): part is T & { readonly kind: 'sign' | 'lettering' } =>
  part.kind === 'sign' || part.kind === 'lettering';
/** Letters and nothing under them: what they lie on is seen between. */
export const isLettersAlone = (part: Kinded & { readonly finish: string | null }): boolean =>
  isLettered(part) && isPaint(part) && part.finish === null;

/** What a part is, or what an array is many of. */
export const eachOf = (part: Part): Exclude<Part, PartArray> | Member => (isMany(part) ? part.member : part);
