import { at, pick, real, whole } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Net } from './net.ts';

/** One piece of a row: its shape and which way of lying. */
interface Placed {
  readonly shape: number;
  readonly lying: number;
}

/** A row of pieces in order, the sum of the distances between them and the turns of the saw. */
export interface Row {
  readonly gaps: Mm;
  readonly turns: number;
  readonly order: readonly Placed[];
}

/** Puts pieces in order; `work` grows by every pair of neighbors weighed. */
export interface Rows {
  /** Least room taken by a row of so many pieces of each shape, and among those rows the fewest turns. */
  readonly exact: (counts: readonly number[]) => Row;
  /** How many states `exact` may have to look at. */
  readonly states: (counts: readonly number[]) => number;
  /** The best of rows from so many first pieces on, each by the best neighbor: never less than `exact`. */
  readonly nearest: (counts: readonly number[], starts: number) => Row;
  /** A row given as the ways in which its pieces lie. */
  readonly measured: (row: readonly number[]) => Row;
  work: number;
}

const SAME: Mm = 1e-7;

const better = (gaps: Mm, turns: number, than: { readonly gaps: Mm; readonly turns: number }): boolean =>
  gaps < than.gaps - SAME || (gaps <= than.gaps + SAME && turns < than.turns);

/** Shapes of which there are any. */
function shapesPresent(counts: readonly number[]): number[] {
  const present: number[] = [];
  for (let s = 0; s < counts.length; s++) if (at(counts, s) > 0) present.push(s);
  return present;
}

export function rowsOf(net: Net): Rows {
  const rows: Rows = {
    work: 0,
    states: (counts) => {
      const present = shapesPresent(counts);
      const ways = present.reduce((sum, s) => sum + pick(net.waysOf, s).length, 0);
      return present.reduce((all, s) => all * (at(counts, s) + 1), ways);
    },
    exact: (counts) => exactOrder(net, counts, rows),
    measured: (row) => rowAlong(net, measured(net, row)),
    nearest: (counts, starts) => nearestOrder(net, counts, starts, rows),
  };
  return rows;
}

/** The shapes of a row to be put in order, with what their ways take beside each other. */
interface Choice {
  readonly ways: readonly number[];
  /** Which of the shapes each way is of. */
  readonly of: Int32Array;
  /** How many of each shape there are. */
  readonly counts: Int32Array;
  /** What one of each shape counts in the number of a rest, whose digits are how many of each are still to come. */
  readonly step: Int32Array;
  readonly rests: number;
  /** Between way `a` and its right neighbor `b`, at `a * ways + b`; `turns` with those within `b`. */
  readonly gaps: Float64Array;
  readonly turns: Int32Array;
}

function choiceOf({ ways, waysOf, gap, turns }: Net, counts: readonly number[]): Choice {
  const present = shapesPresent(counts);
  const all = present.flatMap((s) => pick(waysOf, s));
  let rests = 1;
  const step = Int32Array.from(present, (s) => {
    const before = rests;
    rests *= at(counts, s) + 1;
    return before;
  });
  const pairs = all.flatMap((a) => all.map((b) => ({ a, b })));
  return {
    ways: all,
    of: Int32Array.from(all, (w) => present.indexOf(pick(ways, w).shape)),
    counts: Int32Array.from(present, (s) => at(counts, s)),
    step,
    rests,
    gaps: Float64Array.from(pairs, ({ a, b }) => gap(a, b)),
    turns: Int32Array.from(pairs, ({ a, b }) => turns(a, b) + pick(ways, b).within),
  };
}

