import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { at } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Sheet } from './paper.ts';

/**
 * The pattern is parted into cells by trim lines; a page shows its cell and half an overlap beyond each trim
 * line. Neighbors are cells that share a stretch of trim line.
 *
 *      window of A1
 *     ┌──────────────┐
 *     │  cell A1   ┊ │┈ ┈ ┈ ┐
 *     │            ┊ │  cell A2
 *     └──────────────┘┈ ┈ ┈ ┘
 *                  ┊ trim line
 */
export interface Cell {
  /** From the top. */
  readonly row: number;
  /** From the left. */
  readonly column: number;
  readonly box: Box;
}

/** Trim lines of one direction, from low to high: the ends of the pattern and all lines between. */
export type Cuts = readonly Mm[];

/** Number of pages along one direction at least: ceil((length - overlap) / (room - overlap)), 1 or more. */
export function pagesAlong(length: Mm, room: Mm, overlap: Mm): number {
  return Math.max(1, Math.ceil((length - overlap) / (room - overlap) - SAME_LENGTH));
}

/** Rows of cells from `up` (low to high), each parted by its own cuts across; rows are counted from the top. */
export function cellsOf(up: Cuts, acrossOf: (row: number) => Cuts): Cell[] {
  const cells: Cell[] = [];
  const rows = up.length - 1;
  for (let row = 0; row < rows; row++) {
    const low = at(up, rows - 1 - row);
    const high = at(up, rows - row);
    const across = acrossOf(row);
    for (let column = 0; column + 1 < across.length; column++) {
      const from = at(across, column);
      const to = at(across, column + 1);
      cells.push({ row, column, box: { x: from, y: low, w: to - from, h: high - low } });
    }
  }
  return cells;
}

/** Stretch of trim line between two cells, as seen from `cell`. */
export interface Joint {
  readonly other: Cell;
  readonly side: 'left' | 'right' | 'bottom' | 'top';
  /** Place of the line across its direction, and its ends along it. */
  readonly at: Mm;
  readonly from: Mm;
  readonly to: Mm;
}

const same = (a: Mm, b: Mm) => Math.abs(a - b) <= SAME_LENGTH;

export function jointsOf(cell: Cell, others: readonly Cell[]): Joint[] {
  const joints: Joint[] = [];
  const a = cell.box;
  for (const other of others) {
    if (other === cell) continue;
    const b = other.box;
    const y = { from: Math.max(a.y, b.y), to: Math.min(a.y + a.h, b.y + b.h) };
    const x = { from: Math.max(a.x, b.x), to: Math.min(a.x + a.w, b.x + b.w) };
    if (y.to - y.from > SAME_LENGTH) {
      if (same(a.x, b.x + b.w)) joints.push({ other, side: 'left', at: a.x, ...y });
      else if (same(a.x + a.w, b.x)) joints.push({ other, side: 'right', at: b.x, ...y });
    } else if (x.to - x.from > SAME_LENGTH) {
      if (same(a.y, b.y + b.h)) joints.push({ other, side: 'bottom', at: a.y, ...x });
      else if (same(a.y + a.h, b.y)) joints.push({ other, side: 'top', at: b.y, ...x });
    }
  }
  return joints;
}

/**
 * What belongs on the page of a cell: the cell and half an overlap beyond each of its trim lines. `whole` is
 * the box of the pattern, at whose ends there is nothing to join.
 */
export function shownAround(cell: Cell, whole: Box, sheet: Sheet): Box {
  const { x, y, w, h } = cell.box;
  const half = sheet.overlap / 2;
  const left = same(x, whole.x) ? 0 : half;
  const right = same(x + w, whole.x + whole.w) ? 0 : half;
  const bottom = same(y, whole.y) ? 0 : half;
  const top = same(y + h, whole.y + whole.h) ? 0 : half;
  return { x: x - left, y: y - bottom, w: w + left + right, h: h + bottom + top };
}

/**
 * The page's whole room, in the pattern's coordinates. What it shows stands in the upper left corner, so that
 * free room gathers at the right and below, large enough for the square and the ruler.
 */
export function windowAround(shown: Box, { room }: Sheet): Box {
  return { x: shown.x, y: shown.y + shown.h - room.h, w: room.w, h: room.h };
}
