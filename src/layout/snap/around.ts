import { edgeOf } from '../../design/edge.ts';
import type { Axis, Edge } from '../../design/schema.ts';
import { surrounds } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, otherAxis, type Span, spanOf, spansMeet } from '../span.ts';
import {
  type Container,
  type Line,
  type Neighbor,
  PREFERENCE,
  type SnapAxis,
  type SnapInput,
  type Thing,
} from './snapping.ts';

/** Everything that the ranking looks at along an axis; null where the hand has nothing of it. */
export function alongAxis(input: SnapInput, axis: Axis): SnapAxis | null {
  const grip = input.grip[axis];
  const [first] = input.moving;
  if (grip === null || first === undefined) return null;
  let lowPart = first;
  let highPart = first;
  for (const one of input.moving) {
    if (spanOf(one.box, axis).low < spanOf(lowPart.box, axis).low) lowPart = one;
    if (spanOf(one.box, axis).high > spanOf(highPart.box, axis).high) highPart = one;
  }
  const span = { low: spanOf(lowPart.box, axis).low, high: spanOf(highPart.box, axis).high };
  const across = {
    low: Math.min(...input.moving.map((one) => spanOf(one.box, otherAxis(axis)).low)),
    high: Math.max(...input.moving.map((one) => spanOf(one.box, otherAxis(axis)).high)),
  };
  const whole: Box =
    axis === 'x'
      ? { x: span.low, y: across.low, w: span.high - span.low, h: across.high - across.low }
      : { x: across.low, y: span.low, w: across.high - across.low, h: span.high - span.low };
  const own = new Set(input.moving.map((one) => one.id));
  const others = input.others.filter((other) => !own.has(other.id));
  const { beside, apart } = neighborsOf(input, others, whole, axis);
  return {
    axis,
    grip,
    ids: input.moving.map((one) => one.id),
    span,
    across,
    lowPart: lowPart.id,
    highPart: highPart.id,
    stock: input.moving.length === 1 ? first.stock : undefined,
    containers: containersOf(input, others, whole, axis),
    beside,
    apart,
    nearest: nearestApart(span, across, apart),
    input,
  };
}

/**
 * Those of the things that count as neighbors of a box along an axis. Of what is over or under it only what it could
 * be brought in line with; the drag asks this in every frame, and most of a large face is neither.
 */
function neighborsOf({ support, reach }: SnapInput, others: readonly Thing[], whole: Box, axis: Axis) {
  const [own, across] = [spanOf(whole, axis), spanOf(whole, otherAxis(axis))];
  const core = shrunk(across, reach);
  const beside: Neighbor[] = [];
  const apart: Neighbor[] = [];
  for (const thing of others) {
    const over = spanOf(thing.box, otherAxis(axis));
    const isBeside = spansMeet(over, core);
    if (!isBeside && spansMeet(over, across)) continue;
    const span = spanOf(thing.box, axis);
    if (!isBeside && awayFrom(own, span) > reach) continue;
    if (thing.id === support || surrounds(thing.box, whole, 0) || frames(thing, whole, reach)) continue;
    (isBeside ? beside : apart).push({ thing, span, across: over });
  }
  return { beside, apart };
}

/**
 * What surely is covered of a stretch whose ends the hand may have missed: things that only meet the rest are
 * not beside it.
 */
export function shrunk(span: Span, reach: Mm): Span {
  const by = Math.min(reach, (span.high - span.low) * 0.3);
  return { low: span.low + by, high: span.high - by };
}

/** Whether a box stands within the opening of a frame: then only the inner edges of the frame count. */
const frames = (thing: Thing, box: Box, slack: Mm): boolean =>
  thing.inner !== undefined && surrounds(thing.inner, box, slack);

