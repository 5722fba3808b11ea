import { at, pick, real, whole } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { endKey, gapBetween, type Lying, type LyingEnd, leftPoint, shareCut } from './ends.ts';

/** One way in which pieces of a shape may lie. */
export interface Way {
  readonly shape: number;
  readonly lying: number;
  readonly ends: Lying;
  /** Turns of the saw from this piece's left end to its right end. */
  readonly within: number;
}

/** Every way of lying, with what each pair of neighbors takes. */
export interface Net {
  readonly ways: readonly Way[];
  readonly waysOf: readonly (readonly number[])[];
  /** What the left end of each way takes for its part. */
  readonly shareLeft: Float64Array;
  /** Between way `a` and its right neighbor `b`. */
  readonly gap: (a: number, b: number) => Mm;
  readonly turns: (a: number, b: number) => number;
}

/** Pairs of unlike ends kept in a table; of more, each is worked out when it is asked for. */
const MOST_PAIRS = 4_000_000;

/** Many ways share few ends, so what neighbors take is tabled by end. */
export function netOf(ways: readonly Way[], waysOf: readonly (readonly number[])[]): Net {
  const rights = classesOf(ways.map((w) => w.ends.right));
  const lefts = classesOf(ways.map((w) => w.ends.left));
  const many = lefts.ends.length;
  const pairs = rights.ends.length * many;
  const between = (r: number, l: number): Mm => gapBetween(pick(rights.ends, r), pick(lefts.ends, l));
  const turned = (r: number, l: number): number => turnsBetween(pick(rights.ends, r), pick(lefts.ends, l));
  const tabled = pairs <= MOST_PAIRS;
  const gaps = new Float64Array(tabled ? pairs : 0).fill(Number.NaN);
  const turns = new Int8Array(tabled ? pairs : 0).fill(-1);
  return {
    ways,
    waysOf,
    shareLeft: Float64Array.from(ways, (w) => leftPoint(w.ends.left).share),
    gap: (a, b) => {
      const r = whole(rights.of, a);
      const l = whole(lefts.of, b);
      if (!tabled) return between(r, l);
      const known = real(gaps, r * many + l);
      if (!Number.isNaN(known)) return known;
      const gap = between(r, l);
      gaps[r * many + l] = gap;
      return gap;
    },
    turns: (a, b) => {
      const r = whole(rights.of, a);
      const l = whole(lefts.of, b);
      if (!tabled) return turned(r, l);
      const known = at(turns, r * many + l);
      if (known >= 0) return known;
      const count = turned(r, l);
      turns[r * many + l] = count;
      return count;
    },
  };
}

/** Turns of the saw from the cuts of one end to those of the next. */
export const turnsFrom = (from: LyingEnd, to: LyingEnd): number =>
  (from.settings.at(-1) === to.settings[0] ? 0 : 1) + to.settings.length - 1;

const turnsBetween = (right: LyingEnd, left: LyingEnd): number =>
  shareCut(right, left) ? 0 : turnsFrom(right, left);

/** Alike ends once, and which of them each entry is. */
function classesOf(all: readonly LyingEnd[]): {
  readonly ends: readonly LyingEnd[];
  readonly of: Int32Array;
} {
  const known = new Map<string, number>();
  const ends: LyingEnd[] = [];
  const of = Int32Array.from(all, (end) => {
    const key = `${end.kerf};${endKey(end)}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    known.set(key, ends.length);
    return ends.push(end) - 1;
  });
  return { ends, of };
}
