import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import { type Cell, type Cuts, cellsOf, pagesAlong } from './cells.ts';
import { hasInk, type Ink, type WholeInk } from './ink.ts';
import { Occupancy } from './occupancy.ts';
import type { Sheet } from './paper.ts';

/** A way to part the pattern into pages, blank ones left out. */
export interface Parting {
  readonly sheet: Sheet;
  /** What of the pattern the grid covers. */
  readonly box: Box;
  readonly cells: readonly Cell[];
  readonly rows: number;
  readonly columns: number;
}

/** Outlines whose borders are tried as places for a trim line; more would only cost time. */
const MOST_EDGES = 36;
/** Gridded partings that are looked at exactly after the coarse search. */
const FINALISTS = 6;

/** The trim lines of a grid whose first page starts at `start`: pages as wide as the room, one step apart. */
function cutsFrom(start: Mm, low: Mm, high: Mm, room: Mm, overlap: Mm): Cuts {
  const step = room - overlap;
  const cuts = [low];
  for (let i = 1; start + (i - 1) * step + room < high - SAME_LENGTH; i++) {
    cuts.push(start + i * step + overlap / 2);
  }
  return [...cuts, high];
}

/**
 * Trim lines worth trying in one direction: flush with either end, about centered, and each border of an outline
 * on a trim line, as far as that takes no more pages than need be.
 */
function candidates(low: Mm, high: Mm, edges: readonly Mm[], room: Mm, overlap: Mm): Cuts[] {
  const step = room - overlap;
  const slack = pagesAlong(high - low, room, overlap) * step + overlap - (high - low);
  // Not quite centered: a trim line on the pattern's center line would hide one of the two.
  const starts = [low - 0.4 * slack, low, low - slack];
  for (const edge of edges) {
    const past = (((edge - overlap / 2 - low) % step) + step) % step;
    // The page before the pattern's low end may begin up to `slack` below it.
    const start = low + past - step;
    if (start >= low - slack) starts.push(start);
  }
  const kept = starts.map((start) => cutsFrom(start, low, high, room, overlap));
  const seen = new Set<string>();
  return kept.filter((cuts) => {
    const key = cuts.map((c) => c.toFixed(3)).join();
    return seen.has(key) ? false : seen.add(key);
  });
}

/** Borders of the outlines, evenly thinned; a little outside, so that the line itself stays on one side. */
function edgesOf(ink: Ink, axis: 'x' | 'y'): Mm[] {
  const size = axis === 'x' ? 'w' : 'h';
  const clear = 0.5;
  const all = ink.extents.flatMap((e) => [e[axis] - clear, e[axis] + e[size] + clear]).sort((a, b) => a - b);
  const step = Math.max(1, all.length / MOST_EDGES);
  const kept: Mm[] = [];
  for (let i = 0; i < all.length; i += step) kept.push(all[Math.floor(i)] as Mm);
  return kept;
}

/** Texts that the trim lines between the ends run through. */
function splitTexts(cuts: Cuts, texts: readonly Box[], axis: 'x' | 'y'): number {
  const size = axis === 'x' ? 'w' : 'h';
  const lines = cuts.slice(1, -1);
  return texts.filter((t) => lines.some((at) => at > t[axis] && at < t[axis] + t[size])).length;
}

/** Cells of a grid that may have ink. */
function takenCells(coarse: Occupancy, up: Cuts, across: Cuts): number {
  let taken = 0;
  for (let r = 0; r + 1 < up.length; r++) {
    const y = up[r] ?? 0;
    const h = (up[r + 1] ?? 0) - y;
    for (let c = 0; c + 1 < across.length; c++) {
      const x = across[c] ?? 0;
      if (coarse.count({ x, y, w: (across[c + 1] ?? 0) - x, h }) > 0) taken++;
    }
  }
  return taken;
}

/** The grid on this sheet with the fewest pages that have ink, and of those one that cuts few texts. */
export function bestGrid(ink: WholeInk, box: Box, sheet: Sheet): Parting {
  const { room, overlap } = sheet;
  const across = candidates(box.x, box.x + box.w, edgesOf(ink, 'x'), room.w, overlap);
  const up = candidates(box.y, box.y + box.h, edgesOf(ink, 'y'), room.h, overlap);
  const step = Math.max(2, Math.max(box.w, box.h) / 1200);
  const coarse = new Occupancy(box, { ...ink, besides: [] }, [], step);
  const splitUp = up.map((cuts) => splitTexts(cuts, ink.texts, 'y'));
  const splitAcross = across.map((cuts) => splitTexts(cuts, ink.texts, 'x'));
  const found: { count: number; split: number; order: number; rowCuts: Cuts; columnCuts: Cuts }[] = [];
  for (const [i, rowCuts] of up.entries()) {
    for (const [k, columnCuts] of across.entries()) {
      const count = takenCells(coarse, rowCuts, columnCuts);
      const split = (splitUp[i] ?? 0) + (splitAcross[k] ?? 0);
      found.push({ count, split, order: i + k, rowCuts, columnCuts });
    }
  }
  found.sort((a, b) => a.count - b.count || a.split - b.split || a.order - b.order);
  const exact = found.slice(0, FINALISTS).map(({ rowCuts, columnCuts }) => ({
    sheet,
    box,
    rows: rowCuts.length - 1,
    columns: columnCuts.length - 1,
    cells: cellsOf(rowCuts, () => columnCuts).filter((cell) => hasInk(ink, cell.box)),
  }));
  return exact.reduce((best, next) => (next.cells.length < best.cells.length ? next : best));
}

/**
 * What a grid on this sheet may cover: all of the pattern where that takes no more pages along a direction
 * than what pages are made for, else as much around that as those pages hold.
 */
export function coverOf(ink: { readonly main: Box; readonly box: Box }, { room, overlap }: Sheet): Box {
  const x = spanOf(ink.main.x, ink.main.w, ink.box.x, ink.box.w, room.w, overlap);
  const y = spanOf(ink.main.y, ink.main.h, ink.box.y, ink.box.h, room.h, overlap);
  return { x: x.low, y: y.low, w: x.size, h: y.size };
}

function spanOf(low: Mm, size: Mm, wholeLow: Mm, whole: Mm, room: Mm, overlap: Mm): { low: Mm; size: Mm } {
  const most = pagesAlong(size, room, overlap) * (room - overlap) + overlap;
  if (whole <= most) return { low: wholeLow, size: whole };
  const middle = low - (most - size) / 2;
  return { low: Math.min(Math.max(middle, wholeLow), wholeLow + whole - most), size: most };
}
