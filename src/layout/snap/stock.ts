import type { Mm } from '../../measure/units.ts';
import { dimensionAlong, guideAt } from './drawing.ts';
import { ownEdges } from './edge.ts';
import { walls } from './gap.ts';
import type { SnapAxis, SnapCandidate } from './snapping.ts';

/** Just the room of a strip to what is beside, or, at an edge in the hand, just the width of one. */
export function stockSnaps(on: SnapAxis): SnapCandidate[] {
  const found: SnapCandidate[] = [];
  const around = walls(on);
  for (const { edge, at } of ownEdges(on)) {
    const isLow = edge.side === 'low';
    const wall = isLow ? around.low : around.high;
    for (const width of on.input.stockWidths) {
      if (wall) found.push(room(on, edge, at, wall, isLow ? width : -width));
      if (on.grip !== 'move') found.push(size(on, at, isLow, width));
    }
  }
  return found;
}

function room(
  on: SnapAxis,
  edge: ReturnType<typeof ownEdges>[number]['edge'],
  at: Mm,
  wall: NonNullable<ReturnType<typeof walls>['low']>,
  distance: Mm,
): SnapCandidate {
  return {
    kind: 'stock',
    axis: on.axis,
    delta: wall.at + distance - at,
    rule: { kind: 'set', axis: on.axis, edge, from: wall.edge, distance },
    guides: [],
    dimensions: [dimensionAlong(on, wall.at, wall.at + distance)],
  };
}

function size(on: SnapAxis, at: Mm, isLow: boolean, width: Mm): SnapCandidate {
  const end = isLow ? on.span.high - width : on.span.low + width;
  return {
    kind: 'stock',
    axis: on.axis,
    delta: end - at,
    rule: {
      kind: 'set',
      axis: on.axis,
      edge: { of: on.highPart, side: 'high' },
      from: { of: on.lowPart, side: 'low' },
      distance: width,
    },
    guides: [guideAt(on, end, on.across)],
    dimensions: [dimensionAlong(on, isLow ? end : on.span.low, isLow ? on.span.high : end)],
  };
}
