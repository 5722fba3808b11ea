import { isClosed } from '../../design/path.ts';
import { type Ahead, borderAhead } from '../../geometry/border.ts';
import { union } from '../../geometry/clip.ts';
import { withinConvex } from '../../geometry/cut.ts';
import {
  add,
  cross,
  distance,
  dot,
  leftNormal,
  midpoint,
  scale,
  subtract,
  unit,
} from '../../geometry/point.ts';
import { boxOf, containsPointInRegion, regionOfRing, ringsOf } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { lineTo } from '../../geometry/stretch.ts';
import { SAME_LENGTH, SAME_PLACE } from '../../geometry/tolerance.ts';
import { lastOf, pick } from '../../list/at.ts';
import { groupOf } from '../../list/grouped.ts';
import type { Mm } from '../../measure/units.ts';
import type { Laid, LaidPart, Leg, StoppedEnd, Stops } from '../laid.ts';
import { withSpan } from '../span.ts';
import { madeSides, pathOfRun, reach, regionOfRun, sawnSides } from './run.ts';
import { sawnRun } from './sawnArcs.ts';

type End = 'start' | 'end';
type Barred = Laid<'strip'> | Laid<'run'>;

/**
 * An end that is to stop, and why it does not: what it is to stop at lies nowhere ahead, or beside a part of it, or the end is
 * that of an arc which is sawn or bent as a whole.
 */
export interface Missed {
  readonly end: End;
  readonly at: string;
  readonly meets: 'part' | 'nowhere' | 'arc';
}

/** Whether a laid part has ends that are to stop at something. */
export const isToStop = (laid: LaidPart): laid is Barred => stopsAskedOf(laid).length > 0;

const goesAround = ({ closed, spec: { path } }: Laid<'run'>): boolean => closed || isClosed(path);

/** The ends that are to stop, and at what; a closed run has none. */
export function stopsAskedOf(laid: LaidPart): readonly { readonly end: End; readonly at: string }[] {
  if ((laid.kind !== 'strip' && laid.kind !== 'run') || (laid.kind === 'run' && goesAround(laid))) return [];
  const { start, end } = laid.spec.ends;
  const asked: { end: End; at: string }[] = [];
  if (start.cut === 'stop') asked.push({ end: 'start', at: start.at });
  if (end.cut === 'stop') asked.push({ end: 'end', at: end.at });
  return asked;
}

/**
 * A strip or run with its ends brought to the borders that they are to stop at: longer or shorter than it was
 * laid, its footprint cut to them. An end that does not meet its border with its whole width stays as it was laid.
 *
 * @param borders by what the ends name; what lies nowhere is not there
 */
export function stopped(
  laid: Barred,
  borders: ReadonlyMap<string, Region>,
): { readonly laid: Barred; readonly bounds: Box; readonly missed: readonly Missed[] } {
  const asked = stopsAskedOf(laid);
  let legs = laid.kind === 'strip' ? [laid.leg] : [...laid.legs];
  const missed: Missed[] = [];
  const stops: { -readonly [E in End]?: StoppedEnd } = {};
  const both = asked.length > 1 && legs.length === 1;
  /** Legs of a bow beyond what its end stops at. */
  const less = { start: 0, end: 0 };
  for (const { end, at } of asked) {
    const outer = end === 'start' ? legs[0] : legs.at(-1);
    if (!outer || outer.stops?.[end]) missed.push({ end, at, meets: 'arc' });
    if (!outer || outer.stops?.[end] || distance(outer.start, outer.end) <= SAME_LENGTH) continue;
    const { ahead, beyond } = alongBow(laid, legs, end, groupOf(borders, at), both);
    if (ahead.meets !== 'whole') {
      missed.push({ end, at, meets: ahead.meets });
      continue;
    }
    stops[end] = { at, line: ahead.line, against: ahead.against === true };
    less[end] = beyond;
    legs = end === 'start' ? legs.slice(beyond) : legs.slice(0, legs.length - beyond);
  }
  const brought = legs.map((leg, i) => ({
    ...leg,
    start: i === 0 && stops.start ? reachOf(leg, stops.start, 'start') : leg.start,
    end: i === legs.length - 1 && stops.end ? reachOf(leg, stops.end, 'end') : leg.end,
  }));
  const cut: Barred =
    laid.kind === 'strip' ? { ...laid, leg: pick(brought, 0), stops } : { ...laid, legs: brought, stops };
  const region = stops.start || stops.end ? regionOf(cut, legs, less, laid) : laid.region;
  const bounds = boxOf(region) ?? laid.box;
  return { laid: { ...cut, region, box: boxWithin(laid, bounds) }, bounds, missed };
}

