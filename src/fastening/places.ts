import { asOne, clipPolyline, connectedParts, intersect, offset, subtract } from '../geometry/clip.ts';
import { add, distance, dot, leftNormal, midpoint, subtract as minus, scale } from '../geometry/point.ts';
import { areaOf, boxOf, containsPointInRegion, ringsOf } from '../geometry/region.ts';
import { perimeter } from '../geometry/ring.ts';
import { distanceToSegment } from '../geometry/segment.ts';
import type { Point, Polygon, Region } from '../geometry/shape.ts';
import type { Leg } from '../layout/laid.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { DRILLED_EDGE } from './apart.ts';
import { Chosen, type Seat, type Spread } from './chosen.ts';
import { placeEdges } from './edgeRows.ts';
import { lengthOf, trimEnds } from './spread.ts';

/** Strips wider than this get two rows, so that they cannot cup. Common practice, no source. */
const TWO_ROWS_OVER: Mm = 70;
/** Rows across the middle of a panel stand this many spacings apart. Common practice, no source. */
const FIELD_SPACINGS = 2;
/** A strip too narrow for the edge distance keeps this share of its width clear on each side. */
const NARROW_SHARE = 0.4;
/** On a stretch shorter than this share of the spacing, one in the middle does. */
const SINGLE = 0.25;
/** A place in the middle of a narrow sheet holds both its edges: another within this share of the spacing is one too many. */
const MERGED = 0.5;
/** A single brad or screw lets a piece turn. Common practice, no source. */
export const FEWEST = 2;
/** A row will do that holds along this share of what the best one does. */
const ENOUGH = 0.5;
/** More than this each way over a sheet would take forever to place. */
const MOST_EACH_WAY = 40;
/** Keeps a row that runs along the border of its room within it, through the grid of the polygon library. */
export const EASE: Mm = 0.01;

export interface Spacing {
  readonly spacing: Mm;
  readonly fromEdge: Mm;
  /** Along the grain, which splits more easily there. */
  readonly fromEnd: Mm;
  /** What a piece that is too small for `fromEdge` is content with. */
  readonly leastEdge: Mm;
  /** No two of a part nearer than this. */
  readonly apart: Mm;
  /** Of the brad or screw: kept clear at the edge of a support where there is no room for more. */
  readonly diameter: Mm;
}

/** A contact drawn in from its edges. */
export type DrawnIn = (by: Mm) => Region;

/** Draws a contact in, once by each measure: whatever is tried over it asks for the same few. */
export function drawingIn(contact: Region): DrawnIn {
  const kept = new Map<Mm, Region>();
  return (by) => {
    const known = kept.get(by) ?? offset(contact, -by, 'miter');
    kept.set(by, known);
    return known;
  };
}

/** What a part can be driven into. */
export interface Ground {
  /** The part's contact with each support by itself: where two supports abut there is a seam, not wood. */
  readonly supports: readonly DrawnIn[];
  /** Left out of it. */
  readonly blocked: Region;
  /** Whether nothing else is driven in too near to a place. */
  readonly free: (p: Point) => boolean;
}

/** Whether a region is more than a line left by rounding. */
const hasRoom = (region: Region): boolean => region.some(isBody) || offset(region, -EASE, 'miter').length > 0;

/** More than drawing in by `EASE` can take: a band along the border, and a miter at each corner at most. */
function isBody({ outer, holes }: Polygon): boolean {
  const rings = [outer, ...holes];
  const border = rings.reduce((sum, ring) => sum + perimeter(ring), 0);
  const corners = rings.reduce((sum, ring) => sum + ring.length, 0);
  return areaOf([{ outer, holes }]) > 2 * EASE * (border + corners);
}

/** How far to stay clear of the edge of a support: well clear first, and what will do last. */
const clearances = ({ fromEdge, diameter }: Pick<Spacing, 'fromEdge' | 'diameter'>): [Mm, Mm, Mm] => [
  fromEdge,
  fromEdge / 2,
  DRILLED_EDGE * diameter,
];

/** What can be driven into at a clearance. */
function roomBy({ supports, blocked }: Omit<Ground, 'free'>, inside: Region, by: Mm): Region {
  const room = intersect(inside, asOne(supports.map((contact) => contact(by))));
  return blocked.length > 0 ? subtract(room, blocked) : room;
}

/**
 * Every contact drawn in from the edges of its support: by the full edge distance where that leaves room
 * within `inside`, else by half of it, else by what a drilled hole needs.
 */
