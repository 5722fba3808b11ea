import { clipPolyline, connectedParts, intersect, offset, subtract, union } from '../geometry/clip.ts';
import { add, distance, dot, leftNormal, subtract as minus, scale } from '../geometry/point.ts';
import { boxOf, containsPointInRegion, ringsOf } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { Leg } from '../layout/laid.ts';
import type { Mm } from '../measure/units.ts';
import { edgePlaces } from './edgeRows.ts';
import { distinct, lengthOf, spreadAlong, spreadRow, trimEnds } from './spread.ts';

/** Strips wider than this get two rows, so that they cannot cup. Common practice, no source. */
const TWO_ROWS_OVER: Mm = 70;
/** Rows across the middle of a panel stand this many spacings apart. Common practice, no source. */
const FIELD_SPACINGS = 2;
/** A strip too narrow for the edge distance keeps this share of its width clear on each side. */
const NARROW_SHARE = 0.4;
/** A row will do that holds along this share of what the best one does. */
const ENOUGH = 0.5;
/** More than this each way over a sheet would take forever to place. */
const MOST_EACH_WAY = 40;
/** Keeps a row that runs along the border of its room within it, through the grid of the polygon library. */
export const EASE: Mm = 0.01;

export interface Spacing {
  readonly spacing: Mm;
  readonly fromEdge: Mm;
  /** Of the brad or screw: kept clear at the edge of a support where there is no room for more. */
  readonly diameter: Mm;
}

/** What a part can be driven into. */
export interface Ground {
  /** The part's contact with each support by itself: where two supports abut there is a seam, not wood. */
  readonly supports: readonly Region[];
  /** Left out of it. */
  readonly blocked: Region;
}

/** Whether a region is more than a line left by rounding. */
const hasRoom = (region: Region): boolean => offset(region, -EASE, 'miter').length > 0;

/** How far to stay clear of the edge of a support: well clear first, and what will do last. */
const clearances = ({ fromEdge, diameter }: Pick<Spacing, 'fromEdge' | 'diameter'>): Mm[] => [
  fromEdge,
  fromEdge / 2,
  2 * diameter,
];

/** What can be driven into at each clearance, the widest first. */
function roomsBy({ supports, blocked }: Ground, inside: Region, spacing: Spacing): Region[] {
  return clearances(spacing).map((by) => {
    const room = intersect(inside, union(supports.map((contact) => offset(contact, -by, 'miter'))));
    return blocked.length > 0 ? subtract(room, blocked) : room;
  });
}

/**
 * Every contact drawn in from the edges of its support: by the full edge distance where that leaves room
 * within `inside`, else by half of it, else by two diameters.
 */
function overSupport({ supports, blocked }: Ground, inside: Region, { fromEdge, diameter }: Spacing): Region {
  const rooms = supports.flatMap((contact) => {
    for (const by of clearances({ fromEdge, diameter })) {
      const room = intersect(inside, offset(contact, -by, 'miter'));
      if (hasRoom(room)) return [room];
    }
    return [];
  });
  const room = rooms.length > 1 ? union(rooms) : (rooms[0] ?? []);
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

/** Rows through the middle of each part of the room: beside a seam that runs under the center line. */
function rowsWithin(leg: Leg, room: Region): Mm[][] {
  const left = leftOf(leg);
  const middles = connectedParts(room).map((part) => {
    const across = part.flatMap(({ outer }) => outer.map((p) => dot(minus(p, leg.start), left)));
    return (Math.min(...across) + Math.max(...across)) / 2;
  });
  return middles.sort((a, b) => Math.abs(a) - Math.abs(b) || a - b).map((middle) => [middle]);
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
      const other = rows[1 - i]?.sideways ?? 0;
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
  const first = offSeams(leg, layEach(leg, wanted[0] ?? [0], room), room, fromEdge);
  if (first.holds >= ENOUGH * distance(leg.start, leg.end)) return first;
  const others = [...wanted.slice(1), ...rowsWithin(leg, room)].map((rows) => layRows(leg, rows, room));
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
  const places = placesWithin(leg, overSupport(ground, inside, spacing), spacing, edge);
  if (places.length > 0 || ground.supports.length < 2) return places;
  const asOne = { ...ground, supports: [union(ground.supports)] };
  if (overSupport(asOne, inside, spacing).length === 0) return [];
  const least = Math.min(edge, 2 * spacing.diameter);
  return placesWithin(leg, overSupport(ground, offset(piece, -least, 'miter'), spacing), spacing, least);
}

function placesWithin(leg: Leg, room: Region, { spacing, fromEdge }: Spacing, clear: Mm): Point[] {
  const rows = chooseRows(leg, room, fromEdge);
  if (!rows) return [];
  // A narrow strip keeps its full distance from the ends all the same.
  const trimmed = rows.lines.map((line) => trimEnds(line, fromEdge - clear));
  return distinct(trimmed.flatMap((line) => spreadAlong(line, spacing)));
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

/** Places on a sheet: a row around every edge, openings too, clear of seams, and a wider grid over the middle. */
export function placesOver(sheet: Region, ground: Ground, spacing: Spacing): Point[] {
  const inside = offset(sheet, -spacing.fromEdge, 'miter');
  const room = overSupport(ground, inside, spacing);
  if (room.length === 0) return [];
  const rooms = roomsBy(ground, inside, spacing).map((by) => offset(by, EASE, 'miter'));
  const edges = edgePlaces(inside, rooms, { ...spacing, ease: EASE });
  const middle = intersect(offset(sheet, -(spacing.fromEdge + spacing.spacing / 2), 'miter'), room);
  const places = [...edges, ...grid(middle, FIELD_SPACINGS * spacing.spacing)];
  if (places.length > 0) return distinct(places);
  // Held only well within its edges: walk the border of what holds it.
  return distinct(ringsOf(room).flatMap((ring) => spreadRow(closed(ring), spacing.spacing)));
}
