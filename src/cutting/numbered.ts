/** A board or sheet with the number that it goes by in every list and drawing. */
export interface Numbered<T> {
  readonly number: number;
  readonly cut: T;
}

/** Boards and sheets are counted through from 1, each kind over all its stocks, in the order of the plan. */
export const numbered = <T>(all: readonly T[]): Numbered<T>[] =>
  all.map((cut, i) => ({ number: i + 1, cut }));
