import type { Box, Point } from '../geometry/shape.ts';
import { at } from '../list/at.ts';
import { addTo, type Groups } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';

/** A box parted into small squares, each of which may be marked. What lies outside is left out. */
export class Squares {
  readonly columns: number;
  readonly rows: number;
  readonly marks: Uint8Array;

  constructor(
    readonly box: Box,
    readonly step: Mm,
    marks: Uint8Array | null = null,
  ) {
    this.columns = Math.max(1, Math.ceil(box.w / step));
    this.rows = Math.max(1, Math.ceil(box.h / step));
    this.marks = marks ?? new Uint8Array(this.columns * this.rows);
  }

  copy(): Squares {
    return new Squares(this.box, this.step, this.marks.slice());
  }

  /** Column of a place; of one outside, the nearest. */
  column(x: Mm): number {
    return Math.min(this.columns - 1, Math.max(0, Math.floor((x - this.box.x) / this.step)));
  }

  /** Row of a place, counted from the lower end; of one outside, the nearest. */
  row(y: Mm): number {
    return Math.min(this.rows - 1, Math.max(0, Math.floor((y - this.box.y) / this.step)));
  }

  markPoint({ x, y }: Point, as: number): void {
    const { box } = this;
    if (x < box.x || x > box.x + box.w || y < box.y || y > box.y + box.h) return;
    this.marks[this.row(y) * this.columns + this.column(x)] = as;
  }

  markBox({ x, y, w, h }: Box): void {
    this.mark(x, y, x + w, y + h);
  }

  /** Short stretches of the segments by their boxes. */
  markSegments(segments: readonly (readonly [Point, Point])[]): void {
    for (const segment of segments) {
      // Read by place, as lists that are taken apart are slow until the engine has warmed up.
      const a = segment[0];
      const b = segment[1];
      const dx = b.x - a.x;
      const dy = b.y - a.y;
      // Most are shorter than a square: no root is taken for those.
      const short = Math.abs(dx) + Math.abs(dy) < SHORT * this.step;
      const parts = short ? 1 : Math.max(1, Math.ceil(Math.hypot(dx, dy) / this.step));
      let { x, y } = a;
      for (let i = 1; i <= parts; i++) {
        const toX = a.x + (dx * i) / parts;
        const toY = a.y + (dy * i) / parts;
        const left = Math.min(x, toX);
        const low = Math.min(y, toY);
        this.mark(left, low, left + Math.abs(toX - x), low + Math.abs(toY - y));
        x = toX;
        y = toY;
      }
    }
  }

  /** Inside of an area, along the middle of each row; its border is marked as segments. */
  markArea(rings: readonly (readonly Point[])[]): void {
    const crossings: Groups<number, number> = new Map();
    for (const ring of rings) {
      let before = ring[ring.length - 1];
      for (const point of ring) {
        if (before) this.cross(before, point, crossings);
        before = point;
      }
    }
    for (const [row, places] of crossings) {
      const y = this.middleOf(row);
      places.sort((a, b) => a - b);
      for (let i = 0; i + 1 < places.length; i += 2) this.mark(at(places, i), y, at(places, i + 1), y);
    }
  }

  private middleOf(row: number): Mm {
    return this.box.y + (row + 0.5) * this.step;
  }

  /** Adds where a side crosses the middle of each row that it comes by. */
  private cross(p: Point, q: Point, crossings: Groups<number, number>): void {
    const low = (Math.min(p.y, q.y) - this.box.y) / this.step - 0.5;
    const high = (Math.max(p.y, q.y) - this.box.y) / this.step - 0.5;
    const last = Math.min(this.rows - 1, Math.ceil(high));
    for (let r = Math.max(0, Math.floor(low)); r <= last; r++) {
      const y = this.middleOf(r);
      if (p.y > y !== q.y > y) addTo(crossings, r, p.x + ((y - p.y) / (q.y - p.y)) * (q.x - p.x));
    }
  }

  private mark(left: Mm, low: Mm, right: Mm, high: Mm): void {
    const { box, marks, columns, step } = this;
    if (left > box.x + box.w || right < box.x || low > box.y + box.h || high < box.y) return;
    // Written out: this is asked for each stretch of each line, mostly of one square or two.
    const from = left <= box.x ? 0 : Math.min(columns - 1, Math.floor((left - box.x) / step));
    const to = Math.min(columns - 1, Math.floor((right - box.x) / step));
    const last = this.row(high);
    for (let r = this.row(low); r <= last; r++) {
      if (from === to) marks[r * columns + from] = 1;
      else marks.fill(1, r * columns + from, r * columns + to + 1);
    }
  }
}

/** A little under 1: what is rounded never comes out as more than one square. */
const SHORT = 0.999;
