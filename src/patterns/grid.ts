import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { at, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { type Cell, type Cuts, cellsOf, pagesAlong } from './cells.ts';
import { hasInk, type Ink, type WholeInk } from './ink.ts';
import { type Occupancy, occupancyOf } from './occupancy.ts';
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
  const all = new Float64Array(2 * ink.extents.length);
  ink.extents.forEach((e, i) => {
    all[2 * i] = e[axis] - clear;
    all[2 * i + 1] = e[axis] + e[size] + clear;
  });
  all.sort();
  const step = Math.max(1, all.length / MOST_EDGES);
  const kept: Mm[] = [];
  for (let i = 0; i < all.length; i += step) kept.push(at(all, Math.floor(i)));
  return kept;
}

/** Texts that the trim lines between the ends run through. */
function splitTexts(cuts: Cuts, texts: readonly Box[], axis: 'x' | 'y'): number {
  const size = axis === 'x' ? 'w' : 'h';
  const lines = cuts.slice(1, -1);
  let split = 0;
  for (const t of texts) {
    const low = t[axis];
    const first = lines.find((at) => at > low);
    if (first !== undefined && first < low + t[size]) split++;
  }
  return split;
}

/** From the first to one past the last square of each stretch between two trim lines. */
function stretches(cuts: Cuts, squareAt: (at: Mm) => number): (readonly [number, number])[] {
  return cuts.slice(1).map((to, i) => {
    const from = at(cuts, i);
    return [squareAt(from), squareAt(from + (to - from)) + 1];
  });
}

/** Cells of a grid that may have ink, by the squares that its rows and columns take. */
function takenCells(
  coarse: Occupancy,
  rows: readonly (readonly [number, number])[],
  columns: readonly (readonly [number, number])[],
): number {
  let taken = 0;
  for (const [y0, y1] of rows) {
    for (const [x0, x1] of columns) if (coarse.between(x0, x1, y0, y1) > 0) taken++;
  }
  return taken;
}

interface Grid {
  readonly rowCuts: Cuts;
  readonly columnCuts: Cuts;
}

/** The grids that take fewest pages as far as the coarse squares tell, and cut few texts. */
function mostHopeful(ink: Ink, up: readonly Cuts[], across: readonly Cuts[], coarse: Occupancy): Grid[] {
  const rows = up.map((cuts) => stretches(cuts, (y) => coarse.row(y)));
  const columns = across.map((cuts) => stretches(cuts, (x) => coarse.column(x)));
  const splitUp = up.map((cuts) => splitTexts(cuts, ink.texts, 'y'));
  const splitAcross = across.map((cuts) => splitTexts(cuts, ink.texts, 'x'));
  const found = up.flatMap((rowCuts, i) =>
    across.map((columnCuts, k) => ({
      rowCuts,
      columnCuts,
      count: takenCells(coarse, pick(rows, i), pick(columns, k)),
      split: pick(splitUp, i) + pick(splitAcross, k),
      order: i + k,
    })),
  );
  found.sort((a, b) => a.count - b.count || a.split - b.split || a.order - b.order);
  return found.slice(0, FINALISTS);
}

/** The ink that may be worth a page, as finely as a search over grids needs it. */
export function coarseOf(ink: Ink, box: Box): Occupancy {
  const step = Math.max(2, Math.max(box.w, box.h) / 1200);
  return occupancyOf(box, { ...ink, besides: [] }, [], step);
}

/**
 * The grid on this sheet with the fewest pages that have ink, and of those one that cuts few texts.
 *
 * @param coarse gives the ink of the box, asked for where there is more than one grid to choose from
 */
export function bestGrid(ink: WholeInk, box: Box, sheet: Sheet, coarse: () => Occupancy): Parting {
  const { room, overlap } = sheet;
  const across = candidates(box.x, box.x + box.w, edgesOf(ink, 'x'), room.w, overlap);
  const up = candidates(box.y, box.y + box.h, edgesOf(ink, 'y'), room.h, overlap);
  const [rowCuts, columnCuts] = [up[0], across[0]];
  const only = up.length + across.length === 2 && rowCuts && columnCuts;
  const hopeful = only ? [{ rowCuts, columnCuts }] : mostHopeful(ink, up, across, coarse());
  const exact = hopeful.map(({ rowCuts, columnCuts }) => ({
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
