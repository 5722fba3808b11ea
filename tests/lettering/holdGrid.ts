import { boxOf } from '../../src/geometry/region.ts';
import type { Box, Region, Ring } from '../../src/geometry/shape.ts';
import type { Stencil } from '../../src/lettering/result.ts';
import { barOf } from './held.ts';

/**
 * What holds the islands of a stencil, found out on a grid of small squares by trying: every bar in turn is cut
 * through and the sheet flooded from its frame. Knows what was cut and where bars are said to stand, nothing of how it was found.
 * Sheet nearer to the cut than half of `limit` counts as nothing, so that necks thinner than it hold nothing.
 */
export class HoldGrid {
  private readonly columns: number;
  private readonly rows: number;
  private readonly letters: Uint8Array;
  private readonly cut: Uint8Array;
  private readonly disk: readonly (readonly [number, number])[];
  private readonly pieces: Int32Array;
  /** Firm sheet that hangs on the frame as it is cut, and with each bar gone. */
  private readonly sheet: Uint8Array;
  private readonly without: readonly Uint8Array[];

  constructor(
    letters: Region,
    { cut, bridges }: Pick<Stencil, 'cut' | 'bridges'>,
    private readonly box: Box,
    private readonly step: number,
    limit: number,
  ) {
    this.columns = Math.round(box.w / step);
    this.rows = Math.round(box.h / step);
    this.letters = this.squaresIn(letters);
    this.cut = this.squaresIn(cut).map((inside, i) => inside & (this.letters[i] ?? 0));
    const radius = limit / 2 / step;
    const reach = Math.ceil(radius);
    const around = Array.from({ length: 2 * reach + 1 }, (_, i) => i - reach);
    this.disk = around.flatMap((y) =>
      around.filter((x) => Math.hypot(x, y) <= radius).map((x): [number, number] => [x, y]),
    );
    this.pieces = this.labels(this.firm(this.letters));
    const firm = this.firm(this.cut);
    this.sheet = this.flooded(firm);
    this.without = bridges.map((bridge) => {
      const bar = this.squaresIn([{ outer: barOf(bridge), holes: [] }]);
      const left = firm.slice();
      bar.forEach((inside, at) => {
        if (!inside || !this.letters[at]) return;
        for (const [x, y] of this.disk) left[at + x + y * this.columns] = 0;
      });
      return this.flooded(left);
    });
  }

  /** Bars that have to go before the piece of sheet within a border falls, counted to two; null for one all thin. */
  holdOf(border: Ring): number | null {
    const piece = this.pieceIn(border);
    if (piece === null) return null;
    if (!this.sheet[piece]) return 0;
    return this.without.some((sheet) => !sheet[piece]) ? 1 : 2;
  }

  /** A square of the largest firm piece that lies within a border, with no bar in place. */
  private pieceIn(border: Ring): number | null {
    const inside = this.squaresIn([{ outer: border, holes: [] }]);
    const sizes = new Map<number, { size: number; at: number }>();
    this.pieces.forEach((piece, at) => {
      if (piece === 0 || !inside[at]) return;
      const known = sizes.get(piece) ?? { size: 0, at };
      sizes.set(piece, { size: known.size + 1, at: known.at });
    });
    return [...sizes.values()].sort((a, b) => b.size - a.size)[0]?.at ?? null;
  }

  /** The sheet without what lies nearer to the cut than the limit allows. */
  private firm(cut: Uint8Array): Uint8Array {
    const firm = cut.map((open) => 1 - open);
    cut.forEach((open, at) => {
      if (!open || (cut[at - 1] && cut[at + 1] && cut[at - this.columns] && cut[at + this.columns])) return;
      for (const [x, y] of this.disk) firm[at + x + y * this.columns] = 0;
    });
    return firm;
  }

  /** What of the marked squares hangs together with the corner of the frame. */
  private flooded(marked: Uint8Array): Uint8Array {
    const reached = new Uint8Array(marked.length);
    const stack = [0];
    reached[0] = 1;
    for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
      for (const next of [at - this.columns, at - 1, at + 1, at + this.columns]) {
        if (!marked[next] || reached[next]) continue;
        reached[next] = 1;
        stack.push(next);
      }
    }
    return reached;
  }

  /** Connected pieces of the marked squares, numbered from 1; side by side is connected. The frame is wide enough for rows to run on into each other. */
  private labels(marked: Uint8Array): Int32Array {
    const labels = new Int32Array(marked.length);
    let count = 0;
    marked.forEach((mark, seed) => {
      if (!mark || labels[seed]) return;
      count += 1;
      labels[seed] = count;
      const stack = [seed];
      for (let at = stack.pop(); at !== undefined; at = stack.pop()) {
        for (const next of [at - this.columns, at - 1, at + 1, at + this.columns]) {
          if (!marked[next] || labels[next]) continue;
          labels[next] = count;
          stack.push(next);
        }
      }
    });
    return labels;
  }

  /** Squares whose middle lies in a region, row by row. */
  private squaresIn(region: Region): Uint8Array {
    const squares = new Uint8Array(this.columns * this.rows);
    const edges = region.flatMap(({ outer, holes }) =>
      [outer, ...holes].flatMap((ring) => ring.map((a, i) => [a, ring[(i + 1) % ring.length] ?? a] as const)),
    );
    const { x, y, w, h } = boxOf(region) ?? this.box;
    const low = Math.max(0, Math.floor((y - this.box.y) / this.step));
    const high = Math.min(this.rows, Math.ceil((y + h - this.box.y) / this.step));
    const left = Math.max(0, Math.floor((x - this.box.x) / this.step));
    const right = Math.min(this.columns, Math.ceil((x + w - this.box.x) / this.step));
    for (let row = low; row < high; row += 1) {
      const level = this.box.y + (row + 0.5) * this.step;
      const crossings = edges
        .filter(([a, b]) => a.y < level !== b.y < level)
        .map(([a, b]) => a.x + ((level - a.y) / (b.y - a.y)) * (b.x - a.x))
        .sort((p, q) => p - q);
      let passed = 0;
      for (let column = left; column < right; column += 1) {
        const at = this.box.x + (column + 0.5) * this.step;
        while (passed < crossings.length && (crossings[passed] ?? at) < at) passed += 1;
        squares[row * this.columns + column] = passed % 2;
      }
    }
    return squares;
  }
}
