import type { Check } from '../../check/check.ts';
import { regionOfRings } from '../../geometry/clip.ts';
import { type Loop, ringOfLoop } from '../../geometry/loop.ts';
import { beside, parallelRadius, parallelsMeet } from '../../geometry/parallel.ts';
import { add, angleOf, cross, distance, dot, midpoint, scale, subtract } from '../../geometry/point.ts';
import { reverseRing, signedArea } from '../../geometry/ring.ts';
import type { Point, Region, Ring } from '../../geometry/shape.ts';
import { type Arc, arcAbout, type Line, lineTo, reversed, wayAt } from '../../geometry/stretch.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { cyclic, lastOf, pick } from '../../list/at.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';
import type { Leg, SawnArc, SawnArcs } from '../laid.ts';

type Side = Line | Arc;

/** A run whose arcs are sawn from sheet: these, its straight lengths up to them, and the area of both. */
export interface SawnRun {
  readonly arcs: readonly SawnArc[];
  readonly legs: readonly Leg[];
  readonly region: Region;
}

/** Steps between arcs and straight lengths up to this are sanded off. Common practice, no source. */
const FLUSH: Mm = 0.5;

/**
 * So many times its thickness the radius has to be that dry wood is bent to, without steam or water: laminates are no
 * thicker than 1/150 of their sharpest curve, with some softwoods 1/100 (Chudley and Greeno, Building Construction
 * Handbook, 8th edition, on laminated timber).
 */
const BENDS_TO = { surely: 150, some: 100 } as const;

/**
 * Arcs that are not as thick as the straight lengths that they meet: their faces do not come flush, and the fasteners
 * of the whole run are chosen by the thickness of its stock. And those that their stock is too thick to be bent to: a
 * warning, and a note where some wood still bends so far.
 */
export function arcChecks(id: string, { thickness, bent, arcs }: SawnArcs, height: Mm): Check[] {
  if (!bent) {
    if (Math.abs(thickness - height) <= FLUSH) return [];
    const figures = { head_mm: thickness, stock_mm: height };
    return [{ code: 'run.head-not-flush', severity: 'warning', parts: [id], figures }];
  }
  const edges = arcs.map(edgesOf).sort((a, b) => a.inner - b.inner);
  const [tightest] = edges;
  if (!tightest) return [];
  const { inner, outer } = tightest;
  const across = outer - inner;
  if (inner >= BENDS_TO.surely * across - SAME_LENGTH) return [];
  const severity = inner < BENDS_TO.some * across - SAME_LENGTH ? 'warning' : 'note';
  const figures = { radius_mm: inner, across_mm: across, most_mm: inner / BENDS_TO.surely };
  return [{ code: 'run.bent-tight', severity, parts: [id], figures }];
}

/** Radii of both edges of an arc. */
export function edgesOf({ center, near, far }: Pick<SawnArc, 'center' | 'near' | 'far'>): {
  readonly inner: Mm;
  readonly outer: Mm;
} {
  const [one, other] = [distance(center, near[0]), distance(center, far[0])];
  return { inner: Math.min(one, other), outer: Math.max(one, other) };
}

/** What straight lengths of a run stop at where an arc of it is sawn apart. */
const OWN_ARC = 'own-arc';

/** Both ends of the joint between two sides: on the path, and at the far side of the stock. */
interface Corner {
  readonly near: Point;
  readonly far: Point;
}

/** A side of a path with the corners that it runs between, and both its borders: that of the path and the far one. */
interface Worked {
  readonly side: Side;
  readonly corners: readonly [Corner, Corner];
  readonly near: Loop;
  readonly far: Loop;
  /** Null where it is straight. */
  readonly arc: SawnArc | null;
}

/**
 * The arcs of a run as pieces of a ring, with joints on radii at even angles over their shorter edge, and its straight
 * lengths. Where two sides meet they are cut along the line between the corners that path and stock make there. Null
 * where the path has no room for that.
 *
 * @param by how far the far side of the stock lies to the left of the path
 * @param pieces of each arc
 */
export function sawnRun(
  sides: readonly Side[],
  closed: boolean,
  by: Mm,
  section: Pick<Leg, 'width' | 'thickness'>,
  pieces: number,
): SawnRun | null {
  const corners = cornersOf(sides, closed, by);
  const worked: Worked[] = [];
  for (const [i, side] of sides.entries()) {
    const ends = corners && ([pick(corners, i), cyclic(corners, i + 1)] as const);
    const one = ends && (side.kind === 'line' ? lineIn(side, ends) : arcIn(side, ends, by, pieces));
    if (!one) return null;
    worked.push(one);
  }
  return {
    arcs: worked.flatMap(({ arc }) => arc ?? []),
    legs: worked.flatMap((one, i) => legsOf(one, besides(worked, i, closed), by, section)),
    region: regionOf(worked, closed, by),
  };
}

function cornersOf(sides: readonly Side[], closed: boolean, by: Mm): Corner[] | null {
  const corners: Corner[] = [];
  for (const [i, side] of sides.entries()) {
    const before = closed || i > 0 ? cyclic(sides, i - 1) : null;
    const far = before ? parallelsMeet(before, side, by) : beside(side, 0, by);
    if (!far) return null;
    corners.push({ near: side.from, far });
  }
  if (closed) return corners;
  const last = lastOf(sides);
  return [...corners, { near: last.to, far: beside(last, 1, by) }];
}

