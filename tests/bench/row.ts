/** One figure of a bench: a ratio measured within one run, so that machines can be compared. */
export interface BenchRow {
  readonly name: string;
  readonly size: number;
  readonly ratio: number;
  /** What the ratio is against. */
  readonly against: string;
  readonly note?: string;
}
