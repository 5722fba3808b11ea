import type { Edge } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, type Span } from '../span.ts';
import { ownEdges } from './around.ts';
import { guideAt } from './drawing.ts';
import { type Neighbor, type Offer, PREFERENCE, type SnapAxis } from './snapping.ts';

/** How far apart two stretches are. */
const between = (a: Span, b: Span): Mm => Math.max(a.low - b.high, b.low - a.high);

/** Edges (of strips of one stock the center line too) level with those of what stands beside, across a gap. */
export function continuedLines(on: SnapAxis): Offer[] {
  const offer = (own: Edge, at: Mm, other: Neighbor, to: Mm): Offer[] => {
    if (Math.abs(to - at) > on.input.reach) return [];
    const from: Edge = { of: other.thing.id, side: own.side };
    return [
      {
        reading: 'line',
        axis: on.axis,
        side: own.side,
        at: to,
        miss: to - at,
        prefer: PREFERENCE.part,
        far: between(on.across, other.across),
        rule: { kind: 'set', axis: on.axis, edge: own, from, distance: 0 },
        guides: [guideAt(on, to, other.across)],
        dimensions: [],
      },
    ];
  };
  const alike = (other: Neighbor) =>
    on.grip === 'move' && on.stock !== undefined && on.stock === other.thing.stock;
  return on.apart.flatMap((other) => [
    ...ownEdges(on).flatMap(({ edge, side, at }) => offer(edge, at, other, other.span[side])),
    ...(alike(other)
      ? offer({ of: on.lowPart, side: 'mid' }, middle(on.span), other, middle(other.span))
      : []),
  ]);
}