/** Null where nothing is left of it at the far side of the stock. */
function lineIn(side: Line, corners: Worked['corners']): Worked | null {
  const [from, to] = corners;
  if (dot(subtract(to.far, from.far), wayAt(side, 0)) <= SAME_LENGTH) return null;
  return { side, corners, near: [side], far: [lineTo(from.far, to.far)], arc: null };
}

/** How far a piece of an arc leans to the left of upright; it is sawn standing upright. */
export const leanOf = ({ turn, lean }: Pick<SawnArc, 'turn' | 'lean'>, count: number, i: number): Deg =>
  lean + turn * (i + 0.5 - count / 2);

function arcIn(side: Arc, ends: Worked['corners'], by: Mm, count: number): Worked | null {
  const { center, start, sweep } = side;
  const [from, to] = ends;
  const way = sweep > 0 ? 1 : -1;
  if (parallelRadius(side, by) <= SAME_LENGTH) return null;
  /** How far past a direction a point lies along the path, within half a turn. */
  const past = (p: Point, direction: Deg): Deg => {
    const off = way * (angleOf(subtract(p, center)) - direction);
    return off - 360 * Math.round(off / 360);
  };
  const whole = Math.abs(sweep);
  const [begins, stops] = [past(from.far, start), whole + past(to.far, start + sweep)];
  // Joints that cross both edges leave them on radii within the shorter one.
  const [first, last] = [Math.max(0, begins), Math.min(whole, stops)];
  if (stops - begins <= SAME_LENGTH || last - first <= SAME_LENGTH) return null;
  const turn = (way * (last - first)) / count;
  const lean = start + (way * (first + last)) / 2 - 90;
  /** An edge piece by piece. Pieces alike have the same corners on the bench, where each is as high as its arc. */
  const edge = (at: 'near' | 'far'): Arc[] => {
    const radius = distance(from[at], center);
    const corner = (i: number): Point => {
      if (i === 0) return from[at];
      if (i === count) return to[at];
      const a = radians(start + way * first + turn * i);
      return add(center, scale({ x: Math.cos(a), y: Math.sin(a) }, radius));
    };
    return Array.from({ length: count }, (_, i) => ({
      ...arcAbout(center, corner(i), corner(i + 1), way > 0 ? 'left' : 'right'),
      turned: -leanOf({ turn, lean }, count, i),
    }));
  };
  const [near, far] = [edge('near'), edge('far')];
  const pieces = near.map((arc, i) => bandBetween([arc], [pick(far, i)]));
  const arc = { center, turn, lean, pieces, near: [from.near, to.near], far: [from.far, to.far] } as const;
  return { side, corners: ends, near, far, arc };
}

/** What lies between both borders of a side, counterclockwise. */
function bandBetween(near: Loop, far: Loop): Ring {
  const [out, back] = [lastOf(near).to, lastOf(far).to];
  const home = [
    lineTo(out, back),
    ...far.toReversed().map(reversed),
    lineTo(pick(far, 0).from, pick(near, 0).from),
  ];
  const ring = ringOfLoop([...near, ...home]);
  return signedArea(ring) < 0 ? reverseRing(ring) : ring;
}

/** The sides before and after one; none at the ends of a path that is open. */
const besides = (worked: readonly Worked[], i: number, closed: boolean) =>
  [-1, 1].map((by) => (closed ? cyclic(worked, i + by) : worked[i + by])) as [Worked?, Worked?];

/** The center line of a straight side, mitered where it meets another, and cut to the arcs beside it. */
function legsOf(
  { side, corners }: Worked,
  others: readonly [Worked?, Worked?],
  by: Mm,
  section: Pick<Leg, 'width' | 'thickness'>,
): Leg[] {
  if (side.kind === 'arc') return [];
  const along = wayAt(side, 0);
  const ends = ([0, 1] as const).map((end) => {
    const { near, far } = corners[end];
    if (!others[end]?.arc) return { at: midpoint(near, far) };
    // As far as the wood reaches.
    const places = [near, far].map((p) => dot(subtract(p, side.from), along));
    const reach = end === 1 ? Math.max(...places) : Math.min(...places);
    const line = by > 0 ? [far, near] : [near, far];
    return {
      at: add(beside(side, 0, by / 2), scale(along, reach)),
      stop: { at: OWN_ARC, against: false, line },
    };
  });
  const [start, end] = [pick(ends, 0), pick(ends, 1)];
  const stops = { ...(start.stop && { start: start.stop }), ...(end.stop && { end: end.stop }) };
  return [{ start: start.at, end: end.at, ...section, angle: angleOf(along), stops }];
}

/** What both cover: between both borders where they go around without turning back, else side by side. */
function regionOf(worked: readonly Worked[], closed: boolean, by: Mm): Region {
  if (!closed || !isConvex(worked))
    return regionOfRings(
      worked.map(({ near, far }) => bandBetween(near, far)),
      'nonzero',
    );
  const near = ringOfLoop(worked.flatMap((one) => one.near));
  const far = ringOfLoop(worked.flatMap((one) => one.far));
  return [by > 0 ? { outer: near, holes: [reverseRing(far)] } : { outer: far, holes: [reverseRing(near)] }];
}

const isConvex = (worked: readonly Worked[]): boolean =>
  worked.every(({ side }, i) => {
    const turn = cross(wayAt(side, 1), wayAt(cyclic(worked, i + 1).side, 0));
    return turn > -SAME_LENGTH && (side.kind === 'line' || side.sweep > 0);
  });
