import { distance } from '../geometry/point.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import { alongOf, atCorners, lengthOf, pointAt } from './spread.ts';

/** A place that is taken is moved in steps of this share of the least distance. */
const STEP = 0.25;

/** Where a place of a row goes, and how far from all others it has to be there. */
export interface Seat {
  readonly at: Point;
  readonly apart: Mm;
}

/** How a row is spread. */
export interface Spread {
  readonly spacing: Mm;
  /** On a stretch shorter than this one in the middle does. */
  readonly single: Mm;
  /** Where a place on the row goes; on the row itself when left out. */
  readonly seat?: (p: Point, line: readonly Point[]) => Seat;
}

/**
 * Places chosen one after the other: none nearer to another than `apart`, none where something else is driven in.
 * One that is not open moves along its row, up to half way to the next, and is left out where nothing is.
 */
export class Chosen {
  readonly places: Point[] = [];
  readonly #apart: Mm;
  readonly #free: (p: Point) => boolean;

  constructor(apart: Mm, free: (p: Point) => boolean) {
    this.#apart = apart;
    this.#free = free;
  }

  #held({ at, apart }: Seat): boolean {
    return this.places.some((q) => distance(at, q) < apart - SAME_LENGTH);
  }

  /** Even places along a row that may have corners, with one in each corner. */
  row(line: readonly Point[], spread: Spread): void {
    for (const stretch of atCorners(line)) this.stretch(stretch, spread);
  }

  /** Even places along an open smooth line, one at each end and none farther apart than the spacing. */
  stretch(line: readonly Point[], { spacing, single, seat }: Spread): void {
    const length = lengthOf(line);
    const places = alongOf(length, spacing, single, this.#apart);
    const half = places.length > 1 ? length / (places.length - 1) / 2 : length / 2;
    for (const along of places) {
      this.#nearest(half, (by) => {
        if (along + by < 0 || along + by > length) return null;
        const p = pointAt(line, along + by);
        return seat ? seat(p, line) : { at: p, apart: this.#apart };
      });
    }
  }

  /** A place by itself, or the nearest across or up from it that is open and `within` what it has to stay in. */
  single(p: Point, reach: Mm, within: (p: Point) => boolean): void {
    const to = (at: Point): Seat | null => (within(at) ? { at, apart: this.#apart } : null);
    if (this.#nearest(reach, (by) => to({ x: p.x + by, y: p.y }))) return;
    this.#nearest(reach, (by) => to({ x: p.x, y: p.y + by }));
  }

  /** Whether a place was found, or is not needed since another of these stands there already. */
  #nearest(reach: Mm, seatAt: (by: Mm) => Seat | null): boolean {
    const step = STEP * this.#apart;
    for (let by = 0; by <= reach; by += step) {
      for (const to of by === 0 ? [0] : [by, -by]) {
        const seat = seatAt(to);
        if (!seat) continue;
        if (this.#held(seat)) {
          if (by === 0) return true;
        } else if (this.#free(seat.at)) {
          this.places.push(seat.at);
          return true;
        }
      }
    }
    return false;
  }
}
