import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { grownBox } from './box.ts';
import { curvesAt, pointsOf } from './loop.ts';
import { cross, distance, dot, subtract } from './point.ts';
import { areaOf, boxesMeet, ringsOf } from './region.ts';
import { boxOfPoints } from './ring.ts';
import type { Box, Point, Region } from './shape.ts';
import { type Curved, lengthOf, partOf, sharesOf, sweptArea } from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** What was cut on the grid of the clipper lies on a chord within this. */
const ON_CHORD: Mm = 2e-4;

/** A curve with the chords that stand for it. */
interface Chorded {
  readonly curve: Curved;
  /** Where the chords meet: shares of the curve, and the points there. */
  readonly shares: readonly number[];
  readonly points: readonly Point[];
  readonly box: Box;
}

/** Where along which chord of a curve a side of a polygon lies: shares of the chord. */
export interface OnChord {
  readonly chorded: Chorded;
  readonly index: number;
  readonly from: number;
  readonly to: number;
}

/** What a curve takes in beside its chord, up to a share of the chord: a parabola's, as flat curves are. */
const upTo = (share: number): number => share * share * (3 - 2 * share);

function chordedOf(curve: Curved): Chorded {
  const points = pointsOf(curve);
  return { curve, shares: sharesOf(curve), points, box: grownBox(boxOfPoints(points), ON_CHORD) };
}

/** The part of one chord that a side is, or null. */
function onChord(chorded: Chorded, p: Point, q: Point): OnChord | null {
  if (!boxesMeet(chorded.box, boxOfPoints([p, q]))) return null;
  const { points } = chorded;
  for (let i = 0; i + 1 < points.length; i++) {
    const [a, b] = [pick(points, i), pick(points, i + 1)];
    const along = subtract(b, a);
    const size = distance(a, b);
    if (size <= SAME_LENGTH) continue;
    const [ap, aq] = [subtract(p, a), subtract(q, a)];
    if (Math.abs(cross(along, ap)) > ON_CHORD * size || Math.abs(cross(along, aq)) > ON_CHORD * size)
      continue;
    const [from, to] = [dot(along, ap) / (size * size), dot(along, aq) / (size * size)];
    const spare = ON_CHORD / size;
    if (Math.min(from, to) < -spare || Math.max(from, to) > 1 + spare) continue;
    return { chorded, index: i, from: snapped(from, spare), to: snapped(to, spare) };
  }
  return null;
}

const snapped = (share: number, spare: number): number =>
  Math.abs(share) <= spare ? 0 : Math.abs(share - 1) <= spare ? 1 : share;

/**
 * The sides of a region that stand for a curve. Corners tell which curves they lie on; a side whose both corners
 * were cut into a chord is looked for among all curves of the region.
 */
export function* chordsIn(region: Region): Generator<OnChord & { readonly p: Point; readonly q: Point }> {
  const rings = ringsOf(region);
  const found = new Map<Curved, Chorded>();
  for (const ring of rings)
    for (const p of ring)
      for (const curve of curvesAt(p)) if (!found.has(curve)) found.set(curve, chordedOf(curve));
  if (found.size === 0) return;
  const all = [...found.values()];
  for (const ring of rings) {
    for (const [i, q] of ring.entries()) {
      const p = cyclic(ring, i - 1);
      const own = [...curvesAt(p), ...curvesAt(q)];
      const among = own.length > 0 ? own.flatMap((curve) => found.get(curve) ?? []) : all;
      for (const chorded of among) {
        const on = onChord(chorded, p, q);
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

/** How much longer a curve is than a side of a polygon that stands for it; 1 for a straight side. */
export function lengthening(p: Point, q: Point): number {
  for (const curve of new Set([...curvesAt(p), ...curvesAt(q)])) {
    const on = onChord(chordedOf(curve), p, q);
    if (!on) continue;
    const { points } = on.chorded;
    return lengthOf(spanOf(on)) / distance(pick(points, on.index), pick(points, on.index + 1));
  }
  return 1;
}