function overSupport(
  { supports, blocked }: Omit<Ground, 'free'>,
  inside: Region,
  { fromEdge, diameter }: Spacing,
): Region {
  const rooms = supports.flatMap((contact) => {
    for (const by of clearances({ fromEdge, diameter })) {
      const room = intersect(inside, contact(by));
      if (hasRoom(room)) return [room];
    }
    return [];
  });
  const room = asOne(rooms);
  return blocked.length > 0 ? subtract(room, blocked) : room;
}

const leftOf = (leg: Leg): Point => leftNormal(minus(leg.end, leg.start));

/** The leg's center line moved sideways, to the left when positive. */
function row(leg: Leg, sideways: Mm): Point[] {
  const shift = scale(leftOf(leg), sideways);
  return [add(leg.start, shift), add(leg.end, shift)];
}

/**
 * Rows to try on a strip, best first: two rows near the edges of a wide one, else one down the middle;
 * and where what is beneath does not reach there, whatever row it does reach.
 */
function rowsOf(leg: Leg, fromEdge: Mm): Mm[][] {
  const { width } = leg;
  const outer = width / 2 - fromEdge;
  const wide = width > TWO_ROWS_OVER && outer > 0 ? [[outer, -outer]] : [];
  // Two rows nearer to each other than the edge distance would split the strip between them.
  const pairs = [width / 4, (3 * width) / 8].filter((sideways) => 2 * sideways >= fromEdge);
  return [...wide, [0], ...pairs.map((sideways) => [sideways, -sideways])];
}

/**
 * Rows through the middle of each part of the room, beside a seam or a gap that runs under the center line: both at once
 * where two lie well apart, else whichever does.
 */
function rowsWithin(leg: Leg, room: Region, apart: Mm): Mm[][] {
  const left = leftOf(leg);
  const middles = connectedParts(room).map((part) => {
    const across = part.flatMap(({ outer }) => outer.map((p) => dot(minus(p, leg.start), left)));
    return (Math.min(...across) + Math.max(...across)) / 2;
  });
  const sorted = middles.sort((a, b) => Math.abs(a) - Math.abs(b) || a - b);
  const [a = 0, b = 0] = sorted;
  const both = sorted.length === 2 && Math.abs(a - b) >= apart ? [sorted] : [];
  return [...both, ...sorted.map((middle) => [middle])];
}

interface Rows {
  readonly lines: readonly Point[][];
  /** Length that a row of them holds along. */
  readonly holds: Mm;
}

interface OneRow {
  readonly sideways: Mm;
  readonly lines: readonly Point[][];
  readonly holds: Mm;
}

function layRow(leg: Leg, sideways: Mm, room: Region): OneRow {
  const lines = clipPolyline(row(leg, sideways), room);
  return { sideways, lines, holds: lines.reduce((sum, line) => sum + lengthOf(line), 0) };
}

const layEach = (leg: Leg, rows: readonly Mm[], room: Region): OneRow[] =>
  rows.map((sideways) => layRow(leg, sideways, room));

const together = (rows: readonly OneRow[]): Rows => ({
  lines: rows.flatMap(({ lines }) => lines),
  holds: rows.reduce((sum, { holds }) => sum + holds, 0) / rows.length,
});

const layRows = (leg: Leg, rows: readonly Mm[], room: Region): Rows => together(layEach(leg, rows, room));

/**
 * Of two rows one may lie on a seam while the other holds: that one is moved toward the middle, as little as
 * it takes and no nearer to the other than the edge distance. A single row has others to take its place.
 */
function offSeams(leg: Leg, rows: readonly OneRow[], room: Region, apart: Mm): Rows {
  const [a, b] = rows;
  const enough = ENOUGH * distance(leg.start, leg.end);
  if (!a || !b || (a.holds >= enough && b.holds >= enough)) return together(rows);
  const left = leftOf(leg);
  const across = ringsOf(room).flatMap((ring) => ring.map((p) => dot(minus(p, leg.start), left)));
  return together(
    rows.map((one, i) => {
      const other = (i === 0 ? b : a).sideways;
      if (one.holds >= enough) return one;
      const tries = across
        .flatMap((at) => [at - EASE, at + EASE])
        .filter((at) => Math.abs(at) < Math.abs(one.sideways) && Math.abs(at - other) >= apart)
        .sort((p, q) => Math.abs(p - one.sideways) - Math.abs(q - one.sideways));
      for (const at of tries) {
        const moved = layRow(leg, at, room);
        if (moved.holds >= enough) return moved;
      }
      return one;
    }),
  );
}

