import type { Edge } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { middle } from '../span.ts';
import { dimensionAlong, shifted } from './drawing.ts';
import type { Neighbor, SnapAxis, SnapCandidate } from './snapping.ts';

export interface Wall {
  readonly edge: Edge;
  readonly at: Mm;
}

/** The nearest thing on each side of the moving parts: a neighbor, or a line of face or level. */
export function walls(on: SnapAxis): { readonly low: Wall | null; readonly high: Wall | null } {
  const center = middle(on.span);
  let low: Wall | null = null;
  let high: Wall | null = null;
  const offerLow = (wall: Wall) => {
    if (wall.at <= center + SAME_LENGTH && (low === null || wall.at > low.at + SAME_LENGTH)) low = wall;
  };
  const offerHigh = (wall: Wall) => {
    if (wall.at >= center - SAME_LENGTH && (high === null || wall.at < high.at - SAME_LENGTH)) high = wall;
  };
  for (const { id, span } of on.beside) {
    // Something around the moving parts (a panel they lie on) is not beside them.
    if (span.low <= on.span.low && span.high >= on.span.high) continue;
    if (middle(span) < center) offerLow({ edge: { of: id, side: 'high' }, at: span.high });
    else offerHigh({ edge: { of: id, side: 'low' }, at: span.low });
  }
  for (const { edge, at } of on.targets) {
    if (edge.of !== 'face' && !edge.of.startsWith('level:')) continue;
    if (edge.side === 'low') offerLow({ edge, at });
    if (edge.side === 'high') offerHigh({ edge, at });
  }
  return { low, high };
}

/** The same gap to the neighbors on both sides; of one edge in the hand the gap that the other has. */
function betweenNeighbors(on: SnapAxis): SnapCandidate[] {
  const { low, high } = walls(on);
  if (!low || !high || on.ids.length === 0) return [];
  // An edge moves the middle by half of what it moves.
  const delta = ((low.at + high.at) / 2 - middle(on.span)) * (on.grip === 'move' ? 1 : 2);
  const at = shifted(on, delta);
  if (at.low < low.at - SAME_LENGTH || at.low > at.high - SAME_LENGTH) return [];
  return [
    {
      kind: 'gap',
      axis: on.axis,
      delta,
      rule: { kind: 'center', axis: on.axis, parts: [...on.ids], low: low.edge, high: high.edge },
      guides: [],
      dimensions: [dimensionAlong(on, low.at, at.low), dimensionAlong(on, at.high, high.at)],
    },
  ];
}

/** The gap that two neighbors in a row already have, once more: the nearer one is then centered between. */
function onceMore(on: SnapAxis): SnapCandidate[] {
  const found: SnapCandidate[] = [];
  const row = on.beside
    .filter((one) => !one.member)
    .sort((a, b) => a.span.low - b.span.low || (a.id < b.id ? -1 : 1));
  for (let i = 0; i + 1 < row.length; i++) {
    const a = row[i]!;
    const b = row[i + 1]!;
    const gap = b.span.low - a.span.high;
    if (gap < SAME_LENGTH) continue;
    const { tolerance } = on.input;
    const isAfter = on.grip !== 'high' && Math.abs(b.span.high + gap - on.span.low) <= tolerance;
    if (isAfter) found.push(after(on, a, b, gap));
    const isAhead = on.grip !== 'low' && Math.abs(a.span.low - gap - on.span.high) <= tolerance;
    if (isAhead) found.push(ahead(on, a, b, gap));
  }
  return found;
}

function after(on: SnapAxis, a: Neighbor, b: Neighbor, gap: Mm): SnapCandidate {
  return {
    kind: 'gap',
    axis: on.axis,
    delta: b.span.high + gap - on.span.low,
    rule: {
      kind: 'center',
      axis: on.axis,
      parts: [b.id],
      low: { of: a.id, side: 'high' },
      high: { of: on.lowPart, side: 'low' },
    },
    guides: [],
    dimensions: [
      dimensionAlong(on, a.span.high, b.span.low),
      dimensionAlong(on, b.span.high, b.span.high + gap),
    ],
  };
}

function ahead(on: SnapAxis, a: Neighbor, b: Neighbor, gap: Mm): SnapCandidate {
  return {
    kind: 'gap',
    axis: on.axis,
    delta: a.span.low - gap - on.span.high,
    rule: {
      kind: 'center',
      axis: on.axis,
      parts: [a.id],
      low: { of: on.highPart, side: 'high' },
      high: { of: b.id, side: 'low' },
    },
    guides: [],
    dimensions: [
      dimensionAlong(on, a.span.low - gap, a.span.low),
      dimensionAlong(on, a.span.high, b.span.low),
    ],
  };
}

export const gapSnaps = (on: SnapAxis): SnapCandidate[] => [...betweenNeighbors(on), ...onceMore(on)];
