import { type BowedPoint, radiusOfBow, withArcs } from '../geometry/arcs.ts';
import { add, distance, leftNormal, midpoint, scale, subtract, unit } from '../geometry/point.ts';
import { boxOfPoints, signedArea } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { isCorner } from './lengths.ts';
import type { Piece } from './piece.ts';

/** An arc of an outline, as compass or trammel draw it; the lower left corner of the piece's box is the origin. */
export interface Curve {
  readonly from: Point;
  /** The same place as `from` on a whole circle. */
  readonly to: Point;
  /** Halfway along the arc. */
  readonly middle: Point;
  readonly center: Point;
  readonly radius: Mm;
  /** How far `middle` lies from the straight line between the ends; of a whole circle its diameter. */
  readonly rise: Mm;
  /** Whether it takes wood away from the line between its ends, as a cove or a hole does. */
  readonly hollow: boolean;
}

/** What the curved sides of a piece are drawn by. */
export interface Profile {
  readonly curves: readonly Curve[];
  /** Some side is curved and follows no circle, or more of them than a person draws: a full-size pattern is needed. */
  readonly free: boolean;
}

/** More arcs than a person would draw one by one. Common practice, no source. */
const MOST_CURVES = 12;
/** Centers found from outlines cut on a grid agree within this. */
const SAME_CENTER: Mm = 0.05;

/** The arcs that the outline and the openings of a piece are made of; none of what is only straight. */
export function profileOf({ outline, holes }: Pick<Piece, 'outline' | 'holes'>): Profile {
  const { x, y } = boxOfPoints(outline);
  const rings = [outline, ...holes].map((ring, i) => {
    const own = ring.map((p) => ({ x: p.x - x, y: p.y - y }));
    return signedArea(ring) > 0 === (i === 0) ? own : own.reverse();
  });
  const found = rings.map(arcsOf);
  const curves = found.flatMap((arcs) => arcs ?? []);
  const free = found.includes(null) || curves.length > MOST_CURVES;
  return free ? { curves: [], free } : { curves, free };
}

/** The arcs of a ring in their order; null where a curve of it follows no circle. */
function arcsOf(ring: Ring): Curve[] | null {
  const bowed = withArcs(ring, true);
  const isFree = bowed.some((p, i) => {
    const at = ring.findIndex((q) => distance(p, q) < SAME_LENGTH);
    return p.bulge === 0 && cyclic(bowed, i - 1).bulge === 0 && !isCorner(ring, at);
  });
  if (isFree) return null;
  const arcs: Arc[] = [];
  for (const [i, from] of bowed.entries()) {
    const arc = from.bulge === 0 ? null : arcOf(from, cyclic(bowed, i + 1));
    const before = arcs.at(-1);
    if (arc && before && goesOn(before, arc)) arcs[arcs.length - 1] = joined(before, arc);
    else if (arc) arcs.push(arc);
  }
  const [first, last] = [arcs[0], arcs.at(-1)];
  if (first && last && first !== last && goesOn(last, first)) {
    arcs.splice(0, 1);
    arcs[arcs.length - 1] = joined(last, first);
  }
  return arcs.map(curveOf);
}

/** An arc by its turn: quarter of it is what the bulge is the tangent of; over 0 turns left. */
interface Arc {
  readonly from: Point;
  readonly to: Point;
  readonly center: Point;
  readonly radius: Mm;
  readonly turn: number;
}

function arcOf(from: BowedPoint, to: Point): Arc {
  const radius = radiusOfBow(from, to, from.bulge);
  const turn = 4 * Math.atan(from.bulge);
  // Left of the chord by what the radius leaves over the rise.
  const off = distance(from, to) / 2 / Math.tan(turn / 2);
  const center = add(midpoint(from, to), scale(leftNormal(subtract(to, from)), off));
  return { from, to, center, radius, turn };
}

const goesOn = (a: Arc, b: Arc): boolean =>
  distance(a.to, b.from) < SAME_LENGTH && distance(a.center, b.center) < SAME_CENTER && a.turn * b.turn > 0;

/** Arcs that go on in each other as one; a ring of one arc ends where it began. */
const joined = (a: Arc, b: Arc): Arc => ({ ...a, to: b.to, turn: a.turn + b.turn });

function curveOf({ from, to, center, radius, turn }: Arc): Curve {
  const start = Math.atan2(from.y - center.y, from.x - center.x);
  const half = start + turn / 2;
  return {
    from: { x: from.x, y: from.y },
    to: { x: to.x, y: to.y },
    middle: add(center, { x: radius * Math.cos(half), y: radius * Math.sin(half) }),
    center,
    radius,
    rise: radius * (1 - Math.cos(turn / 2)),
    hollow: turn < 0,
  };
}

/** Unit vector from the center of an arc to its middle. */
export const facing = ({ center, middle }: Curve): Point => unit(subtract(middle, center));
