import { isClosed } from '../../design/path.ts';
import type { Axis } from '../../design/schema.ts';
import { add, distance, dot, leftNormal, midpoint, scale, subtract, unit } from '../../geometry/point.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import { intersectLines, lineToLeft } from '../../geometry/segment.ts';
import type { Point } from '../../geometry/shape.ts';
import {
  type Arc,
  arcOver,
  lineTo,
  pointAt,
  riseThrough,
  type Line as StraightSide,
  type Stretch,
} from '../../geometry/stretch.ts';
import { cyclic, lastOf, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Laid, LaidPart, Leg, Scribe, Stops } from '../laid.ts';
import { cornersOfSides, legsOfRun, type MadeSide, madeSides, reach, regionOfRun } from '../place/run.ts';
import { sawnRun } from '../place/sawnArcs.ts';
import { scribed } from '../scribe.ts';
import {
  beside,
  boardLine,
  crossing,
  type Edge,
  edgeBetween,
  imageOf,
  type Line,
  ON,
  other,
  scribeTo,
  spanOn,
} from './edge.ts';
import { stoppedAt } from './strip.ts';

/** A side of a run's path, with the edge that its stock lies along and where the path is for that. */
interface PathSide {
  readonly made: MadeSide;
  /** Null where it stays. */
  readonly edge: Edge | null;
  readonly line: Line | null;
  readonly scribes: 'left' | 'right';
  /** A point on the side of the edge that the stock lies on. */
  readonly stock: Point;
}

/** The edges of the bed that the ends of an open path come to. */
type Ends = { readonly [End in 'start' | 'end']?: Edge | undefined };

/** The path of a straight side whose stock, so far to its left, lies along an edge; that of its own border first. */
function sideAlong(made: MadeSide, by: Mm, edges: readonly Edge[]): PathSide {
  const { side } = made;
  for (const from of side.kind === 'line' ? [0, by] : []) {
    const [p, q] = lineToLeft(side.from, side.to, from);
    const edge = edgeBetween(edges, p, q);
    if (!edge) continue;
    // The stock lies to the left of this border where the rest of it does.
    const rest = by - 2 * from;
    const stock = add(midpoint(...edge.line), scale(leftNormal(subtract(q, p)), Math.sign(rest)));
    const near = boardLine(edge, stock);
    const way: Line = dot(subtract(near[1], near[0]), subtract(q, p)) < 0 ? [near[1], near[0]] : near;
    const line = from === 0 ? way : beside(way, Math.abs(by), stock);
    return { made, edge, line, scribes: rest > 0 ? 'right' : 'left', stock };
  }
  return { made, edge: null, line: null, scribes: 'left', stock: side.from };
}

const lineOf = ({ line, made: { side } }: PathSide): Line => line ?? [side.from, side.to];

/** The place of a line across the way from a point. */
function across(p: Point, [a, b]: Line): Point {
  const way = unit(subtract(b, a));
  return add(a, scale(way, dot(subtract(p, a), way)));
}

/** Where the corner at the beginning of a side is. */
function cornerAt(p: Point, before: PathSide, after: PathSide, edges: readonly Edge[]): Point {
  if (!before.line && !after.line) return imageOf(p, edges) ?? p;
  const [from, to] = [before.made.side, after.made.side];
  if (from.kind === 'line' && to.kind === 'line') {
    const found = intersectLines(...lineOf(before), ...lineOf(after));
    // Two that run on into each other part where they did.
    if (found && distance(found, p) < Math.min(distance(from.from, from.to), distance(to.from, to.to)))
      return found;
  }
  const along = before.line ?? after.line;
  return along ? across(p, along) : p;
}

/** An end of an open path: at the edge that its stock ends at, else as far along as it was. */
function endAt(p: Point, of: PathSide, edge: Edge | undefined): Point {
  const line = lineOf(of);
  if (!edge) return of.line ? across(p, line) : p;
  return crossing(edge, line) ?? p;
}

/** An arc from corner to corner through where its crown is; null where that is no circle. */
function arcThrough(arc: Stretch, from: Point, to: Point, edges: readonly Edge[]): Stretch | null {
  if (distance(from, arc.from) === 0 && distance(to, arc.to) === 0 && arc.kind !== 'arc') return arc;
  if (arc.kind !== 'arc' || Math.abs(arc.rx - arc.ry) > ON) return null;
  const crown = pointAt(arc, 0.5);
  const moved = midpoint(subtract(from, arc.from), subtract(to, arc.to));
  return arcOver(from, to, riseThrough(from, imageOf(crown, edges) ?? add(crown, moved), to));
}

/** The line across the stock at an end of an open path, where it lies on an edge of the bed. */
function endLine(of: PathSide, end: 0 | 1, by: Mm, edges: readonly Edge[]): Edge | undefined {
  const { side } = of.made;
  if (side.kind !== 'line') return undefined;
  const near = end === 0 ? side.from : side.to;
  return edgeBetween(edges, near, lineToLeft(side.from, side.to, by)[end]);
}

/**
 * A run whose stock lies along real edges, or has corners or ends on one, with the edges of its own that follow; null
 * where it has nothing there. Corners keep their miters, each half of its real angle; arcs are struck anew through both
 * their ends and their crown.
 */