/** The first rows that hold along enough of the piece, beside those that hold along most of it. */
function chooseRows(leg: Leg, room: Region, fromEdge: Mm): Rows | null {
  const wanted = rowsOf(leg, fromEdge);
  const first = offSeams(leg, layEach(leg, pick(wanted, 0), room), room, fromEdge);
  if (first.holds >= ENOUGH * distance(leg.start, leg.end)) return first;
  const others = [...wanted.slice(1), ...rowsWithin(leg, room, fromEdge)].map((rows) =>
    layRows(leg, rows, room),
  );
  const most = Math.max(first.holds, ...others.map(({ holds }) => holds));
  return [first, ...others].find(({ lines, holds }) => lines.length > 0 && holds >= ENOUGH * most) ?? null;
}

/**
 * Places along a straight piece of stock, clear of its ends, edges and joints, over what is beneath it. On
 * a piece so narrow that a seam beneath it leaves nothing, they stand nearer to its own edges.
 */
export function placesAlong(leg: Leg, piece: Region, ground: Ground, spacing: Spacing): Point[] {
  const edge = Math.min(spacing.fromEdge, leg.width * NARROW_SHARE);
  const inside = offset(piece, -edge, 'miter');
  const places = placesWithin(leg, ground, overSupport(ground, inside, spacing), spacing, edge);
  if (places.length > 0 || ground.supports.length < 2) return places;
  const least = Math.min(edge, DRILLED_EDGE * spacing.diameter);
  const nearer = offset(piece, -least, 'miter');
  return placesWithin(leg, ground, overSupport(ground, nearer, spacing), spacing, least);
}

/** What is bent springs back between its brads: they stand at this share of the spacing. Common practice, no source. */
const BENT_SHARE = 0.5;

/** Places along the middle line of a bent piece, clear of its ends and edges, closer than along a straight one. */
export function placesAlongBend(
  { width, placed, along }: { readonly width: Mm; readonly placed: Region; readonly along: readonly Point[] },
  ground: Ground,
  spacing: Spacing,
): Point[] {
  const edge = Math.min(spacing.fromEdge, width * NARROW_SHARE);
  const room = overSupport(ground, offset(placed, -edge, 'miter'), spacing);
  const chosen = new Chosen(spacing.apart, ground.free);
  const closer = Math.max(spacing.apart, BENT_SHARE * spacing.spacing);
  for (const line of clipPolyline(along, room)) {
    chosen.stretch(trimEnds(line, spacing.fromEnd - edge), { spacing: closer, single: SINGLE * closer });
  }
  return chosen.places;
}

/** Even places; on a piece too short for two, both its ends; and if that is too short, two side by side. */
function placesWithin(leg: Leg, ground: Ground, room: Region, spacing: Spacing, clear: Mm): Point[] {
  const rows = chooseRows(leg, room, spacing.fromEdge);
  if (!rows) return [];
  // A narrow strip keeps its full distance from the ends all the same.
  const trimmed = ({ lines }: Rows) => lines.map((line) => trimEnds(line, spacing.fromEnd - clear));
  const { apart } = spacing;
  const side = Math.max(leg.width / 4, apart / 2);
  return firstEnough(
    [
      () => [SINGLE * spacing.spacing, trimmed(rows)] as const,
      () => [apart, trimmed(rows)] as const,
      () => [apart, trimmed(layRows(leg, [side, -side], room))] as const,
    ].map((lay) => () => {
      const [single, lines] = lay();
      const chosen = new Chosen(apart, ground.free);
      for (const line of lines) chosen.stretch(line, { spacing: spacing.spacing, single });
      return chosen.places;
    }),
  );
}

/** The first of these ways that gives enough places, else the one that gives the most. */
function firstEnough(ways: readonly (() => Point[])[]): Point[] {
  let best: Point[] = [];
  for (const way of ways) {
    if (best.length >= FEWEST) break;
    const places = way();
    if (places.length > best.length) best = places;
  }
  return best;
}

/** Points of an even grid, centered on the region, that lie in it; wider than `pitch` where that is too many. */
function grid(region: Region, pitch: Mm): Point[] {
  const box = boxOf(region);
  if (!box) return [];
  const step = Math.max(pitch, Math.max(box.w, box.h) / MOST_EACH_WAY);
  const across = Math.floor(box.w / step) + 1;
  const up = Math.floor(box.h / step) + 1;
  const points: Point[] = [];
  for (let j = 0; j < up; j++) {
    for (let i = 0; i < across; i++) {
      const x = box.x + box.w / 2 + (i - (across - 1) / 2) * step;
      const y = box.y + box.h / 2 + (j - (up - 1) / 2) * step;
      if (containsPointInRegion(region, { x, y })) points.push({ x, y });
    }
  }
  return points;
}

