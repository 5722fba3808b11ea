import { clipPolyline, intersect, offset } from '../geometry/clip.ts';
import { add, leftNormal, scale, subtract } from '../geometry/point.ts';
import { areaOf, boxOf, containsPointInRegion, ringsOf } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import type { Leg } from '../layout/laid.ts';
import type { Mm } from '../measure/units.ts';
import { distinct, spreadAlong, spreadRow, trimEnds } from './spread.ts';

/** Strips wider than this get two rows, so that they cannot cup. Common practice, no source. */
const TWO_ROWS_OVER: Mm = 70;
/** Rows across the middle of a panel stand this many spacings apart. Common practice, no source. */
const FIELD_SPACINGS = 2;
/** A strip too narrow for the edge distance keeps this share of its width clear on each side. */
const NARROW_SHARE = 0.4;
/** More than this each way over a sheet would take forever to place. */
const MOST_EACH_WAY = 40;
/** Keeps a row that runs along the border of its room within it, through the grid of the polygon library. */
const EASE: Mm = 0.01;

export interface Spacing {
  readonly spacing: Mm;
  readonly fromEdge: Mm;
  /** Of the brad or screw: kept clear at the edge of a support where there is no room for more. */
  readonly diameter: Mm;
}

/**
 * The contact drawn in from the edges of what is beneath: by the full edge distance where that leaves
 * room within `inside`, else by half of it, else by two diameters.
 */
function overSupport(contact: Region, inside: Region, { fromEdge, diameter }: Spacing): Region {
  for (const by of [fromEdge, fromEdge / 2, 2 * diameter]) {
    const room = intersect(inside, offset(contact, -by, 'miter'));
    if (areaOf(room) > 0) return room;
  }
  return [];
}

/** The leg's center line moved sideways, to the left when positive. */
function row(leg: Leg, sideways: Mm): Point[] {
  const shift = scale(leftNormal(subtract(leg.end, leg.start)), sideways);
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
  return [...wide, [0], [width / 4, -width / 4], [(3 * width) / 8, (-3 * width) / 8]];
}

/** Places along a straight piece of stock, clear of its ends, edges and joints, over what is beneath it. */
export function placesAlong(leg: Leg, piece: Region, contact: Region, spacing: Spacing): Point[] {
  const edge = Math.min(spacing.fromEdge, leg.width * NARROW_SHARE);
  const room = overSupport(contact, offset(piece, -edge, 'miter'), spacing);
  for (const rows of rowsOf(leg, spacing.fromEdge)) {
    const lines = rows.flatMap((sideways) => clipPolyline(row(leg, sideways), room));
    // A narrow strip keeps its full distance from the ends all the same.
    const trimmed = lines.map((line) => trimEnds(line, spacing.fromEdge - edge));
    if (trimmed.length > 0) return distinct(trimmed.flatMap((line) => spreadAlong(line, spacing.spacing)));
  }
  return [];
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

/** Places on a sheet: a row around every edge, openings too, and a wider grid over the middle. */
export function placesOver(sheet: Region, contact: Region, spacing: Spacing): Point[] {
  const inside = offset(sheet, -spacing.fromEdge, 'miter');
  const room = overSupport(contact, inside, spacing);
  if (room.length === 0) return [];
  const eased = offset(room, EASE, 'miter');
  const edges = ringsOf(inside)
    .flatMap((ring) => clipPolyline(closed(ring), eased))
    .flatMap((line) => spreadRow(line, spacing.spacing));
  const middle = intersect(offset(sheet, -(spacing.fromEdge + spacing.spacing / 2), 'miter'), room);
  const places = [...edges, ...grid(middle, FIELD_SPACINGS * spacing.spacing)];
  if (places.length > 0) return distinct(places);
  // Held only well within its edges: walk the border of what holds it.
  return distinct(ringsOf(room).flatMap((ring) => spreadRow(closed(ring), spacing.spacing)));
}
