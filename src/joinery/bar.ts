import { grownBox } from '../geometry/box.ts';
import { add, cross, dot, leftNormal, scale, subtract, unit } from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { DUST, SAME_LENGTH } from '../geometry/tolerance.ts';
import { type Laid, type Leg, legsOf } from '../layout/laid.ts';
import type { Stock } from '../materials/types.ts';
import { type Mm, radians } from '../measure/units.ts';

/**
 * Wood closer than this touches, and laps over by less than this do no harm: a hundredth of a millimeter is
 * below what any saw holds, and above what solving a layout leaves.
 */
export const TOUCH: Mm = 0.01;

/** An infinite line on the face. */
export interface Line {
  readonly at: Point;
  readonly along: Point;
}

/**
 * A straight length of stock before its ends are cut: a strip, or one leg of a run. Its own coordinates run
 * along x from its start on the center line, y to the left.
 */
export interface Bar {
  /** Place in the order of parts and legs; decides every tie. */
  readonly index: number;
  readonly laid: Laid<'strip'> | Laid<'run'>;
  /** Leg of a run; 0 for strips. */
  readonly leg: number;
  readonly start: Point;
  readonly along: Point;
  readonly length: Mm;
  readonly width: Mm;
  readonly thickness: Mm;
  readonly stock: Stock | null;
  /** Start and end that no corner of its own run takes. */
  readonly free: { readonly start: boolean; readonly end: boolean };
}

export type End = 'start' | 'end';
export const ENDS: readonly End[] = ['start', 'end'];
export type Side = 'left' | 'right';
export const otherSide = (side: Side): Side => (side === 'left' ? 'right' : 'left');

/** The straight lengths of a strip or run, in order of travel. */
export function barsOf(laid: Laid<'strip'> | Laid<'run'>, stock: Stock | null, firstIndex: number): Bar[] {
  const legs = legsOf(laid);
  const closed = laid.kind === 'run' && laid.closed;
  return legs
    .map((leg, i) => ({
      laid,
      leg: i,
      ...frameOf(leg),
      stock,
      free: {
        start: (!closed && i === 0) || leg.stops?.start !== undefined,
        end: (!closed && i === legs.length - 1) || leg.stops?.end !== undefined,
      },
    }))
    .filter((bar) => bar.length > SAME_LENGTH && bar.width > SAME_LENGTH)
    .map((bar, i) => ({ index: firstIndex + i, ...bar }));
}

function frameOf(leg: Leg): Pick<Bar, 'start' | 'along' | 'length' | 'width' | 'thickness'> {
  const span = subtract(leg.end, leg.start);
  return {
    start: leg.start,
    along: unit(span),
    length: Math.hypot(span.x, span.y),
    width: leg.width,
    thickness: leg.thickness,
  };
}

/** A point of the face in the bar's own coordinates. */
export function toBar(bar: Bar, p: Point): Point {
  const v = subtract(p, bar.start);
  return { x: dot(v, bar.along), y: cross(bar.along, v) };
}

/** A point of the bar's own coordinates on the face. */
export const toFace = (bar: Bar, p: Point): Point =>
  add(bar.start, add(scale(bar.along, p.x), scale(leftNormal(bar.along), p.y)));

/** The line of one long edge of a bar, in its direction of travel. */
export function edgeLine(bar: Bar, side: Side): Line {
  const out = scale(leftNormal(bar.along), side === 'left' ? bar.width / 2 : -bar.width / 2);
  return { at: add(bar.start, out), along: bar.along };
}

/** Whether two bars share a height: the same layer of the face. */
export const sameHeight = (a: Bar, b: Bar): boolean =>
  Math.min(a.laid.z1, b.laid.z1) - Math.max(a.laid.z0, b.laid.z0) > SAME_LENGTH;

/** Share of uprightness, 0 across to 1 up. */
export const uprightness = (bar: Bar): number => Math.abs(bar.along.y);

/**
 * Which of two bars runs through when nobody decided: a stile before a rail, both before a sloping brace, of
 * two braces the steeper one, else the earlier one.
 */
export function runsThrough(a: Bar, b: Bar): Bar {
  const difference = standingRank(a) - standingRank(b) || uprightness(a) - uprightness(b);
  if (Math.abs(difference) > DUST) return difference > 0 ? a : b;
  return a.index <= b.index ? a : b;
}

/** Stiles and rails of a bed that is out of square lean no more than this; no brace leans so little. */
const UPRIGHT = Math.sin(radians(2));

function standingRank({ along }: Bar): number {
  if (Math.abs(along.x) < UPRIGHT) return 2;
  return Math.abs(along.y) < UPRIGHT ? 1 : 0;
}

/** A little larger than the points' box, so that things that only touch are found too. */
export function boxAround(points: readonly Point[]): Box {
  return grownBox(boxOfPoints(points), TOUCH);
}
