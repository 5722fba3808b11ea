import type { Edge } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { middle, spansMeet } from '../span.ts';
import { guideAt } from './drawing.ts';
import type { OfferedRule, SnapAxis, SnapCandidate, Target } from './snapping.ts';

interface OwnEdge {
  readonly edge: Edge;
  readonly at: Mm;
}

/** The edges that the hand moves. */
export function ownEdges(on: SnapAxis): OwnEdge[] {
  const low: OwnEdge = { edge: { of: on.lowPart, side: 'low' }, at: on.span.low };
  const high: OwnEdge = { edge: { of: on.highPart, side: 'high' }, at: on.span.high };
  if (on.grip === 'low') return [low];
  if (on.grip === 'high') return [high];
  return [low, high];
}

/** Most lines are far away: nothing is made for those. */
const isNear = (on: SnapAxis, delta: Mm): boolean => Math.abs(delta) <= on.input.tolerance;

/** Edges onto the lines of face, levels and other parts. */
export function edgeSnaps(on: SnapAxis): SnapCandidate[] {
  const found: SnapCandidate[] = [];
  for (const own of ownEdges(on)) {
    for (const target of on.targets) {
      if (!isNear(on, target.at - own.at)) continue;
      const rule: OfferedRule = {
        kind: 'set',
        axis: on.axis,
        edge: own.edge,
        from: target.edge,
        distance: 0,
      };
      found.push(candidate(on, 'edge', target, target.at - own.at, rule));
    }
  }
  return found;
}

/**
 * The middle onto the middle of something: centered between its edges. Of one part that is pulled at an edge the
 * middle goes half as far as the edge; in what lies around it equal margins are offered instead.
 */
export function centerSnaps(on: SnapAxis): SnapCandidate[] {
  if (on.grip !== 'move' && on.ids.length > 1) return [];
  const center = middle(on.span);
  const times = on.grip === 'move' ? 1 : 2;
  return on.targets.flatMap((target) => {
    const delta = times * (target.at - center);
    if (target.edge.side !== 'mid' || !isNear(on, delta)) return [];
    if (on.grip !== 'move' && target.edge.of !== 'face' && spansMeet(target.across, on.across)) return [];
    const rule: OfferedRule = {
      kind: 'center',
      axis: on.axis,
      parts: [...on.ids],
      low: { ...target.edge, side: 'low' },
      high: { ...target.edge, side: 'high' },
    };
    return [candidate(on, 'center', target, delta, rule)];
  });
}

const candidate = (
  on: SnapAxis,
  kind: 'edge' | 'center',
  target: Target,
  delta: Mm,
  rule: OfferedRule,
): SnapCandidate => ({
  kind,
  axis: on.axis,
  delta,
  rule,
  guides: [guideAt(on, target.at, target.across)],
  dimensions: [],
});
