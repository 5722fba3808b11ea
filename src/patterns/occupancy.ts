import type { Box } from '../geometry/shape.ts';
import { byte, real } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Ink } from './ink.ts';
import { Squares } from './squares.ts';

/** A square of lines to follow weighs as much as this many of light ones: more than any box can hold. */
const HEAVY = 5000;
/** As many light squares does a corner of light lines weigh: it is what a pattern is laid on by. */
const CORNER = 150;

/** The ink of a pattern inside a box, and what else is taken there, on squares of the given size. */
export function occupancyOf(box: Box, ink: Ink, blocked: readonly Box[], step: Mm): Occupancy {
  const light = new Squares(box, step);
  light.markSegments(ink.light);
  light.markSegments(ink.besides);
  for (const corner of ink.corners) light.markPoint(corner, CORNER);
  const taken = new Squares(box, step);
  taken.markSegments(ink.segments);
  for (const { region } of ink.areas) {
    for (const polygon of region) taken.markArea([polygon.outer, ...polygon.holes]);
  }
  for (const other of blocked) taken.markBox(other);
  return new Occupancy(taken, light);
}

/**
 * Ink on a grid of small squares with running sums, so that "is there ink in this box" takes four look-ups.
 * Never says free where there is ink; near a border it may say taken where there is none.
 */
export class Occupancy {
  private readonly sums: Float64Array;

  constructor(
    private readonly taken: Squares,
    private readonly light: Squares,
  ) {
    this.sums = summed(taken, light);
  }

  /** As this one, with one box more that is taken. */
  blocking(box: Box): Occupancy {
    const taken = this.taken.copy();
    taken.markBox(box);
    return new Occupancy(taken, this.light);
  }

  /** Weight of the taken squares that the box touches; 0 means that there is no ink in it. */
  count({ x, y, w, h }: Box): number {
    return this.between(this.column(x), this.column(x + w) + 1, this.row(y), this.row(y + h) + 1);
  }

  /** As `count`, of the columns and rows from the first ones on and before the last ones. */
  between(x0: number, x1: number, y0: number, y1: number): number {
    const { sums } = this;
    const width = this.taken.columns + 1;
    const [low, high] = [y0 * width, y1 * width];
    return real(sums, high + x1) - real(sums, low + x1) - real(sums, high + x0) + real(sums, low + x0);
  }

  column(x: Mm): number {
    return this.taken.column(x);
  }

  row(y: Mm): number {
    return this.taken.row(y);
  }

  /** Whether light lines alone run through the box, and no corner of them. */
  hasLightOnly(box: Box): boolean {
    const weight = this.count(box);
    return weight > 0 && weight < CORNER;
  }
}

function summed({ columns, rows, marks: taken }: Squares, { marks: light }: Squares): Float64Array {
  const width = columns + 1;
  const sums = new Float64Array(width * (rows + 1));
  for (let r = 0; r < rows; r++) {
    let along = 0;
    for (let c = 0; c < columns; c++) {
      const cell = r * columns + c;
      along += taken[cell] ? HEAVY : byte(light, cell);
      sums[(r + 1) * width + c + 1] = real(sums, r * width + c + 1) + along;
    }
  }
  return sums;
}
