import { boxOf } from '../../src/geometry/region.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';

/**
 * Shapes as cells of a grid, and what of them a disk gets into: the morphological opening, found by exact distances
 * from cell to cell (P. Felzenszwalb, D. Huttenlocher, "Distance transforms of sampled functions", Theory of Computing
 * 8, 2012). Knows nothing of polygons but whether a cell's middle lies in one.
 */
export interface Grid {
  readonly box: Box;
  readonly step: number;
  readonly columns: number;
  readonly rows: number;
}

/** A 1 for each cell that is covered. */
export type Cells = Uint8Array;

/** A grid around a region, with a margin of empty cells. */
export function gridAround(region: Region, step: number, margin: number): Grid {
  const box = boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 };
  const [w, h] = [box.w + 2 * margin, box.h + 2 * margin];
  const [columns, rows] = [Math.ceil(w / step), Math.ceil(h / step)];
  return { box: { x: box.x - margin, y: box.y - margin, w, h }, step, columns, rows };
}

/** Cells whose middle lies in the region, by the even-odd rule along each row. */
export function cellsOf(region: Region, { box, step, columns, rows }: Grid): Cells {
  const crossed: number[][] = Array.from({ length: rows }, () => []);
  for (const polygon of region) {
    for (const ring of [polygon.outer, ...polygon.holes]) {
      ring.forEach((a, i) => {
        const b = ring[(i + 1) % ring.length] ?? a;
        const [low, high] = a.y < b.y ? [a, b] : [b, a];
        const first = Math.max(0, Math.ceil((low.y - box.y) / step - 0.5));
        const last = Math.min(rows - 1, Math.ceil((high.y - box.y) / step - 0.5) - 1);
        for (let row = first; row <= last; row += 1) {
          const y = box.y + (row + 0.5) * step;
          crossed[row]?.push(low.x + ((y - low.y) / (high.y - low.y)) * (high.x - low.x));
        }
      });
    }
  }
  const cells = new Uint8Array(columns * rows);
  crossed.forEach((xs, row) => {
    xs.sort((p, q) => p - q);
    for (let k = 0; k + 1 < xs.length; k += 2) {
      const from = Math.max(0, Math.ceil(((xs[k] ?? 0) - box.x) / step - 0.5));
      const to = Math.min(columns - 1, Math.ceil(((xs[k + 1] ?? 0) - box.x) / step - 0.5) - 1);
      if (to >= from) cells.fill(1, row * columns + from, row * columns + to + 1);
    }
  });
  return cells;
}

const FAR = 1e12;

/** Squared distance of every cell to the nearest covered one, in cells. */
function distances(cells: Cells, { columns, rows }: Grid): Float64Array {
  const field = Float64Array.from(cells, (covered) => (covered ? 0 : FAR));
  const line = new Float64Array(Math.max(columns, rows));
  for (let column = 0; column < columns; column += 1) along(field, column, columns, rows, line);
  for (let row = 0; row < rows; row += 1) along(field, row * columns, 1, columns, line);
  return field;
}

/** One row or column: the lower envelope of parabolas that stand at its cells. */
function along(field: Float64Array, start: number, stride: number, count: number, line: Float64Array): void {
  const stands = new Int32Array(count);
  const from = new Float64Array(count + 1);
  for (let i = 0; i < count; i += 1) line[i] = field[start + i * stride] ?? FAR;
  const height = (i: number): number => line[i] ?? FAR;
  let top = 0;
  from[0] = -Infinity;
  from[1] = Infinity;
  for (let i = 1; i < count; i += 1) {
    let meets = 0;
    for (;;) {
      const other = stands[top] ?? 0;
      meets = (height(i) + i * i - height(other) - other * other) / (2 * (i - other));
      if (meets > (from[top] ?? 0) || top === 0) break;
      top -= 1;
    }
    top = meets > (from[top] ?? 0) ? top + 1 : top;
    stands[top] = i;
    from[top] = top === 0 ? -Infinity : meets;
    from[top + 1] = Infinity;
  }
  let at = 0;
  for (let i = 0; i < count; i += 1) {
    while ((from[at + 1] ?? Infinity) < i) at += 1;
    const other = stands[at] ?? 0;
    field[start + i * stride] = (i - other) ** 2 + height(other);
  }
}

const inverse = (cells: Cells): Cells => cells.map((covered) => 1 - covered);

/** Covered cells that no disk of the radius inside of the shape covers. */
export function thinIn(cells: Cells, grid: Grid, radius: number): Cells {
  const reach = (radius / grid.step) ** 2;
  const toOutside = distances(inverse(cells), grid);
  const middles = Uint8Array.from(toOutside, (d) => (d >= reach ? 1 : 0));
  const toMiddle = distances(middles, grid);
  return cells.map((covered, i) => (covered && (toMiddle[i] ?? 0) > reach ? 1 : 0));
}

/** Cells no farther than this from a covered one. */
export function grown(cells: Cells, grid: Grid, by: number): Cells {
  const reach = (by / grid.step) ** 2;
  return Uint8Array.from(distances(cells, grid), (d) => (d <= reach ? 1 : 0));
}

/** A group of covered cells that hang together. */
export interface Patch {
  readonly area: number;
  /** From corner to corner of its box. */
  readonly length: number;
  readonly at: { readonly x: number; readonly y: number };
  readonly cells: readonly number[];
}

export function patchesOf(cells: Cells, { box, step, columns, rows }: Grid): Patch[] {
  const left = cells.slice();
  const patches: Patch[] = [];
  for (let seed = 0; seed < left.length; seed += 1) {
    if (!left[seed]) continue;
    const own: number[] = [];
    const stack = [seed];
    left[seed] = 0;
    let [west, east, south, north] = [columns, 0, rows, 0];
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      own.push(at);
      const [column, row] = [at % columns, Math.floor(at / columns)];
      [west, east] = [Math.min(west, column), Math.max(east, column)];
      [south, north] = [Math.min(south, row), Math.max(north, row)];
      const beside = [
        column > 0 ? at - 1 : -1,
        column + 1 < columns ? at + 1 : -1,
        at - columns,
        at + columns,
      ];
      for (const next of beside) {
        if (next < 0 || next >= left.length || !left[next]) continue;
        left[next] = 0;
        stack.push(next);
      }
    }
    patches.push({
      area: own.length * step * step,
      length: Math.hypot(east - west + 1, north - south + 1) * step,
      at: { x: box.x + ((west + east + 1) / 2) * step, y: box.y + ((south + north + 1) / 2) * step },
      cells: own,
    });
  }
  return patches;
}
