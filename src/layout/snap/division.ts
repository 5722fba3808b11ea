import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { middle } from '../span.ts';
import { dimensionAlong, guideAt, shifted } from './drawing.ts';
import { ownEdges } from './edge.ts';
import { walls } from './gap.ts';
import type { Neighbor, SnapAxis, SnapCandidate } from './snapping.ts';

/** Parts of the space that a center line may stand at: thirds and quarters (halves are centering). */
const SHARES = [1 / 3, 2 / 3, 1 / 4, 3 / 4];

/** A lone part with its center line at a third or a quarter of its space. */
function shares(on: SnapAxis): SnapCandidate[] {
  const { low, high } = walls(on);
  const id = on.ids.length === 1 ? on.ids[0] : undefined;
  if (!low || !high || id === undefined) return [];
  return SHARES.map((share) => {
    const at = low.at + (high.at - low.at) * share;
    return {
      kind: 'division' as const,
      axis: on.axis,
      delta: at - middle(on.span),
      rule: {
        kind: 'set' as const,
        axis: on.axis,
        edge: { of: id, side: 'mid' as const },
        from: low.edge,
        distance: at - low.at,
      },
      guides: [guideAt(on, at, on.across)],
      dimensions: [dimensionAlong(on, low.at, at), dimensionAlong(on, at, high.at)],
    };
  });
}

/** The pulled edge of a lone part at a half, a third or a quarter of its space. */
function pulledShares(on: SnapAxis): SnapCandidate[] {
  const { low, high } = walls(on);
  const [own] = ownEdges(on);
  if (!low || !high || !own || on.ids.length > 1) return [];
  return [1 / 2, ...SHARES].map((share) => {
    const at = low.at + (high.at - low.at) * share;
    return {
      kind: 'division' as const,
      axis: on.axis,
      delta: at - own.at,
      rule: {
        kind: 'set' as const,
        axis: on.axis,
        edge: own.edge,
        from: low.edge,
        distance: at - low.at,
      },
      guides: [guideAt(on, at, on.across)],
      dimensions: [dimensionAlong(on, low.at, at), dimensionAlong(on, at, high.at)],
    };
  });
}

/** A row of neighbors in the face's whole stretch, the moving part among them, at equal gaps. */
function row(on: SnapAxis): SnapCandidate[] {
  const id = on.ids.length === 1 ? on.ids[0] : undefined;
  const face = on.targets.filter((t) => t.edge.of === 'face');
  const low = face.find((t) => t.edge.side === 'low');
  const high = face.find((t) => t.edge.side === 'high');
  if (id === undefined || !low || !high || on.beside.length === 0) return [];
  const own: Neighbor = { id, member: false, span: on.span, across: on.across };
  const all = [...on.beside.filter((one) => !one.member), own].sort(
    (a, b) => middle(a.span) - middle(b.span) || (a.id < b.id ? -1 : 1),
  );
  const left = high.at - low.at - all.reduce((sum, one) => sum + one.span.high - one.span.low, 0);
  const gap = left / (all.length + 1);
  if (gap < SAME_LENGTH) return [];
  let at = low.at;
  let delta = 0;
  for (const one of all) {
    const place = at + gap;
    if (one === own) delta = place - one.span.low;
    // The others must nearly stand there already: snapping does not push a row about.
    else if (Math.abs(place - one.span.low) > on.input.tolerance) return [];
    at = place + one.span.high - one.span.low;
  }
  const placed = shifted(on, delta);
  return [
    {
      kind: 'division',
      axis: on.axis,
      delta,
      rule: {
        kind: 'even',
        axis: on.axis,
        parts: all.map((one) => one.id),
        low: low.edge,
        high: high.edge,
        mode: 'gaps',
      },
      guides: [],
      dimensions: [
        dimensionAlong(on, placed.low - gap, placed.low),
        dimensionAlong(on, placed.high, placed.high + gap),
      ],
    },
  ];
}

/** Even division of the space. */
export const divisionSnaps = (on: SnapAxis): SnapCandidate[] =>
  on.grip === 'move' ? [...row(on), ...shares(on)] : pulledShares(on);
