import type { Face } from '../bed/face.ts';
import { movedIn } from '../bed/realEdges.ts';
import { type Check, orderChecks } from '../check/check.ts';
import { isBars, isBoards, isBought, isLettered } from '../design/made.ts';
import type { Axis } from '../design/schema.ts';
import {
  add,
  angleOf,
  cross,
  distance,
  leftNormal,
  midpoint,
  scale,
  subtract,
  unit,
} from '../geometry/point.ts';
import { boxOf } from '../geometry/region.ts';
import { boxOfPoints, reverseRing, signedArea } from '../geometry/ring.ts';
import { intersectLines } from '../geometry/segment.ts';
import type { Box, Point, Quad, Region, Ring } from '../geometry/shape.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import type { Laid, LaidPart, Layout, Leg, StoppedEnd } from './laid.ts';
import { legsOfRun, regionOfRun } from './place/run.ts';

/** Edges this near to each other lie on one another. */
const ON: Mm = 0.01;

type Line = readonly [Point, Point];

/** An edge of the true layout with where it really is: along it lies what lay along it. */
interface Edge {
  /** The axis across it: x of an upright one. */
  readonly axis: Axis;
  readonly at: Mm;
  readonly from: Mm;
  readonly to: Mm;
  readonly line: Line;
}

const other = (axis: Axis): Axis => (axis === 'x' ? 'y' : 'x');
const spanOn = (box: Box, axis: Axis): readonly [Mm, Mm] =>
  axis === 'x' ? [box.x, box.x + box.w] : [box.y, box.y + box.h];

/** The four edges of a box by where its corners really are. */
function edgesOf(box: Box, corners: Quad): Edge[] {
  const [a, b, c, d] = corners;
  const edge = (axis: Axis, end: 0 | 1, line: Line): Edge => {
    const [from, to] = spanOn(box, other(axis));
    return { axis, at: spanOn(box, axis)[end], from, to, line };
  };
  return [edge('x', 0, [a, d]), edge('x', 1, [b, c]), edge('y', 0, [a, b]), edge('y', 1, [d, c])];
}

/** Those that the bed has: the outside of the rim, the inside of its boards, the field. */
function edgesOfFace({ real = [], levels }: Face): Edge[] {
  return real.flatMap(({ of, box, corners }) => {
    const inner = of === 'rim' ? levels.find(({ id }) => id === 'rim')?.inner : null;
    const within = inner ? edgesOf(inner, movedIn(corners, inner.x - box.x)) : [];
    return [...edgesOf(box, corners), ...within];
  });
}

const isAt = (edge: Edge, axis: Axis, at: Mm): boolean => edge.axis === axis && Math.abs(edge.at - at) <= ON;

/** The edge that a stretch lies along. */
const edgeAlong = (
  edges: readonly Edge[],
  axis: Axis,
  at: Mm,
  [from, to]: readonly [Mm, Mm],
): Edge | undefined =>
  edges.find((edge) => isAt(edge, axis, at) && from >= edge.from - ON && to <= edge.to + ON);

/** The sides of a part that lies straight, by the axis across it. */
interface Sides {
  readonly axis: Axis;
  /** Its long sides, and its ends. */
  readonly across: readonly [Mm, Mm];
  readonly along: readonly [Mm, Mm];
}

function sidesOf({ box, spec }: Laid<'strip'>): Sides | null {
  if (spec.lie !== 'up' && spec.lie !== 'across') return null;
  const axis = spec.lie === 'up' ? 'x' : 'y';
  return { axis, across: spanOn(box, axis), along: spanOn(box, other(axis)) };
}

const at = (axis: Axis, across: Mm, along: Mm): Point =>
  axis === 'x' ? { x: across, y: along } : { x: along, y: across };

/** A line beside another, on the side of a point. */
function beside([a, b]: Line, by: Mm, side: Point): Line {
  const left = cross(subtract(b, a), subtract(side, a)) > 0 ? by : -by;
  const out = scale(leftNormal(subtract(b, a)), left);
  return [add(a, out), add(b, out)];
}