/** A strip that lies level or upright fills its box; the boxes of others hold more than their ends. */
function boxWithin({ kind, box, spec }: Barred, bounds: Box): Box {
  if (kind !== 'strip' || !('lie' in spec)) return box;
  if (spec.lie === 'across') return withSpan(box, 'x', bounds.x, bounds.w);
  return spec.lie === 'up' ? withSpan(box, 'y', bounds.y, bounds.h) : box;
}

/**
 * What an end comes to, and how many legs lie beyond that: where it is the end of a bow, the first of its segments that
 * comes to something before its own end, else its last one.
 */
function alongBow(
  laid: Barred,
  legs: readonly Leg[],
  end: End,
  border: Region,
  both: boolean,
): { readonly ahead: ReturnType<typeof aheadOf>; readonly beyond: number } {
  const outward = end === 'end' ? legs : legs.toReversed();
  const segments = laid.kind === 'run' && lastOf(outward).bowed ? segmentsAt(laid, end) : 1;
  const last = outward.slice(-segments);
  for (const [i, leg] of last.entries()) {
    const beyond = last.length - 1 - i;
    const ahead = aheadOf(leg, end, border, both);
    if (beyond === 0) return { ahead, beyond };
    if (ahead.meets === 'whole' && isWithin(leg, ahead.line)) return { ahead, beyond };
  }
  return { ahead: { meets: 'nowhere' }, beyond: 0 };
}

/** Of how many straight lengths the first or last side of a run is made. */
function segmentsAt({ spec: { path }, box, legs }: Laid<'run'>, end: End): number {
  const sides = madeSides(path, box, pick(legs, 0).width);
  return (end === 'end' ? lastOf(sides) : pick(sides, 0)).count;
}

/** Whether the middle of a cut lies on a leg. */
function isWithin({ start, end }: Leg, line: readonly Point[]): boolean {
  const at = dot(subtract(midpoint(pick(line, 0), lastOf(line)), start), unit(subtract(end, start)));
  return at >= 0 && at <= distance(start, end);
}

/** What an end comes to on its way from the other end, or, where both are to stop, from the middle. */
function aheadOf(
  leg: Leg,
  end: End,
  border: Region,
  both: boolean,
): Ahead & Partial<Pick<StoppedEnd, 'against'>> {
  const [from, to] = end === 'end' ? [leg.start, leg.end] : [leg.end, leg.start];
  const along = unit(subtract(to, from));
  const lay = (p: Point): Point => {
    const v = subtract(p, from);
    return { x: dot(v, along), y: cross(along, v) };
  };
  const place = (p: Point): Point => add(from, add(scale(along, p.x), scale(leftNormal(along), p.y)));
  const rings = ringsOf(border).map((ring) => ring.map(lay));
  const ahead = borderAhead(rings, both ? distance(from, to) / 2 : 0, leg.width / 2);
  if (ahead.meets !== 'whole') return ahead;
  const line = ahead.line.map(place);
  const middle = midpoint(pick(ahead.line, 0), pick(ahead.line, 1));
  const against = !containsPointInRegion(border, place({ x: middle.x - SAME_PLACE, y: middle.y }));
  return { meets: 'whole', line: end === 'end' ? line : line.reverse(), against };
}

/** The end of the center line, level with where the wood reaches farthest. */
function reachOf(leg: Leg, { line }: StoppedEnd, end: End): Point {
  const along = unit(subtract(leg.end, leg.start));
  const places = line.map((p) => dot(subtract(p, leg.start), along));
  return add(leg.start, scale(along, end === 'end' ? Math.max(...places) : Math.min(...places)));
}