export function runAlong(
  laid: Laid<'run'>,
  edges: readonly Edge[],
): { readonly laid: LaidPart; readonly edges: Edge[] } | null {
  const { spec, sawn } = laid;
  const [leg] = laid.legs;
  if (!leg) return null;
  const { width, thickness } = leg;
  const by = reach(spec, width);
  const goesOn = isClosed(spec.path);
  const sides = madeSides(spec.path, laid.box, width).map((made) => sideAlong(made, by, edges));
  if (sides.length === 0) return null;
  const ends: Ends = goesOn
    ? {}
    : { start: endLine(pick(sides, 0), 0, by, edges), end: endLine(lastOf(sides), 1, by, edges) };
  const corners = sides.map((side, i) => {
    const p = side.made.side.from;
    return i === 0 && !goesOn ? endAt(p, side, ends.start) : cornerAt(p, cyclic(sides, i - 1), side, edges);
  });
  if (!goesOn) {
    const last = lastOf(sides);
    corners.push(endAt(last.made.side.to, last, ends.end));
  }
  const next: MadeSide[] = [];
  for (const [i, { made }] of sides.entries()) {
    const [from, to] = [pick(corners, i), cyclic(corners, i + 1)];
    const side = made.side.kind === 'line' ? lineTo(from, to) : arcThrough(made.side, from, to, edges);
    if (!side) return null;
    next.push({ side, count: made.count });
  }
  if (
    next.every(({ side }, i) => sameSide(side, pick(sides, i).made.side)) &&
    sides.every(({ edge }) => !edge?.curve)
  )
    return null;
  const made = relaid(laid, next, goesOn, { width, thickness });
  if (!made) return null;
  const scribes = scribesOf(sides, sawn !== undefined);
  const stops = stopsOf(laid, made.legs, ends);
  return {
    laid: {
      ...laid,
      ...made,
      region: scribed(made.region, scribes, made.legs),
      ...(scribes.length > 0 && { scribed: scribes }),
      ...(stops && { stops }),
    },
    edges: edgesOfLegs(laid.legs, made.legs),
  };
}

const sameSide = (a: Stretch, b: Stretch): boolean =>
  distance(a.from, b.from) === 0 &&
  distance(a.to, b.to) === 0 &&
  distance(pointAt(a, 0.5), pointAt(b, 0.5)) <= ON / 100;

/** The run made along other sides; null where they have no room for its stock. */
function relaid(
  { spec, sawn, legs }: Laid<'run'>,
  sides: readonly MadeSide[],
  closed: boolean,
  size: Pick<Leg, 'width' | 'thickness'>,
): Pick<Laid<'run'>, 'legs' | 'region' | 'sawn' | 'bows'> | null {
  if (!sawn) {
    const path = cornersOfSides(sides, closed);
    const made = legsOfRun(spec, path, size);
    if (made.length !== legs.length) return null;
    const bows = sides.flatMap(({ side, count }) => (side.kind === 'arc' ? [{ arc: side, count }] : []));
    const region = regionOfRun(spec, path, size.width);
    return { legs: made, region, ...(bows.length > 0 && { bows }) };
  }
  const straight = sides.flatMap(({ side }): (StraightSide | Arc)[] => (side.kind === 'cubic' ? [] : [side]));
  if (straight.length !== sides.length) return null;
  const pieces = pick(sawn.arcs, 0).pieces.length;
  const first = straight.findIndex(
    (side, i) => side.kind === 'line' && cyclic(straight, i - 1).kind === 'arc',
  );
  const ordered = closed && first > 0 ? [...straight.slice(first), ...straight.slice(0, first)] : straight;
  const made = sawnRun(ordered, closed, reach(spec, size.width), size, pieces);
  return made && { legs: made.legs, region: made.region, sawn: { ...sawn, arcs: made.arcs } };
}

/** The legs that are scribed: of a run whose arcs are sawn only straight sides are legs. */
function scribesOf(sides: readonly PathSide[], sawn: boolean): Scribe[] {
  let leg = 0;
  return sides.flatMap(({ made: { side, count }, edge, scribes, stock }): readonly Scribe[] => {
    const own = leg;
    leg += side.kind === 'line' ? 1 : sawn ? 0 : count;
    const way = subtract(side.to, side.from);
    return edge ? scribeTo(edge, { leg: own, side: scribes, way, stock }) : [];
  });
}

/** The long edges of a leg, the left one first. */
const bordersOf = ({ start, end, width }: Leg): Line[] =>
  [width / 2, -width / 2].map((by) => lineToLeft(start, end, by));

/** Ends of an open run that lie at an edge are cut along it, unless the person cut them otherwise. */
function stopsOf({ spec, stops }: Laid<'run'>, legs: readonly Leg[], ends: Ends): Stops | undefined {
  const cut = (['start', 'end'] as const).flatMap((which) => {
    const edge = ends[which];
    const { cut: free } = spec.ends[which];
    if (!edge || (free !== 'square' && free !== 'stop')) return [];
    const leg = which === 'start' ? pick(legs, 0) : lastOf(legs);
    const line = bordersOf(leg).map((border) => crossing(edge, border) ?? leg[which]);
    return [[which, stoppedAt(line)] as const];
  });
  return cut.length > 0 ? { ...stops, ...Object.fromEntries(cut) } : stops;
}

/** Both edges of each leg that lies straight, with where they are after it followed. */
const edgesOfLegs = (before: readonly Leg[], after: readonly Leg[]): Edge[] =>
  before.flatMap((leg, i) => {
    const box = boxOfPoints([leg.start, leg.end]);
    const axis: Axis | null = box.w <= ON ? 'x' : box.h <= ON ? 'y' : null;
    if (axis === null) return [];
    const now = pick(after, i);
    const [from, to] = spanOn(box, other(axis)).map(
      (end, high) => end + (high ? 1 : -1) * (leg.width / 2),
    ) as [Mm, Mm];
    const lines = bordersOf(now);
    return bordersOf(leg).map((side, k) => ({ axis, at: side[0][axis], from, to, line: pick(lines, k) }));
  });
