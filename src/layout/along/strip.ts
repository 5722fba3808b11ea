import type { Check } from '../../check/check.ts';
import type { Axis } from '../../design/schema.ts';
import { intersect } from '../../geometry/clip.ts';
import { add, angleOf, distance, leftNormal, midpoint, scale, subtract, unit } from '../../geometry/point.ts';
import { boxOf, ringOfBox } from '../../geometry/region.ts';
import { quadThrough, reverseRing, signedArea } from '../../geometry/ring.ts';
import { intersectLines } from '../../geometry/segment.ts';
import type { Point, Region, Ring } from '../../geometry/shape.ts';
import { cyclic } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Laid, LaidPart, Scribe, StoppedEnd } from '../laid.ts';
import { regionOfStrip } from '../place/strip.ts';
import { scribed } from '../scribe.ts';
import {
  at,
  beside,
  boardLine,
  type Edge,
  edgeAlong,
  edgeBetween,
  imageOf,
  isAt,
  type Line,
  lineOver,
  ON,
  other,
  scribeTo,
  spanOn,
} from './edge.ts';

/** The sides of a part that lies straight, by the axis across it. */
export interface Sides {
  readonly axis: Axis;
  /** Its long sides, and its ends. */
  readonly across: readonly [Mm, Mm];
  readonly along: readonly [Mm, Mm];
}

export function sidesOf({ box, spec }: Laid<'strip'>): Sides | null {
  if (spec.lie !== 'up' && spec.lie !== 'across') return null;
  const axis = spec.lie === 'up' ? 'x' : 'y';
  return { axis, across: spanOn(box, axis), along: spanOn(box, other(axis)) };
}

/** A strip that lies along an edge as a whole, as wide as it was. */
export interface Follower {
  readonly sides: Sides;
  /** Where its two long sides are, in the order of `across`. */
  readonly lines: readonly [Line, Line];
  readonly center: Line;
  readonly scribed: readonly Scribe[];
}

export function followerOn(laid: Laid<'strip'>, sides: Sides, edge: Edge): Follower {
  const { axis, across } = sides;
  const [low, high] = across;
  // Where the strip lies of the edge as it was meant to be: the real one may lie beyond all of it.
  const side = add(midpoint(...edge.line), at(axis, low + high > 2 * edge.at ? 1 : -1, 0));
  const near = boardLine(edge, side);
  const far = beside(near, laid.leg.width, side);
  const isLow = Math.abs(edge.at - low) <= ON;
  return {
    sides,
    lines: isLow ? [near, far] : [far, near],
    center: beside(near, laid.leg.width / 2, side),
    // The left edge of a strip that lies up is its low side; of one that lies across it is the high one.
    scribed: scribeTo(edge, {
      ...{ leg: 0, side: isLow === (axis === 'x') ? 'left' : 'right', way: at(axis, 0, 1), stock: side },
    }),
  };
}

export const innerEdges = ({ sides: { axis, across, along }, lines }: Follower): Edge[] =>
  lines.map((line, i) => ({ axis, at: cyclic(across, i), from: along[0], to: along[1], line }));

/** The edge that one long side lies along, and where the other side is. */
export function edgeOfSide(edges: readonly Edge[], { axis, across: [low, high], along }: Sides) {
  for (const edge of edges) {
    if (along[0] < edge.from - ON || along[1] > edge.to + ON) continue;
    if (isAt(edge, axis, low)) return { edge, far: high };
    if (isAt(edge, axis, high)) return { edge, far: low };
  }
  return null;
}

/** The lines of a strip's sides and ends; null where one stays as it was. */
interface Outline {
  readonly sides: readonly [Line | null, Line | null];
  readonly ends: readonly [Line | null, Line | null];
  /** Of ends at an edge that bows: it takes what a miter there leaves beyond it. */
  readonly tips: readonly Scribe[];
}