/** Dynamic program over how many of each shape are still to come and the piece before them, fewest to come first. */
function exactOrder(net: Net, counts: readonly number[], rows: Rows): Row {
  const choice = choiceOf(net, counts);
  const { ways, of, step, rests } = choice;
  const many = ways.length;
  const gaps = new Float64Array(rests * many);
  const turns = new Int32Array(rests * many);
  const nexts = new Int32Array(rests * many).fill(-1);
  const left = new Int32Array(choice.counts.length);
  for (let rest = 1; rest < rests - 1; rest++) {
    countUp(left, choice.counts);
    for (let before = 0; before < many; before++) {
      // A piece that lies there already is not to come: of its shape one less is left.
      if (whole(left, whole(of, before)) === whole(choice.counts, whole(of, before))) continue;
      let least = Infinity;
      let fewest = Infinity;
      let next = -1;
      for (let w = 0; w < many; w++) {
        const k = whole(of, w);
        if (whole(left, k) === 0) continue;
        rows.work += 1;
        const after = (rest - whole(step, k)) * many + w;
        const taken = real(gaps, after) + real(choice.gaps, before * many + w);
        if (taken > least + SAME) continue;
        const turned = whole(turns, after) + whole(choice.turns, before * many + w);
        if (taken >= least - SAME && turned >= fewest) continue;
        least = taken;
        fewest = turned;
        next = w;
      }
      gaps[rest * many + before] = least;
      turns[rest * many + before] = fewest;
      nexts[rest * many + before] = next;
    }
  }
  let best = { gaps: Infinity, turns: Infinity, first: -1 };
  for (let w = 0; w < many; w++) {
    const after = (rests - 1 - whole(step, whole(of, w))) * many + w;
    const turned = whole(turns, after) + pick(net.ways, at(ways, w)).within;
    if (better(real(gaps, after), turned, best)) best = { gaps: real(gaps, after), turns: turned, first: w };
  }
  const order: Placed[] = [];
  let rest = rests - 1;
  for (let w = best.first; w >= 0; w = whole(nexts, rest * many + w)) {
    const { shape, lying } = pick(net.ways, at(ways, w));
    order.push({ shape, lying });
    rest -= whole(step, whole(of, w));
  }
  return best.first < 0 ? { gaps: 0, turns: 0, order } : { gaps: best.gaps, turns: best.turns, order };
}

/** The next rest: one more of the first shape of which there may be more, none of those before. */
function countUp(left: Int32Array, most: Int32Array): void {
  for (let k = 0; k < left.length; k++) {
    if (whole(left, k) < whole(most, k)) {
      left[k] = whole(left, k) + 1;
      return;
    }
    left[k] = 0;
  }
}

/** First pieces: spread over the ways that there are. */
function startsAmong(present: readonly number[], starts: number): number[] {
  if (present.length <= starts) return [...present];
  return Array.from({ length: starts }, (_, k) => at(present, Math.floor((k * present.length) / starts)));
}

function nearestOrder(net: Net, counts: readonly number[], starts: number, rows: Rows): Row {
  const { waysOf } = net;
  const present = shapesPresent(counts);
  let best: Ordered = { gaps: Infinity, turns: Infinity, row: [] };
  for (const start of startsAmong(
    present.flatMap((s) => pick(waysOf, s)),
    starts,
  )) {
    const found = rowFrom(net, present, counts, start, rows);
    if (better(found.gaps, found.turns, best)) best = found;
  }
  return rowAlong(net, best);
}

const rowAlong = ({ ways }: Net, { gaps, turns, row }: Ordered): Row => ({
  gaps,
  turns,
  order: row.map((w) => ({ shape: pick(ways, w).shape, lying: pick(ways, w).lying })),
});

interface Ordered {
  readonly gaps: Mm;
  readonly turns: number;
  readonly row: readonly number[];
}

function measured({ ways, gap, turns }: Net, row: readonly number[]): Ordered {
  let sum = 0;
  let turned = 0;
  row.forEach((w, k) => {
    turned += pick(ways, w).within;
    if (k === 0) return;
    sum += gap(at(row, k - 1), w);
    turned += turns(at(row, k - 1), w);
  });
  return { gaps: sum, turns: turned, row };
}

/** Each next piece is the one whose end goes best with the last: what it takes over its own share is least. */
function rowFrom(
  net: Net,
  present: readonly number[],
  counts: readonly number[],
  start: number,
  rows: Rows,
): Ordered {
  const { ways, waysOf, gap, shareLeft } = net;
  const left = Int32Array.from(present, (s) => at(counts, s));
  const row: number[] = [];
  for (let next = start; next >= 0; ) {
    row.push(next);
    const k = present.indexOf(pick(ways, next).shape);
    left[k] = whole(left, k) - 1;
    const before = next;
    next = -1;
    let nearest = Infinity;
    for (let s = 0; s < left.length; s++) {
      if (whole(left, s) === 0) continue;
      const list = pick(waysOf, at(present, s));
      rows.work += list.length;
      for (const w of list) {
        const over = gap(before, w) - real(shareLeft, w);
        if (over < nearest - SAME) {
          nearest = over;
          next = w;
        }
      }
    }
  }
  return measured(net, row);
}
