import type { Box, Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import type { Ink } from './ink.ts';

/** A square of lines to follow weighs as much as this many of light ones: more than any box can hold. */
const HEAVY = 5000;
/** As many light squares does a corner of light lines weigh: it is what a pattern is laid on by. */
const CORNER = 150;

const inBox = (p: Point, { x, y, w, h }: Box): boolean =>
  p.x >= x && p.x <= x + w && p.y >= y && p.y <= y + h;

/**
 * Ink on a grid of small squares with running sums, so that "is there ink in this box" takes four look-ups.
 * Never says free where there is ink; near a border it may say taken where there is none.
 */
export class Occupancy {
  private readonly columns: number;
  private readonly rows: number;
  private readonly sums: Float64Array;

  constructor(
    private readonly box: Box,
    ink: Ink,
    blocked: readonly Box[],
    private readonly step: Mm,
  ) {
    this.columns = Math.max(1, Math.ceil(box.w / step));
    this.rows = Math.max(1, Math.ceil(box.h / step));
    const light = new Uint8Array(this.columns * this.rows);
    for (const [a, b] of ink.light) this.markSegment(light, a, b);
    for (const [a, b] of ink.besides) this.markSegment(light, a, b);
    for (const { x, y } of ink.corners) {
      if (inBox({ x, y }, box)) light[this.row(y) * this.columns + this.column(x)] = CORNER;
    }
    const taken = new Uint8Array(this.columns * this.rows);
    for (const [a, b] of ink.segments) this.markSegment(taken, a, b);
    for (const { region } of ink.areas) {
      for (const polygon of region) this.markRows(taken, [polygon.outer, ...polygon.holes]);
    }
    for (const other of blocked) this.markBox(taken, other);
    this.sums = this.summed(taken, light);
  }

  /** Weight of the taken squares that the box touches; 0 means that there is no ink in it. */
  count(box: Box): number {
    const x0 = this.column(box.x);
    const x1 = this.column(box.x + box.w) + 1;
    const y0 = this.row(box.y);
    const y1 = this.row(box.y + box.h) + 1;
    return this.at(x1, y1) - this.at(x0, y1) - this.at(x1, y0) + this.at(x0, y0);
  }

  /** Whether light lines alone run through the box, and no corner of them. */
  hasLightOnly(box: Box): boolean {
    const weight = this.count(box);
    return weight > 0 && weight < CORNER;
  }

  private at(column: number, row: number): number {
    return this.sums[row * (this.columns + 1) + column] ?? 0;
  }

  private column(x: Mm): number {
    return Math.min(this.columns - 1, Math.max(0, Math.floor((x - this.box.x) / this.step)));
  }

  private row(y: Mm): number {
    return Math.min(this.rows - 1, Math.max(0, Math.floor((y - this.box.y) / this.step)));
  }

  private markBox(taken: Uint8Array, b: Box): void {
    const outside =
      b.x > this.box.x + this.box.w ||
      b.x + b.w < this.box.x ||
      b.y > this.box.y + this.box.h ||
      b.y + b.h < this.box.y;
    if (outside) return;
    for (let r = this.row(b.y); r <= this.row(b.y + b.h); r++) {
      taken.fill(1, r * this.columns + this.column(b.x), r * this.columns + this.column(b.x + b.w) + 1);
    }
  }

  /** Short stretches of the segment by their boxes. */
  private markSegment(taken: Uint8Array, a: Point, b: Point): void {
    const parts = Math.max(1, Math.ceil(Math.hypot(b.x - a.x, b.y - a.y) / this.step));
    for (let i = 0; i < parts; i++) {
      const p = { x: a.x + ((b.x - a.x) * i) / parts, y: a.y + ((b.y - a.y) * i) / parts };
      const q = { x: a.x + ((b.x - a.x) * (i + 1)) / parts, y: a.y + ((b.y - a.y) * (i + 1)) / parts };
      this.markBox(taken, {
        x: Math.min(p.x, q.x),
        y: Math.min(p.y, q.y),
        w: Math.abs(q.x - p.x),
        h: Math.abs(q.y - p.y),
      });
    }
  }

  /** Inside of an area, along the middle of each row; its border is marked as segments. */
  private markRows(taken: Uint8Array, rings: readonly (readonly Point[])[]): void {
    for (let r = 0; r < this.rows; r++) {
      const y = this.box.y + (r + 0.5) * this.step;
      const crossings: number[] = [];
      for (const ring of rings) {
        ring.forEach((p, i) => {
          const q = ring[(i + 1) % ring.length] as Point;
          if (p.y > y !== q.y > y) crossings.push(p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x));
        });
      }
      crossings.sort((a, b) => a - b);
      for (let i = 0; i + 1 < crossings.length; i += 2) {
        const from = crossings[i] as number;
        this.markBox(taken, { x: from, y, w: (crossings[i + 1] as number) - from, h: 0 });
      }
    }
  }

  private summed(taken: Uint8Array, light: Uint8Array): Float64Array {
    const width = this.columns + 1;
    const sums = new Float64Array(width * (this.rows + 1));
    for (let r = 0; r < this.rows; r++) {
      let along = 0;
      for (let c = 0; c < this.columns; c++) {
        const at = r * this.columns + c;
        along += taken[at] ? HEAVY : (light[at] ?? 0);
        sums[(r + 1) * width + c + 1] = (sums[r * width + c + 1] ?? 0) + along;
      }
    }
    return sums;
  }
}
