import { cyclic, pick } from '../list/at.ts';
import { keptBy } from '../list/keptBy.ts';
import type { Mm } from '../measure/units.ts';
import { grownBox, holds } from './box.ts';
import { curvesAt, pointsAt } from './loop.ts';
import { cross, distance, dot, subtract } from './point.ts';
import { areaOf, ringsOf } from './region.ts';
import { boxOfPoints } from './ring.ts';
import type { Box, Point, Region } from './shape.ts';
import { type Curved, lengthOf, partOf, sharesOf, sweptArea } from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** What was cut on the grid of the clipper lies on a chord within this. */
const ON_CHORD: Mm = 2e-4;
/** Farther than this out of a chord's box nothing lies on it. */
const FAR: Mm = 2 * ON_CHORD;

/** A curve with the chords that stand for it. */
interface Chorded {
  readonly curve: Curved;
  /** Where the chords meet: shares of the curve, and the points there. */
  readonly shares: readonly number[];
  readonly points: readonly Point[];
  /** Around all that lies on a chord. */
  readonly box: Box;
}

/** The chord of a curve that was found last: the next side of a polygon lies on it or beside it. */
type Lasts = Map<Curved, number>;

/** Where along which chord of a curve a side of a polygon lies: shares of the chord. */
export interface OnChord {
  readonly chorded: Chorded;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/** What a curve takes in beside its chord, up to a share of the chord: a parabola's, as flat curves are. */
const upTo = (share: number): number => share * share * (3 - 2 * share);

const chordedOf = keptBy((curve: Curved): Chorded => {
  const shares = sharesOf(curve);
  const points = pointsAt(curve, shares);
  return { curve, shares, points, box: grownBox(boxOfPoints(points), FAR) };
});

/** The part of one chord that a side is, or null. */
function onChord(curve: Curved, p: Point, q: Point, lasts: Lasts): OnChord | null {
  const chorded = chordedOf(curve);
  if (!holds(chorded.box, p) || !holds(chorded.box, q)) return null;
  const { points } = chorded;
  const last = lasts.get(curve) ?? 0;
  // From the chord found last to both sides.
  for (let k = 0; k < 2 * points.length; k++) {
    const index = last + (k % 2 === 0 ? -k : k + 1) / 2;
    const [a, b] = [points[index], points[index + 1]];
    if (!a || !b || !isNear(a, b, p) || !isNear(a, b, q)) continue;
    const on = onOne(a, b, p, q);
    if (!on) continue;
    lasts.set(curve, index);
    return { chorded, index, ...on };
  }
  return null;
}

/** Whether a point can lie on a chord. */
const isNear = (a: Point, b: Point, p: Point): boolean =>
  p.x >= Math.min(a.x, b.x) - FAR &&
  p.x <= Math.max(a.x, b.x) + FAR &&
  p.y >= Math.min(a.y, b.y) - FAR &&
  p.y <= Math.max(a.y, b.y) + FAR;

/** The part of the chord from `a` to `b` that a side is, or null. */
function onOne(
  a: Point,
  b: Point,
  p: Point,
  q: Point,
): { readonly from: number; readonly to: number } | null {
  const along = subtract(b, a);
  const size = distance(a, b);
  if (size <= SAME_LENGTH) return null;
  const [ap, aq] = [subtract(p, a), subtract(q, a)];
  if (Math.abs(cross(along, ap)) > ON_CHORD * size || Math.abs(cross(along, aq)) > ON_CHORD * size)
    return null;
  const [from, to] = [dot(along, ap) / (size * size), dot(along, aq) / (size * size)];
  const spare = ON_CHORD / size;
  if (Math.min(from, to) < -spare || Math.max(from, to) > 1 + spare) return null;
  return { from: snapped(from, spare), to: snapped(to, spare) };
}

const snapped = (share: number, spare: number): number =>
  Math.abs(share) <= spare ? 0 : Math.abs(share - 1) <= spare ? 1 : share;

/** The curves that either end of a side lies on. */
function curvesBeside(p: Point, q: Point): readonly Curved[] {
  const [before, after] = [curvesAt(p), curvesAt(q)];
  if (before.length === 0) return after;
  return after.length === 0 ? before : [...new Set([...before, ...after])];
}

/**
 * The sides of a region that stand for a curve. Corners tell which curves they lie on; a side whose both corners
 * were cut into a chord is looked for among all curves of the region.
 */
export function* chordsIn(region: Region): Generator<OnChord & { readonly p: Point; readonly q: Point }> {
  const rings = ringsOf(region);
  const all = new Set<Curved>();
  for (const ring of rings) for (const p of ring) for (const curve of curvesAt(p)) all.add(curve);
  if (all.size === 0) return;
  const lasts: Lasts = new Map();
  for (const ring of rings) {
    for (const [i, q] of ring.entries()) {
      const p = cyclic(ring, i - 1);
      const beside = curvesBeside(p, q);
      for (const curve of beside.length > 0 ? beside : all) {
        const on = onChord(curve, p, q, lasts);
        if (on) {
          yield { ...on, p, q };
          break;
        }
      }
    }
  }
}

const spanOf = ({ chorded: { curve, shares }, index }: OnChord) =>
  partOf(curve, pick(shares, index), pick(shares, index + 1));

/**
 * Area of a region in square millimeters, of the curves that its sides stand for and not of their chords. Exact where
 * whole chords are left of a curve; where a chord was cut, within the height of one chord times the grid.
 */
export function trueAreaOf(region: Region): number {
  let area = areaOf(region);
  for (const on of chordsIn(region)) {
    const span = spanOf(on);
    area += sweptArea(span, span.from) * (upTo(on.to) - upTo(on.from));
  }
  return area;
}

/** Tells how much longer a curve is than a side of a polygon that stands for it; 1 for a straight side. */
export function lengthenings(): (p: Point, q: Point) => number {
  const lasts: Lasts = new Map();
  return (p, q) => {
    for (const curve of curvesBeside(p, q)) {
      const on = onChord(curve, p, q, lasts);
      if (!on) continue;
      const { points } = on.chorded;
      return lengthOf(spanOf(on)) / distance(pick(points, on.index), pick(points, on.index + 1));
    }
    return 1;
  };
}