function outlineOf({ axis, across, along }: Sides, edges: readonly Edge[]): Outline {
  const line = (on: Axis, place: Mm, stretch: readonly [Mm, Mm]): Line | null => {
    const edge = edgeAlong(edges, on, place, stretch);
    return edge ? lineOver(edge, stretch) : null;
  };
  const stock = at(axis, (across[0] + across[1]) / 2, (along[0] + along[1]) / 2);
  const tips = along.flatMap((place) => {
    const edge = edgeAlong(edges, other(axis), place, across);
    return edge ? scribeTo(edge, { leg: 0, side: null, way: at(axis, 1, 0), stock }) : [];
  });
  return {
    sides: [line(axis, across[0], along), line(axis, across[1], along)],
    ends: [line(other(axis), along[0], across), line(other(axis), along[1], across)],
    tips,
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

/** A strip with its ends laid along what they come to; its own cut where one comes to nothing real. */
function withEnds(
  laid: Laid<'strip'>,
  sides: Sides,
  lines: readonly [Line, Line],
  center: Line,
  ends: Outline['ends'],
  scribes: readonly Scribe[] = [],
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
  const [left, right] = axis === 'x' ? [0, 2] : [2, 0];
  const stopAt = (i: 0 | 1): StoppedEnd | undefined => {
    const free = laid.spec.ends[i === 0 ? 'start' : 'end'].cut;
    if (!ends[i] || (free !== 'square' && free !== 'stop')) return undefined;
    return stoppedAt([cyclic(corners, left + i), cyclic(corners, right + i)]);
  };
  const leg = { ...laid.leg, start, end, angle: angleOf(subtract(end, start)) };
  const region = scribed([{ outer: ringBetween(corners), holes: [] }], scribes, [leg]);
  const [first, last] = [stopAt(0) ?? laid.stops?.start, stopAt(1) ?? laid.stops?.end];
  return {
    ...laid,
    leg,
    region,
    box: boxOf(region) ?? laid.box,
    ...(scribes.length > 0 && { scribed: scribes }),
    ...((first || last) && { stops: { ...(first && { start: first }), ...(last && { end: last }) } }),
  };
}

/** An end that only lies at an edge: a joint there cuts it otherwise. */
export const stoppedAt = (line: readonly Point[]): StoppedEnd => ({
  ...{ at: 'face', against: false, laid: true, line },
});

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
  const { spec: _, stops: __, kind: ___, scribed: ____, ...base } = laid;
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

/** A brace from corner to corner of what its box really is. */
function braceAlong(laid: Laid<'strip'>, edges: readonly Edge[]): LaidPart {
  const box = ringOfBox(laid.box);
  const within = quadThrough(box, (p) => imageOf(p, edges) ?? p);
  if (within.every((p, i) => distance(p, cyclic(box, i)) === 0)) return laid;
  const [start, end] =
    laid.spec.lie === 'rising' ? ([within[0], within[2]] as const) : ([within[3], within[1]] as const);
  const leg = { ...laid.leg, start, end, angle: angleOf(subtract(end, start)) };
  // A band from far beyond both ends, clipped by the sides that it ends at.
  const band = regionOfStrip({ lie: 'turned', angle: 0, length: 0 }, laid.box, {
    ...leg,
    start: add(start, scale(unit(subtract(start, end)), leg.width)),
    end: add(end, scale(unit(subtract(end, start)), leg.width)),
  });
  return { ...laid, leg, within, region: intersect(band, [{ outer: within, holes: [] }]) };
}

/** A strip at an angle whose ends stop at what follows. */
function stopsAlong(laid: Laid<'strip'>, edges: readonly Edge[]): LaidPart {
  const { stops, leg } = laid;
  if (!stops) return laid;
  let { region } = laid;
  const moved = { start: leg.start, end: leg.end };
  const next = Object.fromEntries(
    (['start', 'end'] as const).flatMap((which) => {
      const stop = stops[which];
      if (!stop) return [];
      const [p, q, more] = stop.line;
      const edge = p && q && !more && edgeBetween(edges, p, q);
      if (!edge) return [[which, stop]];
      const along = subtract(leg.end, leg.start);
      const span = [p, q].map((one) => one[other(edge.axis)]) as [Mm, Mm];
      const now = lineOver(edge, span);
      const line = [p, q].map((one) => intersectLines(one, add(one, along), ...now) ?? one) as [Point, Point];
      moved[which] = intersectLines(leg.start, leg.end, ...now) ?? moved[which];
      region = region.map(({ outer, holes }) => ({
        holes,
        outer: outer.map((one) =>
          distance(one, p) <= ON ? line[0] : distance(one, q) <= ON ? line[1] : one,
        ),
      }));
      return [[which, { ...stop, line }]];
    }),
  );
  return region === laid.region ? laid : { ...laid, region, leg: { ...leg, ...moved }, stops: next };
}

/** A strip as it lies along the edges and between what follows them. */
export function stripAlong(
  laid: Laid<'strip'>,
  follower: Follower | undefined,
  edges: readonly Edge[],
  checks: Check[],
): LaidPart {
  const sides = sidesOf(laid);
  if (!sides) return laid.spec.lie === 'turned' ? stopsAlong(laid, edges) : braceAlong(laid, edges);
  const outline = outlineOf(sides, edges);
  if (follower)
    return withEnds(laid, sides, follower.lines, follower.center, outline.ends, [
      ...follower.scribed,
      ...outline.tips,
    ]);
  if (outline.sides.some((line) => line !== null)) {
    const rip = ripped(laid, sides, outline);
    checks.push(rip.check);
    return rip.laid;
  }
  if (outline.ends.every((line) => line === null)) return laid;
  const { axis, across } = sides;
  const lines = across.map((place): Line => [at(axis, place, 0), at(axis, place, 1)]) as [Line, Line];
  return withEnds(laid, sides, lines, [laid.leg.start, laid.leg.end], outline.ends);
}
