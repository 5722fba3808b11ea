import type { Point } from '../geometry/shape.ts';
import { DUST, SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { degrees } from '../measure/units.ts';
import { type Bar, type End, type Line, toBar } from './bar.ts';
import { type Corner, type Cut, keepToLine } from './curve.ts';

export type { Corner, Cut };

/** The cut along a line of the face; null when the line runs along the bar. */
export function cutAlong(bar: Bar, line: Line, rest: Pick<Cut, 'kind' | 'with' | 'corner'>): Cut | null {
  const p = toBar(bar, line.at);
  const q = toBar(bar, { x: line.at.x + line.along.x, y: line.at.y + line.along.y });
  const rise = q.y - p.y;
  if (Math.abs(rise) < DUST) return null;
  const slope = snap((q.x - p.x) / rise);
  return { at: p.x - slope * p.y, slope, ...rest };
}

/** Directions come out of square roots; what differs from square by noise is square. */
const snap = (slope: number): number => (Math.abs(slope) < 1e-12 ? 0 : slope);

/** Saw angle of a cut at that end: positive with the long point on the left. */
export function miterOf(cut: Cut, end: End): Deg {
  const angle = degrees(Math.atan(cut.slope));
  return angle === 0 ? 0 : end === 'end' ? angle : -angle;
}

/**
 * The outline of a band of width `width`, from its start cuts to its end cuts, counterclockwise; empty when
 * they leave nothing. The order of the cuts does not matter.
 */
export function outlineOf(width: Mm, starts: readonly Cut[], ends: readonly Cut[]): Corner[] {
  const h = width / 2;
  const low = (cut: Cut): Mm => placesOf(cut, h).reduce((least, x) => Math.min(least, x));
  const high = (cut: Cut): Mm => placesOf(cut, h).reduce((most, x) => Math.max(most, x));
  const from = starts.reduce((most, cut) => Math.max(most, low(cut)), Number.NEGATIVE_INFINITY);
  const to = ends.reduce((least, cut) => Math.min(least, high(cut)), Number.POSITIVE_INFINITY);
  if (from >= to) return [];
  // A cut that lies wholly behind another one takes nothing: a bar with many gaps stays quick to saw.
  const taking = {
    start: starts.filter((cut) => high(cut) >= from),
    end: ends.filter((cut) => low(cut) <= to),
  };
  const left = taking.start.reduce((least, cut) => Math.min(least, low(cut)), from) - width;
  const right = taking.end.reduce((most, cut) => Math.max(most, high(cut)), to) + width;
  let outline: Corner[] = [
    { x: left, y: -h, edge: null },
    { x: right, y: -h, edge: null },
    { x: right, y: h, edge: null },
    { x: left, y: h, edge: null },
  ];
  for (const cut of taking.start) outline = keep(outline, 'start', cut);
  for (const cut of taking.end) outline = keep(outline, 'end', cut);
  for (const cut of taking.start) if (cut.line) outline = keepToLine(outline, 'start', cut, cut.line);
  for (const cut of taking.end) if (cut.line) outline = keepToLine(outline, 'end', cut, cut.line);
  return withoutShortSides(outline);
}

/** Where a cut has its corners along a bar of half the width `h`. */
const placesOf = ({ at, slope, line }: Cut, h: Mm): readonly Mm[] =>
  line ? line.map(({ x }) => x) : [at - slope * h, at + slope * h];

/** What stays of an outline beyond a start cut, or before an end cut. */
export function keep(outline: readonly Corner[], end: End, cut: Cut): Corner[] {
  const sign = end === 'start' ? 1 : -1;
  const inside = (p: Point): number => sign * (p.x - cut.at - cut.slope * p.y);
  const kept: Corner[] = [];
  outline.forEach((p, i) => {
    const q = outline[(i + 1) % outline.length];
    if (!q) return;
    const dp = inside(p);
    const dq = inside(q);
    const stays = dp >= -SAME_LENGTH;
    if (stays) kept.push(p);
    if (stays === dq >= -SAME_LENGTH) return;
    const t = dp / (dp - dq);
    const y = p.y === q.y ? p.y : p.y + (q.y - p.y) * t;
    kept.push({ x: cut.at + cut.slope * y, y, edge: stays ? { end, cut } : p.edge });
  });
  return kept;
}

/** Drops sides shorter than the tolerance; the corner that stays keeps the longer side. */
function withoutShortSides(outline: readonly Corner[]): Corner[] {
  return outline.filter((p, i) => {
    const q = outline[(i + 1) % outline.length];
    return q !== undefined && Math.hypot(q.x - p.x, q.y - p.y) > 2 * SAME_LENGTH;
  });
}
