import type { FreeEnd } from '../design/schema.ts';
import { subtract, unit } from '../geometry/point.ts';
import { ringOfBox } from '../geometry/region.ts';
import type { Point, Quad } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { legsOf, type StoppedEnd } from '../layout/laid.ts';
import { pick } from '../list/at.ts';
import { type Mm, radians } from '../measure/units.ts';
import { type Bar, type End, type Line, toBar } from './bar.ts';
import { returnAngle } from './end/return.ts';
import { type Cut, cutAlong } from './trim.ts';

/**
 * The cuts of an end that no joint shapes: to the border that it stops at, as the person set them, or, for a brace along a diagonal of its
 * box, the two sides of the box that meet in its corner.
 */
export function naturalCuts(bar: Bar, end: End): Cut[] {
  const { laid } = bar;
  const stop = stopOf(bar, end);
  if (stop) return stopCuts(bar, end, stop);
  if (laid.kind === 'strip' && isBrace(bar)) {
    const cuts = boxCuts(bar, end, laid.within ?? ringOfBox(laid.box));
    if (cuts.length > 0) return cuts;
  }
  return [freeCut(bar, end, laid.spec.ends[end])];
}

/** A brace is held within its box even where a joint cuts it. */
export const isBrace = (bar: Bar): boolean =>
  bar.laid.kind === 'strip' && (bar.laid.spec.lie === 'rising' || bar.laid.spec.lie === 'falling');

/** What an end of a bar stops at: an arc of its own run, or where it is an end of its strip or run too. */
export const stopOf = (bar: Bar, end: End): StoppedEnd | undefined =>
  legsOf(bar.laid)[bar.leg]?.stops?.[end] ?? (isOuter(bar, end) ? bar.laid.stops?.[end] : undefined);

/** Whether an end of a bar is an end of its strip or run. */
const isOuter = ({ laid, leg }: Bar, end: End): boolean =>
  laid.kind === 'strip' || leg === (end === 'start' ? 0 : laid.legs.length - 1);

/** The cuts of an end that stops at a border: one, two that meet in a point, or a line to saw along. */
function stopCuts(bar: Bar, end: End, { at: border, against, line }: StoppedEnd): Cut[] {
  const rest = { with: against ? border : null, corner: null } as const;
  const own = line.map((p) => toBar(bar, p));
  const cuts = own.slice(1).flatMap((q, i): Cut[] => {
    const p = pick(own, i);
    if (p.y - q.y <= SAME_LENGTH) return [];
    const slope = (p.x - q.x) / (p.y - q.y);
    const square = Math.abs(slope) < SAME_LENGTH / bar.width;
    const kind = against ? 'butt' : square ? 'square' : 'miter';
    return [{ at: square ? p.x : p.x - slope * p.y, slope: square ? 0 : slope, kind, ...rest }];
  });
  const [first, second] = cuts;
  if (first && cuts.length === own.length - 1) {
    if (!second) return [first];
    // Two cuts meet in a point where the wood between them stands out.
    const points = end === 'end' ? first.slope < second.slope : first.slope > second.slope;
    if (cuts.length === 2 && points) return [first, second];
  }
  const places = own.map(({ x }) => x);
  const reach = end === 'end' ? Math.max(...places) : Math.min(...places);
  return [{ at: reach, slope: 0, kind: 'sawn', ...rest, line: own }];
}

function freeCut(bar: Bar, end: End, free: FreeEnd): Cut {
  const angle = free.cut === 'miter' ? free.angle : free.cut === 'return' ? returnAngle(bar.stock) : 0;
  const slope = Math.tan(radians(end === 'end' ? angle : -angle));
  // The laid length is long point to long point: the cut takes wood away on the short side only.
  const back: Mm = (Math.abs(slope) * bar.width) / 2;
  const plain = free.cut === 'stop' || (free.cut === 'miter' && angle === 0);
  const kind = plain ? 'square' : free.cut;
  return { at: end === 'end' ? bar.length - back : back, slope, kind, with: null, corner: null };
}

function boxCuts(bar: Bar, end: End, [a, b, c, d]: Quad): Cut[] {
  const forward = end === 'end';
  const right = bar.along.x > 0 === forward;
  const top = bar.along.y > 0 === forward;
  const line = (from: Point, to: Point): Line => ({ at: from, along: unit(subtract(to, from)) });
  const upright = right ? line(b, c) : line(a, d);
  const level = top ? line(d, c) : line(a, b);
  const rest = { kind: 'miter', with: null, corner: null } as const;
  return [cutAlong(bar, upright, rest), cutAlong(bar, level, rest)].filter((cut) => cut !== null);
}
