import type { Edge } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, type Span } from '../span.ts';
import { awayFrom, isHidden, ownEdges } from './around.ts';
import { guideAt, offerOf } from './drawing.ts';
import { type Neighbor, type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

/** Whether both edges go on in those of another: a rail is followed over a post, one edge is not. */
function goesOnIn({ span, grip, input }: SnapAxis, other: Span): boolean {
  const away = Math.max(Math.abs(other.low - span.low), Math.abs(other.high - span.high));
  const isAsLarge = Math.abs(other.high - other.low - (span.high - span.low)) < SAME_LENGTH;
  return away <= input.reach && (grip === 'both' || isAsLarge);
}

/**
 * Edges (of strips of one stock the center line too) level with those of what stands beside, across a gap. Where
 * something stands between, only what goes on as a whole is followed.
 */
export function continuedLines(on: SnapAxis): Offer[] {
  const offer = (own: Edge, at: Mm, other: Neighbor, to: Mm): Offer[] => {
    if (Math.abs(to - at) > on.input.reach) return [];
    const from: Edge = { of: other.thing.id, side: own.side };
    return [
      offerOf(on, {
        reading: 'line',
        side: own.side,
        at: to,
        miss: to - at,
        prefer: PREFERENCE.part,
        far: awayFrom(on.across, other.across),
        rule: { kind: 'set', axis: on.axis, edge: own, from, distance: 0 },
        guides: [guideAt(on, to, other.across)],
      }),
    ];
  };
  const alike = (other: Neighbor) =>
    on.grip === 'move' && on.stock !== undefined && on.stock === other.thing.stock;
  const seen = on.apart.filter((other) => goesOnIn(on, other.span) || !isHidden(on, other));
  return seen.flatMap((other) => [
    ...ownEdges(on).flatMap(({ edge, side, at }) => offer(edge, at, other, other.span[side])),
    ...(alike(other)
      ? offer({ of: on.lowPart, side: 'mid' }, middle(on.span), other, middle(other.span))
      : []),
  ]);
}