/** What lies around a box, from the innermost out: what carries it and frames first. */
function containersOf(input: SnapInput, others: readonly Thing[], box: Box, axis: Axis): Container[] {
  const { face, reach, support } = input;
  const container = (of: string, inner: boolean, around: Box, prefer: number): Container => ({
    of,
    inner,
    box: around,
    span: spanOf(around, axis),
    prefer,
  });
  const found: Container[] = [];
  for (const other of others) {
    if (other.id === support) found.push(container(other.id, false, other.box, PREFERENCE.support));
    else if (other.inner && frames(other, box, reach))
      found.push(container(other.id, true, other.inner, PREFERENCE.frame));
  }
  for (const level of face.levels) {
    // Once a part is beneath, the level behind it counts no more than the face.
    const prefer = `level:${level.id}` === support ? PREFERENCE.level : PREFERENCE.face;
    if (surrounds(level.box, box, reach))
      found.push(container(`level:${level.id}`, false, level.box, prefer));
  }
  found.push(container('face', false, face.box, PREFERENCE.face));
  return found;
}

/** Whether a line is nearer than another, farther `way`; of lines in one place by what they are of. */
function goesBefore(a: Line, b: Line | null, way: 1 | -1): boolean {
  if (b === null) return true;
  const farther = way * (a.at - b.at);
  if (Math.abs(farther) > SAME_LENGTH) return farther > 0;
  return a.prefer - b.prefer < 0 || (a.prefer === b.prefer && a.edge.of < b.edge.of);
}

/** The nearest thing on each side of the moving parts: the facing edge of a neighbor, or of what lies around. */
export function wallsOf(on: SnapAxis): { readonly low: Line | null; readonly high: Line | null } {
  const { reach } = on.input;
  let low: Line | null = null;
  let high: Line | null = null;
  const offerLow = (line: Line) => {
    if (line.at <= on.span.low + reach && goesBefore(line, low, 1)) low = line;
  };
  const offerHigh = (line: Line) => {
    if (line.at >= on.span.high - reach && goesBefore(line, high, -1)) high = line;
  };
  for (const container of on.containers) {
    offerLow({ edge: edgeOf(container, 'low'), at: container.span.low, prefer: container.prefer });
    offerHigh({ edge: edgeOf(container, 'high'), at: container.span.high, prefer: container.prefer });
  }
  for (const { thing, span } of on.beside) {
    const line = (side: 'low' | 'high', at: Mm): Line => ({
      edge: { of: thing.id, side },
      at,
      prefer: PREFERENCE.part,
    });
    if (middle(span) < middle(on.span)) offerLow(line('high', span.high));
    else offerHigh(line('low', span.low));
  }
  return { low, high };
}

/** The edges that the hand moves. */
export function ownEdges(
  on: SnapAxis,
): { readonly edge: Edge; readonly side: 'low' | 'high'; readonly at: Mm }[] {
  const low = { edge: { of: on.lowPart, side: 'low' }, side: 'low', at: on.span.low } as const;
  const high = { edge: { of: on.highPart, side: 'high' }, side: 'high', at: on.span.high } as const;
  if (on.grip === 'low') return [low];
  if (on.grip === 'high') return [high];
  return [low, high];
}

/** How far apart two stretches are. */
export const awayFrom = (own: Span, other: Span): Mm => Math.max(other.low - own.high, own.low - other.high);

/** The side of the moving parts, across the axis, that something apart from them is on. */
const sideOf = (across: Span, other: Span): 'over' | 'under' => (other.low >= across.high ? 'over' : 'under');

/** How far off the nearest thing is on either side that stands before what is farther. */
function nearestApart(span: Span, across: Span, apart: readonly Neighbor[]): SnapAxis['nearest'] {
  const nearest = { over: Number.POSITIVE_INFINITY, under: Number.POSITIVE_INFINITY };
  for (const other of apart) {
    if (!spansMeet(other.span, span)) continue;
    const side = sideOf(across, other.across);
    nearest[side] = Math.min(nearest[side], awayFrom(across, other.across));
  }
  return nearest;
}

/** Whether something else stands between the moving parts and one that is over or under them. */
export const isHidden = ({ across, nearest }: SnapAxis, one: Neighbor): boolean =>
  nearest[sideOf(across, one.across)] < awayFrom(across, one.across) - SAME_LENGTH;