/** A strip that lies along an edge as a whole, as wide as it was. */
interface Follower {
  readonly sides: Sides;
  /** Where its two long sides are, in the order of `across`. */
  readonly lines: readonly [Line, Line];
  readonly center: Line;
}

function followerOn(laid: Laid<'strip'>, sides: Sides, edge: Edge): Follower {
  const { axis, across } = sides;
  const [low, high] = across;
  // Where the strip lies of the edge as it was meant to be: the real one may lie beyond all of it.
  const side = add(midpoint(...edge.line), at(axis, low + high > 2 * edge.at ? 1 : -1, 0));
  const far = beside(edge.line, laid.leg.width, side);
  return {
    sides,
    lines: Math.abs(edge.at - low) <= ON ? [edge.line, far] : [far, edge.line],
    center: beside(edge.line, laid.leg.width / 2, side),
  };
}

const innerEdges = ({ sides: { axis, across, along }, lines }: Follower): Edge[] =>
  lines.map((line, i) => ({ axis, at: cyclic(across, i), from: along[0], to: along[1], line }));

/** What is ripped and what follows: a strip follows what it lies along unless its other side has to stay true. */
interface Found {
  readonly edges: readonly Edge[];
  readonly followers: ReadonlyMap<LaidPart, Follower>;
  readonly runs: ReadonlyMap<LaidPart, LaidPart>;
}

function findFollowers(parts: readonly LaidPart[], face: Face, stocks: ReadonlyMap<string, Stock>): Found {
  const edges = edgesOfFace(face);
  const ofFace = edges.length;
  const followers = new Map<LaidPart, Follower>();
  const runs = new Map<LaidPart, LaidPart>();
  for (let before = -1; before !== edges.length; ) {
    before = edges.length;
    for (const laid of parts) {
      if (followers.has(laid) || runs.has(laid)) continue;
      if (laid.kind === 'run') {
        const next = runAlong(laid, edges);
        if (!next) continue;
        runs.set(laid, next.laid);
        edges.push(...next.edges);
      } else if (laid.kind === 'strip') {
        const sides = sidesOf(laid);
        const own = sides && edgeOfSide(edges, sides);
        if (!sides || !own) continue;
        const { edge, far } = own;
        const shaped = stocks.get(laid.stock ?? '')?.form === 'shaped';
        const follows =
          shaped ||
          edges.indexOf(edge) < ofFace ||
          !parts.some(
            (one) => one !== laid && !followers.has(one) && !runs.has(one) && touches(one, laid, sides, far),
          );
        if (!follows) continue;
        const follower = followerOn(laid, sides, edge);
        followers.set(laid, follower);
        edges.push(...innerEdges(follower));
      }
    }
  }
  return { edges, followers, runs };
}

/** The edge that one long side lies along, and where the other side is. */
function edgeOfSide(edges: readonly Edge[], { axis, across: [low, high], along }: Sides) {
  for (const edge of edges) {
    if (along[0] < edge.from - ON || along[1] > edge.to + ON) continue;
    if (isAt(edge, axis, low)) return { edge, far: high };
    if (isAt(edge, axis, high)) return { edge, far: low };
  }
  return null;
}

/** Whether a part at the same height has a side along the far side of another. */
function touches(one: LaidPart, laid: LaidPart, { axis, along }: Sides, far: Mm): boolean {
  if (Math.min(one.z1, laid.z1) - Math.max(one.z0, laid.z0) <= ON) return false;
  const box = boxOf(one.region);
  if (!box || !spanOn(box, axis).some((edge) => Math.abs(edge - far) <= ON)) return false;
  const [from, to] = spanOn(box, other(axis));
  return Math.min(to, along[1]) - Math.max(from, along[0]) > ON;
}

