import type { Mm } from '../measure/units.ts';
import { add, cross, distance, dot, leftNormal, scale, subtract, unit } from './point.ts';
import type { Point } from './shape.ts';
import { type Arc, type Line, wayAt } from './stretch.ts';
import { SAME_LENGTH } from './tolerance.ts';

/** Lines and arcs of circles. */
type Side = Line | Arc;

/** The radius of the arc that runs `by` to the left of one, less than 0 where there is none. */
export const parallelRadius = ({ rx, sweep }: Arc, by: Mm): Mm => (sweep > 0 ? rx - by : rx + by);

/** The place `by` to the left of one end of a side. */
export const beside = (side: Side, end: 0 | 1, by: Mm): Point =>
  add(end === 0 ? side.from : side.to, scale(leftNormal(wayAt(side, end)), by));

/** So many times as far as the sides lie apart is beyond all places where they may meet. */
const FAR = 1e4;

/**
 * Where the sides that run `by` to the left of two of them meet, each of which ends where the next begins: of all such
 * places the one nearest to the miter of the straight ways there. Where the way turns back on itself, as at the crown of an
 * ogee, that is far on along it. Null where they do not meet.
 */
export function parallelsMeet(before: Side, after: Side, by: Mm): Point | null {
  const [come, go] = [wayAt(before, 1), wayAt(after, 0)];
  const isStraight = Math.abs(cross(come, go)) < SAME_LENGTH;
  if (isStraight && dot(come, go) > 0) return beside(after, 0, by);
  const tip = isStraight
    ? add(after.from, scale(go, FAR * Math.abs(by)))
    : add(after.from, scale(add(leftNormal(come), leftNormal(go)), by / (1 + dot(come, go))));
  if (before.kind === 'line' && after.kind === 'line') return isStraight ? null : tip;
  const found = meets(before, after, by);
  return found.toSorted((a, b) => distance(a, tip) - distance(b, tip))[0] ?? null;
}

function meets(before: Side, after: Side, by: Mm): Point[] {
  if (before.kind === 'line') return after.kind === 'line' ? [] : lineMeets(before, after, by);
  if (after.kind === 'line') return lineMeets(after, before, by);
  const [r, s] = [parallelRadius(before, by), parallelRadius(after, by)];
  const between = subtract(after.center, before.center);
  const apart = distance(before.center, after.center);
  if (apart < SAME_LENGTH || r < 0 || s < 0) return [];
  // Both circles meet on the line at right angles to that of their centers: r² - a² = s² - (d - a)².
  const along = (r * r - s * s + apart * apart) / (2 * apart);
  return around(add(before.center, scale(unit(between), along)), unit(between), r * r - along * along);
}

function lineMeets(line: Line, arc: Arc, by: Mm): Point[] {
  const way = wayAt(line, 0);
  const from = beside(line, 0, by);
  const off = cross(way, subtract(arc.center, from));
  const r = parallelRadius(arc, by);
  if (r < 0) return [];
  const foot = add(arc.center, scale(leftNormal(way), -off));
  return around(foot, leftNormal(way), r * r - off * off);
}

/** Two places to either side of a foot, by the square of how far; one where they just touch. */
function around(foot: Point, out: Point, square: number): Point[] {
  if (square < -SAME_LENGTH) return [];
  const by = Math.sqrt(Math.max(0, square));
  return [add(foot, scale(leftNormal(out), by)), add(foot, scale(leftNormal(out), -by))];
}
