import { surrounds } from '../geometry/box.ts';
import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { at, lastOf } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { type Cuts, cellsOf } from './cells.ts';
import type { Parting } from './grid.ts';
import { hasInk, type WholeInk } from './ink.ts';
import type { Sheet } from './paper.ts';

interface Span {
  readonly low: Mm;
  readonly high: Mm;
}

/** Trim lines keep this far from letters where they can. */
const CLEAR: Mm = 3;

/** Places looked at; where letters are so many that there would be more, they are thinned evenly. */
const MOST_PLACES = 6000;

/** Places for a trim line: the middle of each gap between letters, beside each letter, and full pages on. */
function places(low: Mm, high: Mm, keep: readonly Span[], room: Mm, overlap: Mm): Mm[] {
  const step = room - overlap;
  const spans = [...keep].sort((a, b) => a.low - b.low || a.high - b.high);
  const found: Mm[] = [];
  let reach = low;
  for (const span of spans) {
    if (span.low > reach) found.push((reach + span.low) / 2);
    reach = Math.max(reach, span.high);
    found.push(span.low - CLEAR, span.low, span.high, span.high + CLEAR);
  }
  const most = Math.ceil(MOST_PLACES / (1 + (high - low) / step));
  const every = Math.max(1, found.length / most);
  const kept = Array.from({ length: Math.floor(found.length / every) }, (_, i) =>
    at(found, Math.floor(i * every)),
  );
  const all: Mm[] = [];
  const add = (at: Mm) => {
    if (at > low + SAME_LENGTH && at < high - SAME_LENGTH) all.push(at);
  };
  kept.forEach(add);
  for (const from of [low + overlap / 2, ...kept]) {
    for (let at = from + step; at < high; at += step) add(at);
  }
  const sorted = Float64Array.from(all).sort();
  return [low, ...sorted.filter((at, i) => at !== sorted[i - 1]), high];
}

/** Tells how many spans, grown by `clear`, a line cuts. */
function splitBy(keep: readonly Span[], clear: Mm): (at: Mm) => number {
  const by = clear - SAME_LENGTH;
  const grown = keep.map((s) => ({ low: s.low - by, high: s.high + by })).filter((s) => s.low < s.high);
  const lows = Float64Array.from(grown, (s) => s.low).sort();
  const highs = Float64Array.from(grown, (s) => s.high).sort();
  // Every span that began before the line and has not ended at it.
  return (at) => below(lows, at, false) - below(highs, at, true);
}