/** Where a corner of the true layout is that lies on real edges; null where it lies on none. */
function imageOf(p: Point, edges: readonly Edge[]): Point | null {
  const on = (axis: Axis) => {
    const along = p[other(axis)];
    return edges.find(
      (edge) => isAt(edge, axis, p[axis]) && along >= edge.from - ON && along <= edge.to + ON,
    );
  };
  const [upright, level] = [on('x'), on('y')];
  if (!upright && !level) return null;
  const first: Line = upright?.line ?? [p, { x: p.x, y: p.y + 1 }];
  const second: Line = level?.line ?? [p, { x: p.x + 1, y: p.y }];
  return intersectLines(...first, ...second);
}

/** A closed run whose outer corners lie on real edges, with the edges of its own that follow; null where none do. */
function runAlong(
  laid: Laid<'run'>,
  edges: readonly Edge[],
): { readonly laid: LaidPart; readonly edges: Edge[] } | null {
  const [polygon, more] = laid.region;
  const [leg] = laid.legs;
  if (!laid.closed || laid.sawn || !polygon || more || !leg || laid.legs.some((one) => one.bowed))
    return null;
  const outer = polygon.outer;
  if (outer.length !== laid.legs.length) return null;
  const points = outer.map((p) => imageOf(p, edges));
  if (points.every((p) => p === null)) return null;
  const path = { points: points.map((p, i) => p ?? pick(outer, i)), closed: true };
  const inside = { path: laid.spec.path, side: 'inside' } as const;
  const { width, thickness } = leg;
  const legs = legsOfRun(inside, path, { width, thickness });
  const along = legs.map((one, i) => ({ ...pick(laid.legs, i), ...one }));
  const region = regionOfRun(inside, path, width);
  // It is laid by the edges that it follows: its marks stay at the planned ones, and never before the datum line.
  return { laid: { ...laid, legs: along, region }, edges: edgesOfLegs(laid.legs, along) };
}

/** Both edges of each leg that lies straight, with where they are after it followed. */
const edgesOfLegs = (before: readonly Leg[], after: readonly Leg[]): Edge[] =>
  before.flatMap((leg, i) => {
    const box = boxOfPoints([leg.start, leg.end]);
    const axis: Axis | null = box.w <= ON ? 'x' : box.h <= ON ? 'y' : null;
    if (axis === null) return [];
    const now = pick(after, i);
    const sides = (one: Leg): Line[] =>
      [one.width / 2, -one.width / 2].map((by) => {
        const out = scale(leftNormal(subtract(one.end, one.start)), by);
        return [add(one.start, out), add(one.end, out)];
      });
    const [from, to] = spanOn(box, other(axis)).map(
      (end, high) => end + (high ? 1 : -1) * (leg.width / 2),
    ) as [Mm, Mm];
    return sides(leg).map((side, k) => ({ axis, at: side[0][axis], from, to, line: pick(sides(now), k) }));
  });

/** The lines of a strip's sides and ends; null where one stays as it was. */
interface Outline {
  readonly sides: readonly [Line | null, Line | null];
  readonly ends: readonly [Line | null, Line | null];
}

function outlineOf({ axis, across, along }: Sides, edges: readonly Edge[]): Outline {
  const line = (on: Axis, place: Mm, stretch: readonly [Mm, Mm]): Line | null =>
    edgeAlong(edges, on, place, stretch)?.line ?? null;
  return {
    sides: [line(axis, across[0], along), line(axis, across[1], along)],
    ends: [line(other(axis), along[0], across), line(other(axis), along[1], across)],
  };
}

/** Corners of a strip from its sides and ends: both ends of its low side, then of its high one. */
function cornersBetween(
  sides: readonly [Line, Line],
  ends: readonly [Line, Line],
): readonly [Point, Point, Point, Point] {
  const meet = (side: Line, end: Line): Point => intersectLines(...side, ...end) ?? side[0];
  const [low, high] = sides;
  return [meet(low, ends[0]), meet(low, ends[1]), meet(high, ends[0]), meet(high, ends[1])];
}

