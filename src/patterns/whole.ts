import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import { type Cuts, cellsOf } from './cells.ts';
import type { Parting } from './grid.ts';
import { hasInk, type Ink } from './ink.ts';
import type { Sheet } from './paper.ts';

interface Span {
  readonly low: Mm;
  readonly high: Mm;
}

/** Trim lines keep this far from letters where they can. */
const CLEAR: Mm = 3;

/** Best way found to a place: what it costs, and the place before. */
interface Way {
  readonly split: number;
  readonly pages: number;
  readonly tight: number;
  readonly uneven: number;
  readonly before: number;
}

/** Places for a trim line: the middle of each gap between letters, beside each letter, and full pages on. */
function places(low: Mm, high: Mm, keep: readonly Span[], room: Mm, overlap: Mm): Mm[] {
  const step = room - overlap;
  const sorted = [...keep].sort((a, b) => a.low - b.low || a.high - b.high);
  const found: Mm[] = [];
  let reach = low;
  for (const span of sorted) {
    if (span.low > reach) found.push((reach + span.low) / 2);
    reach = Math.max(reach, span.high);
    found.push(span.low - CLEAR, span.low, span.high, span.high + CLEAR);
  }
  for (const from of [low + overlap / 2, ...found]) {
    for (let at = from + step; at < high; at += step) found.push(at);
  }
  const inside = found.filter((at) => at > low + SAME_LENGTH && at < high - SAME_LENGTH);
  return [low, ...[...new Set(inside)].sort((a, b) => a - b), high];
}

/** How many spans, grown by `clear`, a line cuts. */
const splitAt = (at: Mm, keep: readonly Span[], clear: Mm) => {
  const by = clear - SAME_LENGTH;
  return keep.reduce((n, s) => n + (at > s.low - by && at < s.high + by ? 1 : 0), 0);
};

/**
 * Trim lines that split as few of the spans as can be, then make as few pages, then keep clear of
 * letters, then make pages as equal as can be: the best way to each place from the best ways to the places before it.
 */
export function cutsBetween(low: Mm, high: Mm, keep: readonly Span[], room: Mm, overlap: Mm): Cuts {
  const fitting = keep.filter((s) => s.high - s.low <= room - overlap);
  const at = places(low, high, fitting, room, overlap);
  const ways: (Way | null)[] = at.map((_, i) =>
    i === 0 ? { split: 0, pages: 0, tight: 0, uneven: 0, before: -1 } : null,
  );
  const last = at.length - 1;
  for (let i = 1; i <= last; i++) {
    const to = at[i] as Mm;
    const split = i === last ? 0 : splitAt(to, fitting, 0);
    const tight = i === last ? 0 : splitAt(to, fitting, CLEAR);
    for (let k = i - 1; k >= 0; k--) {
      const from = at[k] as Mm;
      const shared = ((k > 0 ? 1 : 0) + (i < last ? 1 : 0)) * (overlap / 2);
      if (to - from > room) break;
      const way = ways[k];
      if (!way || to - from + shared > room + SAME_LENGTH) continue;
      const next: Way = {
        split: way.split + split,
        pages: way.pages + 1,
        tight: way.tight + tight,
        uneven: way.uneven + (to - from) ** 2,
        before: k,
      };
      const best = ways[i];
      if (!best || isBetter(next, best)) ways[i] = next;
    }
  }
  const cuts: Mm[] = [];
  for (let i = last; i >= 0; i = ways[i]?.before ?? -1) cuts.unshift(at[i] as Mm);
  return cuts;
}

function isBetter(a: Way, b: Way): boolean {
  if (a.split !== b.split) return a.split < b.split;
  if (a.pages !== b.pages) return a.pages < b.pages;
  return a.tight !== b.tight ? a.tight < b.tight : a.uneven < b.uneven;
}

const spanX = (b: Box): Span => ({ low: b.x, high: b.x + b.w });
const spanY = (b: Box): Span => ({ low: b.y, high: b.y + b.h });

/** Does a letter fit on a page of this sheet, between its trim lines? */
export const fitsOn = (sheet: Sheet, letter: Box): boolean =>
  letter.w <= sheet.room.w - sheet.overlap && letter.h <= sheet.room.h - sheet.overlap;

/** How many of the letters do not lie on one page, between its trim lines. */
export function splitLetters(parting: Parting, letters: readonly Box[]): number {
  const inCell = (letter: Box) =>
    parting.cells.some(
      ({ box }) =>
        letter.x >= box.x - SAME_LENGTH &&
        letter.y >= box.y - SAME_LENGTH &&
        letter.x + letter.w <= box.x + box.w + SAME_LENGTH &&
        letter.y + letter.h <= box.y + box.h + SAME_LENGTH,
    );
  return letters.filter((letter) => !inCell(letter)).length;
}

/**
 * Pages that keep letters whole: rows between the lines of letters, and in every row its own trim lines
 * between the letters of that row, like bricks.
 */
export function wholeLetters(ink: Ink, box: Box, letters: readonly Box[], sheet: Sheet): Parting {
  const { room, overlap } = sheet;
  const up = cutsBetween(box.y, box.y + box.h, letters.map(spanY), room.h, overlap);
  const rows = up.length - 1;
  const acrossOf = (row: number): Cuts => {
    const [low, high] = [up[rows - 1 - row] as Mm, up[rows - row] as Mm];
    const inRow = letters.filter((b) => b.y < high && b.y + b.h > low);
    return cutsBetween(box.x, box.x + box.w, inRow.map(spanX), room.w, overlap);
  };
  const cells = cellsOf(up, acrossOf).filter((cell) => hasInk(ink, cell.box));
  const columns = cells.reduce((most, cell) => Math.max(most, cell.column + 1), 1);
  return { sheet, box, cells, rows, columns };
}