const closed = (ring: readonly Point[]): Point[] => (ring[0] ? [...ring, ring[0]] : []);

/** Inward direction at a point of a line along a ring whose region lies on its left. */
function inwardAt(line: readonly Point[], p: Point): Point {
  let best = { away: Number.POSITIVE_INFINITY, inward: { x: 0, y: 0 } };
  line.slice(1).forEach((b, i) => {
    const a = pick(line, i);
    const away = distanceToSegment(p, a, b);
    if (away < best.away && distance(a, b) > 0) best = { away, inward: leftNormal(minus(b, a)) };
  });
  return best.inward;
}

/**
 * Where a place of a row along the edge of a sheet goes: the rows on either side of a stretch no wider than a
 * strip of one row are one in its middle.
 *
 * @param inside the sheet drawn in by `edge`
 * @param merged how far those in the middle stand from each other
 */
function seatIn(inside: Region, best: Region, edge: Mm, apart: Mm, merged: Mm): NonNullable<Spread['seat']> {
  const narrow = TWO_ROWS_OVER - 2 * edge;
  return (p, line): Seat => {
    const onRow = { at: p, apart };
    const inward = inwardAt(line, p);
    const [chord] = clipPolyline([add(p, scale(inward, EASE)), add(p, scale(inward, narrow))], inside);
    const end = chord?.[chord.length - 1];
    if (narrow <= EASE || !end || distance(p, end) > narrow - EASE) return onRow;
    const at = midpoint(p, end);
    return containsPointInRegion(best, at) ? { at, apart: merged } : onRow;
  };
}

/**
 * Places on a sheet: a row around every edge, openings too, clear of seams, and a wider grid over the middle. On
 * a sheet too small for rows, two as far apart as can be, at last nearer to its edges.
 */
export function placesOver(sheet: Region, ground: Ground, spacing: Spacing): Point[] {
  const nearer = [spacing.leastEdge, DRILLED_EDGE * spacing.diameter];
  return firstEnough([
    () => placesOn(sheet, ground, spacing, false),
    ...[spacing.fromEdge, ...nearer.filter((edge) => edge < spacing.fromEdge)].map(
      (fromEdge) => () => farthestTwo(placesOn(sheet, ground, { ...spacing, fromEdge }, true)),
    ),
  ]);
}

/** The two places that stand farthest apart. */
function farthestTwo(places: readonly Point[]): Point[] {
  let best: Point[] = places.slice(0, 1);
  let apart = 0;
  places.forEach((p, i) => {
    for (const q of places.slice(i + 1)) {
      if (distance(p, q) <= apart) continue;
      apart = distance(p, q);
      best = [p, q];
    }
  });
  return best;
}

function placesOn(sheet: Region, ground: Ground, spacing: Spacing, small: boolean): Point[] {
  const { fromEdge, apart } = spacing;
  const inside = offset(sheet, -fromEdge, 'miter');
  const room = overSupport(ground, inside, spacing);
  if (room.length === 0) return [];
  const roomAt = (by: Mm) => offset(roomBy(ground, inside, by), EASE, 'miter');
  const [well, ...less] = clearances(spacing);
  const best = roomAt(well);
  // Most sheets hold all along their edges, and ask for no others.
  let nearer: Region[] | null = null;
  const rooms = { best, nearer: () => (nearer ??= less.map(roomAt)) };
  const chosen = new Chosen(apart, ground.free);
  const single = small ? apart : SINGLE * spacing.spacing;
  const merged = small ? apart : Math.max(apart, MERGED * spacing.spacing);
  const seat = seatIn(inside, best, fromEdge, Math.max(apart, fromEdge), merged);
  placeEdges(chosen, inside, rooms, { spacing: spacing.spacing, single, seat }, EASE);
  const middle = intersect(offset(sheet, -(fromEdge + spacing.spacing / 2), 'miter'), room);
  for (const p of grid(middle, FIELD_SPACINGS * spacing.spacing)) {
    chosen.single(p, spacing.spacing / 2, (q) => containsPointInRegion(middle, q));
  }
  if (chosen.places.length > 0) return chosen.places;
  // Held only well within its edges: walk the border of what holds it.
  for (const ring of ringsOf(room)) chosen.row(closed(ring), { spacing: spacing.spacing, single });
  return chosen.places;
}