const ringBetween = ([a, b, c, d]: readonly [Point, Point, Point, Point]): Ring => {
  const ring = [a, b, d, c];
  return signedArea(ring) < 0 ? reverseRing(ring) : ring;
};

/** The strip with its ends laid along what it comes to; its own cut where it comes to nothing real. */
function withEnds(
  laid: Laid<'strip'>,
  sides: Sides,
  lines: readonly [Line, Line],
  center: Line,
  { ends }: Outline,
): LaidPart {
  const { axis, across, along } = sides;
  // A square end: across what it lies along now, where it ended.
  const square = (i: 0 | 1): Line => {
    const p = at(axis, (across[0] + across[1]) / 2, along[i]);
    const foot = intersectLines(...center, p, add(p, at(axis, 1, 0))) ?? p;
    return [foot, add(foot, leftNormal(subtract(center[1], center[0])))];
  };
  const cut: readonly [Line, Line] = [ends[0] ?? square(0), ends[1] ?? square(1)];
  const corners = cornersBetween(lines, cut);
  const [start, end] = cut.map((line) => intersectLines(...center, ...line) ?? line[0]) as [Point, Point];
  // The left edge of a strip that lies up is its low side; of one that lies across it is the high one.
  const [left, right] = axis === 'x' ? [0, 2] : [2, 0];
  const stopAt = (i: 0 | 1): StoppedEnd | undefined => {
    const free = laid.spec.ends[i === 0 ? 'start' : 'end'].cut;
    if (!ends[i] || (free !== 'square' && free !== 'stop')) return undefined;
    return {
      at: 'face',
      against: false,
      laid: true,
      line: [cyclic(corners, left + i), cyclic(corners, right + i)],
    };
  };
  const region: Region = [{ outer: ringBetween(corners), holes: [] }];
  const [first, last] = [stopAt(0) ?? laid.stops?.start, stopAt(1) ?? laid.stops?.end];
  const leg = { ...laid.leg, start, end, angle: angleOf(subtract(end, start)) };
  return {
    ...laid,
    leg,
    region,
    box: boxOf(region) ?? laid.box,
    ...((first || last) && { stops: { ...(first && { start: first }), ...(last && { end: last }) } }),
  };
}

/** A strip ripped to a taper: as a board sawn to its outline, whose widths at both ends are told. */
function ripped(
  laid: Laid<'strip'>,
  sides: Sides,
  outline: Outline,
): { readonly laid: LaidPart; readonly check: Check } {
  const { axis, across, along } = sides;
  const sideAt = (i: 0 | 1): Line => outline.sides[i] ?? [at(axis, across[i], 0), at(axis, across[i], 1)];
  const endAt = (i: 0 | 1): Line => outline.ends[i] ?? [at(axis, 0, along[i]), at(axis, 1, along[i])];
  const corners = cornersBetween([sideAt(0), sideAt(1)], [endAt(0), endAt(1)]);
  const region: Region = [{ outer: ringBetween(corners), holes: [] }];
  const [from_mm, to_mm] = [distance(corners[0], corners[2]), distance(corners[1], corners[3])];
  const stock_mm = laid.leg.width;
  const { spec: _, stops: __, kind: ___, ...base } = laid;
  const leg = { ...laid.leg, start: midpoint(corners[0], corners[2]), end: midpoint(corners[1], corners[3]) };
  // Its grain runs as it did.
  const way = unit(subtract(laid.leg.end, laid.leg.start));
  const end = add(leg.start, scale(way, distance(leg.start, leg.end)));
  return {
    laid: {
      ...base,
      kind: 'fill',
      leg: { ...leg, end },
      region,
      wood: region,
      box: boxOf(region) ?? laid.box,
      spec: { pattern: { form: 'planks', edge: 'square', lap: 0 } },
    },
    check: {
      code: 'part.ripped',
      severity: Math.max(from_mm, to_mm) > stock_mm + ON ? 'warning' : 'note',
      parts: [laid.part],
      at: leg.start,
      figures: { lies: axis === 'x' ? 'up' : 'across', from_mm, to_mm, stock_mm },
    },
  };
}

