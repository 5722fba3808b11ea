import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { leftPoint } from './leastGaps.ts';
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

interface Tail {
  readonly gaps: Mm;
  readonly turns: number;
  readonly next: number;
}

/** Ends of rows remembered. */
const MOST_TAILS = 300_000;
/** A state is looked up by a text, which takes as long as so many pairs. */
const STATE_WORK = 50;
const SAME: Mm = 1e-7;

const better = (gaps: Mm, turns: number, than: Pick<Tail, 'gaps' | 'turns'>): boolean =>
  gaps < than.gaps - SAME || (gaps <= than.gaps + SAME && turns < than.turns);

/** Shapes of which there are any. */
function shapesPresent(counts: readonly number[]): number[] {
  const present: number[] = [];
  for (let s = 0; s < counts.length; s++) if (at(counts, s) > 0) present.push(s);
  return present;
}

export function rowsOf(net: Net): Rows {
  /** Ends of rows, kept from one call to the next, since smaller rows are the ends of larger ones. */
  const tails = new Map<string, Tail>();
  const shareLeft = net.ways.map((w) => leftPoint(w.ends.left).share);
  const rows: Rows = {
    work: 0,
    states: (counts) => {
      const present = shapesPresent(counts);
      const ways = present.reduce((sum, s) => sum + pick(net.waysOf, s).length, 0);
      return present.reduce((all, s) => all * (at(counts, s) + 1), ways);
    },
    exact: (counts) => exactOrder(net, counts, tails, rows),
    measured: (row) => rowAlong(net, measured(net, row)),
    nearest: (counts, starts) => nearestOrder(net, shareLeft, counts, starts, rows),
  };
  return rows;
}

/** Dynamic program over how many of each shape are still to come and the piece before them. */
function exactOrder(net: Net, counts: readonly number[], tails: Map<string, Tail>, rows: Rows): Row {
  const { ways, waysOf, gap, turns } = net;
  const present = shapesPresent(counts);
  const left = present.map((s) => at(counts, s));
  if (tails.size > MOST_TAILS) tails.clear();
  const tail = (before: number): Tail => {
    let key = `${before}`;
    for (let k = 0; k < left.length; k++) if (at(left, k) > 0) key += `,${at(present, k)}:${at(left, k)}`;
    rows.work += STATE_WORK;
    const known = tails.get(key);
    if (known) return known;
    let best: Tail = { gaps: Infinity, turns: Infinity, next: -1 };
    let ended = true;
    for (let k = 0; k < left.length; k++) {
      if (at(left, k) === 0) continue;
      ended = false;
      left[k] = at(left, k) - 1;
      for (const w of pick(waysOf, at(present, k))) {
        const rest = tail(w);
        const gaps = rest.gaps + (before < 0 ? 0 : gap(before, w));
        const turned = rest.turns + pick(ways, w).within + (before < 0 ? 0 : turns(before, w));
        if (better(gaps, turned, best)) best = { gaps, turns: turned, next: w };
      }
      left[k] = at(left, k) + 1;
    }
    if (ended) best = { gaps: 0, turns: 0, next: -1 };
    tails.set(key, best);
    return best;
  };
  const whole = tail(-1);
  const order: Placed[] = [];
  let step = whole;
  while (step.next >= 0) {
    const { shape, lying } = pick(ways, step.next);
    order.push({ shape, lying });
    const k = present.indexOf(shape);
    left[k] = at(left, k) - 1;
    step = tail(step.next);
  }
  return { gaps: whole.gaps, turns: whole.turns, order };
}

/** First pieces: spread over the ways that there are. */
function startsAmong(present: readonly number[], starts: number): number[] {
  if (present.length <= starts) return [...present];
  return Array.from({ length: starts }, (_, k) => at(present, Math.floor((k * present.length) / starts)));
}

function nearestOrder(
  net: Net,
  shareLeft: readonly Mm[],
  counts: readonly number[],
  starts: number,
  rows: Rows,
): Row {
  const { waysOf } = net;
  const present = shapesPresent(counts);
  let best: Ordered = { gaps: Infinity, turns: Infinity, row: [] };
  for (const start of startsAmong(
    present.flatMap((s) => pick(waysOf, s)),
    starts,
  )) {
    const found = rowFrom(net, shareLeft, present, counts, start, rows);
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
  shareLeft: readonly Mm[],
  present: readonly number[],
  counts: readonly number[],
  start: number,
  rows: Rows,
): Ordered {
  const { ways, waysOf, gap } = net;
  const left = present.map((s) => at(counts, s));
  const row: number[] = [];
  for (let next = start; next >= 0; ) {
    row.push(next);
    const k = present.indexOf(pick(ways, next).shape);
    left[k] = at(left, k) - 1;
    const before = next;
    next = -1;
    let nearest = Infinity;
    for (let s = 0; s < left.length; s++) {
      if (at(left, s) === 0) continue;
      const list = pick(waysOf, at(present, s));
      rows.work += list.length;
      for (const w of list) {
        const over = gap(before, w) - at(shareLeft, w);
        if (over < nearest - SAME) {
          nearest = over;
          next = w;
        }
      }
    }
  }
  return measured(net, row);
}