/** How many entries of a sorted list lie below a value, or also at it. */
function below(sorted: Float64Array, value: Mm, orAt: boolean): number {
  let low = 0;
  let high = sorted.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    const entry = at(sorted, mid);
    if (entry < value || (orAt && entry === value)) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Best ways found to places: what each costs, and the place before; 0 is the start. */
class Ways {
  readonly before: Int32Array;
  readonly uneven: Float64Array;
  private readonly split: Int32Array;
  private readonly pages: Int32Array;
  private readonly tight: Int32Array;

  constructor(count: number) {
    this.before = new Int32Array(count).fill(-1);
    this.uneven = new Float64Array(count);
    this.split = new Int32Array(count);
    this.pages = new Int32Array(count);
    this.tight = new Int32Array(count);
  }

  /** Letters split, then pages, then letters near a line: less than 0 where `a` is the better way. */
  compare(a: number, b: number): number {
    return (
      at(this.split, a) - at(this.split, b) ||
      at(this.pages, a) - at(this.pages, b) ||
      at(this.tight, a) - at(this.tight, b)
    );
  }

  /** Whether neither of two ways is the better one; asked of most pairs, and so without a comparison. */
  alike(a: number, b: number): boolean {
    const { split, pages, tight } = this;
    return split[a] === split[b] && pages[a] === pages[b] && tight[a] === tight[b];
  }

  reached(place: number): boolean {
    return this.before[place] !== -1;
  }

  reach(to: number, from: number, uneven: Mm, split: number, tight: number): void {
    this.before[to] = from;
    this.uneven[to] = uneven;
    this.split[to] = at(this.split, from) + split;
    this.pages[to] = at(this.pages, from) + 1;
    this.tight[to] = at(this.tight, from) + tight;
  }
}

/**
 * Trim lines that split as few of the spans as can be, then make as few pages, then keep clear of
 * letters, then make pages as equal as can be: the best way to each place from the best ways to the places
 * before it. Of the places within reach only the best are kept in line, since a long story stick has tens
 * of thousands.
 */
export function cutsBetween(low: Mm, high: Mm, keep: readonly Span[], room: Mm, overlap: Mm): Cuts {
  const fitting = keep.filter((s) => s.high - s.low <= room - overlap);
  const stops = places(low, high, fitting, room, overlap);
  const [split, tight] = [splitBy(fitting, 0), splitBy(fitting, CLEAR)];
  const last = stops.length - 1;
  const ways = new Ways(stops.length);
  const reaches = (k: number, i: number): boolean => {
    const size = at(stops, i) - at(stops, k);
    const shared = ((k > 0 ? 1 : 0) + (i < last ? 1 : 0)) * (overlap / 2);
    return size <= room && size + shared <= room + SAME_LENGTH;
  };
  // Places after the start, none better than those before it: the best stand first.
  let line: number[] = [];
  let head = 0;
  for (let i = 1; i <= last; i++) {
    if (i === last) {
      // Nothing is shared at the end, which brings places within reach again.
      line = [];
      head = 0;
      for (let k = 1; k < last; k++) if (ways.reached(k)) stand(line, head, ways, k);
    }
    while (head < line.length && !reaches(at(line, head), i)) head += 1;
    let from = reaches(0, i) ? 0 : -1;
    let uneven = from < 0 ? Infinity : (at(stops, i) - low) ** 2;
    // Of those that are as good as the best, which stand first, the one that makes pages most equal.
    let best = -1;
    let least = Infinity;
    for (let turn = head; turn < line.length; turn++) {
      const k = at(line, turn);
      if (!ways.alike(k, at(line, head))) break;
      const next = at(ways.uneven, k) + (at(stops, i) - at(stops, k)) ** 2;
      if (next > least) continue;
      best = k;
      least = next;
    }
    if (best >= 0 && (from < 0 || (ways.compare(best, from) || least - uneven) <= 0)) {
      from = best;
      uneven = least;
    }
    if (from < 0) continue;
    ways.reach(i, from, uneven, i === last ? 0 : split(at(stops, i)), i === last ? 0 : tight(at(stops, i)));
    stand(line, head, ways, i);
  }
  const cuts: Mm[] = [];
  for (let i = last; i >= 0; i = at(ways.before, i)) cuts.unshift(at(stops, i));
  return cuts;
}

/** Puts a place in line and sends away those from `head` on that it beats: it stays within reach longer. */
function stand(line: number[], head: number, ways: Ways, place: number): void {
  while (line.length > head && ways.compare(lastOf(line), place) > 0) line.pop();
  line.push(place);
}

const spanX = (b: Box): Span => ({ low: b.x, high: b.x + b.w });
const spanY = (b: Box): Span => ({ low: b.y, high: b.y + b.h });

/** Does a letter fit on a page of this sheet, between its trim lines? */
export const fitsOn = (sheet: Sheet, letter: Box): boolean =>
  letter.w <= sheet.room.w - sheet.overlap && letter.h <= sheet.room.h - sheet.overlap;

/** How many of the letters do not lie on one page, between its trim lines. */
export function splitLetters(parting: Parting, letters: readonly Box[]): number {
  return letters.filter((letter) => !parting.cells.some(({ box }) => surrounds(box, letter, SAME_LENGTH)))
    .length;
}

/**
 * Pages that keep letters whole: rows between the lines of letters, and in every row its own trim lines
 * between the letters of that row, like bricks.
 */
export function wholeLetters(ink: WholeInk, box: Box, letters: readonly Box[], sheet: Sheet): Parting {
  const { room, overlap } = sheet;
  const up = cutsBetween(box.y, box.y + box.h, letters.map(spanY), room.h, overlap);
  const rows = up.length - 1;
  const acrossOf = (row: number): Cuts => {
    const [low, high] = [at(up, rows - 1 - row), at(up, rows - row)];
    const inRow = letters.filter((b) => b.y < high && b.y + b.h > low);
    return cutsBetween(box.x, box.x + box.w, inRow.map(spanX), room.w, overlap);
  };
  const cells = cellsOf(up, acrossOf).filter((cell) => hasInk(ink, cell.box));
  const columns = cells.reduce((most, cell) => Math.max(most, cell.column + 1), 1);
  return { sheet, box, cells, rows, columns };
}