/** A region whose straight sides that lie on real edges follow them. */
function regionAlong(region: Region, edges: readonly Edge[]): Region {
  const ring = (points: Ring): Ring => {
    const along = (axis: Axis, p: Point, q: Point): boolean =>
      Math.abs(p[axis] - q[axis]) <= ON &&
      edgeAlong(edges, axis, p[axis], [
        Math.min(p[other(axis)], q[other(axis)]),
        Math.max(p[other(axis)], q[other(axis)]),
      ]) !== undefined;
    let moved = false;
    const next = points.map((p, i) => {
      const near = [cyclic(points, i - 1), cyclic(points, i + 1)];
      // A curve that only touches an edge stays as it is.
      const on = (['x', 'y'] as const).filter((axis) => near.some((q) => along(axis, p, q)));
      const image =
        on.length === 0
          ? null
          : imageOf(
              p,
              edges.filter(({ axis }) => on.includes(axis)),
            );
      if (image && distance(image, p) > 0) moved = true;
      return image ?? p;
    });
    return moved ? next : points;
  };
  const next = region.map((one) => {
    const [outer, holes] = [ring(one.outer), one.holes.map(ring)];
    const same = outer === one.outer && holes.every((hole, i) => hole === one.holes[i]);
    return same ? one : { outer, holes };
  });
  return next.every((one, i) => one === region[i]) ? region : next;
}

function partAlong(laid: LaidPart, found: Found, checks: Check[]): LaidPart {
  if (isBought(laid)) return laid;
  if (!isBars(laid)) {
    const region = regionAlong(laid.region, found.edges);
    // Letters keep the box that they were set in; all else is marked and measured by where it really is.
    const box = region === laid.region || isLettered(laid) ? laid.box : (boxOf(region) ?? laid.box);
    if (!isBoards(laid)) return region === laid.region ? laid : { ...laid, region, box };
    const wood = regionAlong(laid.wood, found.edges);
    return region === laid.region && wood === laid.wood ? laid : { ...laid, region, wood, box };
  }
  if (laid.kind !== 'strip') return found.runs.get(laid) ?? laid;
  const sides = sidesOf(laid);
  if (!sides) return laid;
  const follower = found.followers.get(laid);
  const outline = outlineOf(sides, found.edges);
  if (follower) return withEnds(laid, sides, follower.lines, follower.center, outline);
  if (outline.sides.some((line) => line !== null)) {
    const rip = ripped(laid, sides, outline);
    checks.push(rip.check);
    return rip.laid;
  }
  if (outline.ends.every((line) => line === null)) return laid;
  const { axis, across } = sides;
  const lines = across.map((place): Line => [at(axis, place, 0), at(axis, place, 1)]) as [Line, Line];
  return withEnds(laid, sides, lines, [laid.leg.start, laid.leg.end], outline);
}

/**
 * The layout with its border along the edges as they really are. Rules hold the true rectangle; of what lies in it
 *
 * - strips along an edge of the face or of a level, and closed frames with corners on one, follow it as wide as they
 *   are, and so does what lies along the inside of those, as moldings do;
 * - a flat strip between such a border and something that stays true is ripped to a taper;
 * - ends that come to a border, and sides of panels and fills along one, are cut to it;
 * - all else stays square.
 *
 * Everything that follows from the layout, joints and pieces first, works on these outlines.
 */
export function alongEdges(layout: Layout, face: Face, stocks: ReadonlyMap<string, Stock>): Layout {
  const found = findFollowers(layout.parts, face, stocks);
  const checks: Check[] = [];
  const parts = layout.parts.map((laid) => partAlong(laid, found, checks));
  return {
    ...layout,
    parts,
    checks: checks.length === 0 ? layout.checks : orderChecks([...layout.checks, ...checks]),
  };
}
