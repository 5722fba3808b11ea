import { edgeOf } from '../../design/edge.ts';
import type { Edge } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, type Span } from '../span.ts';
import { awayFrom, isHidden, wallsOf } from './around.ts';
import { dimensionAlong, guideAt, offerOf } from './drawing.ts';
import { type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

interface Room {
  readonly low: Edge;
  readonly high: Edge;
  readonly span: Span;
  readonly prefer: number;
  readonly far: Mm;
}

/**
 * Rooms that a part may stand in the middle of: what it lies on, the frame around it, between its neighbors, and
 * over or under something wider that nothing nearer hides.
 */
function roomsOf(on: SnapAxis): Room[] {
  const rooms: Room[] = on.containers.map((container) => ({
    low: edgeOf(container, 'low'),
    high: edgeOf(container, 'high'),
    span: container.span,
    prefer: container.prefer,
    far: 0,
  }));
  const { low, high } = wallsOf(on);
  if (low && high && low.edge.of !== high.edge.of) {
    const prefer = Math.min(PREFERENCE.part, Math.max(low.prefer, high.prefer));
    rooms.push({ low: low.edge, high: high.edge, span: { low: low.at, high: high.at }, prefer, far: 0 });
  }
  for (const one of on.apart) {
    if (isHidden(on, one)) continue;
    rooms.push({
      low: { of: one.thing.id, side: 'low' },
      high: { of: one.thing.id, side: 'high' },
      span: one.span,
      prefer: PREFERENCE.aside,
      far: awayFrom(on.across, one.across),
    });
  }
  return rooms;
}

/** The middle in the middle of something at least as wide. A pulled edge moves the middle by half of its way. */
export function centers(on: SnapAxis): Offer[] {
  const times = on.grip === 'move' || on.grip === 'both' ? 1 : 2;
  const size = on.span.high - on.span.low;
  return roomsOf(on).flatMap((room): Offer[] => {
    const at = middle(room.span);
    const miss = times * (at - middle(on.span));
    const whole = size + (times === 2 ? (on.grip === 'low' ? -miss : miss) : 0);
    if (Math.abs(miss) > on.input.reach || whole < SAME_LENGTH) return [];
    if (whole > room.span.high - room.span.low + SAME_LENGTH) return [];
    const [from, to] = [at - whole / 2, at + whole / 2];
    return [
      offerOf(on, {
        reading: 'center',
        side: 'mid',
        at,
        miss,
        prefer: room.prefer,
        far: room.far,
        rule: { kind: 'center', axis: on.axis, parts: [...on.ids], low: room.low, high: room.high },
        guides: [guideAt(on, at, on.across)],
        dimensions: [dimensionAlong(on, room.span.low, from), dimensionAlong(on, to, room.span.high)],
      }),
    ];
  });
}
