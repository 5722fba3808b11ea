import type { Edge } from '../../design/schema.ts';
import type { Mm } from '../../measure/units.ts';
import { middle } from '../span.ts';
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

/** The middle onto the middle of something: centered between its edges. */
export function centerSnaps(on: SnapAxis): SnapCandidate[] {
  if (on.grip !== 'move') return [];
  const center = middle(on.span);
  return on.targets.flatMap((target) => {
    if (target.edge.side !== 'mid' || !isNear(on, target.at - center)) return [];
    const rule: OfferedRule = {
      kind: 'center',
      axis: on.axis,
      parts: [...on.ids],
      low: { ...target.edge, side: 'low' },
      high: { ...target.edge, side: 'high' },
    };
    return [candidate(on, 'center', target, target.at - center, rule)];
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
