import { clipPolyline, offset } from '../geometry/clip.ts';
import { distance, midpoint } from '../geometry/point.ts';
import { ringsOf } from '../geometry/region.ts';
import type { Point, Region } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';

/** An edge is held this many spacings around each fastener: along a row, and beside one that was moved in. */
const HOLDS = 0.75;
/** A stretch without hold up to this many spacings is let be. */
const LET_BE = 0.5;

/** A stretch of edge that lies on wood and is held by nothing. */
export interface LooseEdge {
  /** Its middle. */
  readonly at: Point;
  readonly length: Mm;
}

/** Where the segment from `a` to `b` runs within `reach` of a place, in shares of it; null where it does not. */
function heldStretch(a: Point, b: Point, place: Point, reach: Mm): readonly [number, number] | null {
  const size = distance(a, b);
  const along = ((place.x - a.x) * (b.x - a.x) + (place.y - a.y) * (b.y - a.y)) / size;
  const off = ((place.x - a.x) * (b.y - a.y) - (place.y - a.y) * (b.x - a.x)) / size;
  const half = reach * reach - off * off;
  if (half <= 0) return null;
  const from = (along - Math.sqrt(half)) / size;
  const to = (along + Math.sqrt(half)) / size;
  return to <= 0 || from >= 1 ? null : [from, to];
}

/** Stretches of a segment that no place holds, in shares of it. */
function freeStretches(a: Point, b: Point, places: readonly Point[], reach: Mm): [number, number][] {
  const held = places
    .flatMap((place) => {
      const stretch = heldStretch(a, b, place, reach);
      return stretch ? [stretch] : [];
    })
    .sort((s, t) => s[0] - t[0]);
  const free: [number, number][] = [];
  let reached = 0;
  for (const [from, to] of held) {
    if (from > reached) free.push([reached, from]);
    reached = Math.max(reached, to);
  }
  if (reached < 1) free.push([reached, 1]);
  return free;
}

/**
 * The longest stretch along the edges of a sheet, where it lies on wood, that no fastener comes near; null
 * where every edge is held. Exact: each place holds a circle around it.
 *
 * @param contact where the sheet lies on something solid
 */
export function looseEdge(
  sheet: Region,
  contact: Region,
  places: readonly Point[],
  { spacing, fromEdge }: { readonly spacing: Mm; readonly fromEdge: Mm },
): LooseEdge | null {
  let longest: LooseEdge | null = null;
  const tell = (run: readonly [Point, Point][]) => {
    const length = run.reduce((sum, [p, q]) => sum + distance(p, q), 0);
    if (length <= LET_BE * spacing || length <= (longest?.length ?? 0)) return;
    const [p, q] = pick(run, Math.floor(run.length / 2));
    longest = { at: midpoint(p, q), length };
  };
  for (const ring of ringsOf(offset(sheet, -fromEdge, 'miter'))) {
    for (const line of clipPolyline(ring[0] ? [...ring, ring[0]] : [], contact)) {
      let run: [Point, Point][] = [];
      line.slice(1).forEach((b, i) => {
        const a = pick(line, i);
        if (distance(a, b) === 0) return;
        const at = (t: number): Point => ({ x: a.x + (b.x - a.x) * t, y: a.y + (b.y - a.y) * t });
        let open = run.length > 0;
        for (const [from, to] of freeStretches(a, b, places, HOLDS * spacing)) {
          if (!open || from > 0) {
            tell(run);
            run = [];
          }
          run.push([at(from), at(to)]);
          open = to >= 1;
        }
        if (!open) {
          tell(run);
          run = [];
        }
      });
      tell(run);
    }
  }
  return longest;
}