function regionOf(cut: Barred, legs: readonly Leg[], less: Record<End, number>, before: Barred): Region {
  if (cut.kind === 'run') return regionOfStopped(cut, legs, less);
  const { leg, stops = {}, spec, box } = cut;
  // A brace that stops at one end keeps to the corner of its box at the other.
  const corner = spec.lie === 'rising' || spec.lie === 'falling';
  const beyond = corner ? leg.width : 0;
  const region = bandOf(leg, stops, beyond);
  if (!corner || (stops.start && stops.end) || before.kind !== 'strip') return region;
  const free = stops.start ? before.leg.end : before.leg.start;
  const other = stops.start ? before.leg.start : before.leg.end;
  return withinConvex(region, quadrant(free, other, Math.max(box.w, box.h)));
}

/** The area from a corner of a box on toward the opposite one and far past it. */
function quadrant(corner: Point, toward: Point, size: Mm): Point[] {
  const far = (from: Mm, to: Mm): Mm => from + Math.sign(to - from) * 1000 * size;
  const [x, y] = [far(corner.x, toward.x), far(corner.y, toward.y)];
  const ring = [corner, { x, y: corner.y }, { x, y }, { x: corner.x, y }];
  return (x - corner.x) * (y - corner.y) > 0 ? ring : ring.reverse();
}

/** The band of a leg between the lines of its ends, or square ends `beyond` the leg. */
function bandOf(leg: Leg, { start, end }: Stops, beyond: Mm): Region {
  const along = unit(subtract(leg.end, leg.start));
  const left = scale(leftNormal(along), leg.width / 2);
  const square = (p: Point): Point[] => [add(p, left), subtract(p, left)];
  return regionOfRing([
    ...(start?.line ?? square(subtract(leg.start, scale(along, beyond)))),
    ...[...(end?.line ?? square(add(leg.end, scale(along, beyond))))].reverse(),
  ]);
}

/** Legs of a run lap by so much where its end is joined on to the rest of it. */
const SEAM: Mm = 1;

/** The band of a run up to the lines of its ends. */
function regionOfStopped(run: Laid<'run'>, before: readonly Leg[], less: Record<End, number>): Region {
  const { legs, stops = {}, sawn, spec, box } = run;
  const [first, last] = [pick(legs, 0), pick(legs, legs.length - 1)];
  if (!sawn) {
    if (legs.length === 1) return bandOf(first, stops, 0);
    const { points } = pathOfRun(spec, box, first.width);
    const path = { points: points.slice(less.start, points.length - less.end), closed: false };
    return regionOfRun(spec, path, first.width, stops);
  }
  // As its path has it up to the middle of an end that stops, and from there to the line.
  const areas: Region[] = [];
  const by = { start: NOWHERE, end: NOWHERE };
  if (stops.start) {
    const middle = midpoint(first.start, first.end);
    areas.push(bandOf({ ...first, end: toward(middle, first.end, SEAM) }, { start: stops.start }, 0));
    by.start = subtract(middle, pick(before, 0).start);
  }
  if (stops.end) {
    const middle = midpoint(last.start, last.end);
    areas.push(bandOf({ ...last, start: toward(middle, last.start, SEAM) }, { end: stops.end }, 0));
    by.end = subtract(middle, lastOf(before).end);
  }
  return union([regionBetween(run, by), ...areas]);
}

const NOWHERE: Point = { x: 0, y: 0 };

/** The band of a run with arcs of their own, with both ends of the path moved. */
function regionBetween({ legs, spec, box }: Laid<'run'>, by: Record<End, Point>): Region {
  const { width, thickness } = pick(legs, 0);
  const sawn = sawnSides(spec, box);
  if (!sawn) return [];
  const n = sawn.sides.length - 1;
  const sides = sawn.sides.map((side, i) => {
    if (side.kind === 'arc') return side;
    return lineTo(i === 0 ? add(side.from, by.start) : side.from, i === n ? add(side.to, by.end) : side.to);
  });
  return sawnRun(sides, false, reach(spec, width), { width, thickness }, sawn.band.pieces)?.region ?? [];
}

const toward = (from: Point, to: Point, by: Mm): Point => add(from, scale(unit(subtract(to, from)), by));
