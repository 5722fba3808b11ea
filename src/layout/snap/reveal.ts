import type { Edge } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { otherAxis, sizeOf, spanOf, startOf } from '../span.ts';
import { dimensionAlong } from './drawing.ts';
import { ownEdges } from './edge.ts';
import type { SnapAxis, SnapCandidate } from './snapping.ts';

interface Container {
  readonly of: string;
  readonly inner: boolean;
  readonly box: Box;
}

/** Whatever the moving part lies within: face, levels and their openings, parts and the insides of frames. */
function containers(on: SnapAxis): Container[] {
  const { face, others } = on.input;
  const found: Container[] = [];
  const offer = (of: string, inner: boolean, box: Box): void => {
    const low = startOf(box, on.axis);
    if (low >= on.span.low || low + sizeOf(box, on.axis) <= on.span.high) return;
    const across = spanOf(box, otherAxis(on.axis));
    if (across.low < on.across.low && across.high > on.across.high) found.push({ of, inner, box });
  };
  offer('face', false, face.box);
  for (const level of face.levels) {
    offer(`level:${level.id}`, false, level.box);
    if (level.inner) offer(`level:${level.id}`, true, level.inner);
  }
  for (const other of others) {
    offer(other.id, false, other.box);
    if (other.inner) offer(other.id, true, other.inner);
  }
  return found;
}

/** A margin that one of the other sides already has; when it makes all four equal, a reveal. */
export function revealSnaps(on: SnapAxis): SnapCandidate[] {
  const id = on.ids.length === 1 ? on.ids[0] : undefined;
  if (id === undefined) return [];
  const found: SnapCandidate[] = [];
  for (const container of containers(on)) {
    const span = spanOf(container.box, on.axis);
    const across = spanOf(container.box, otherAxis(on.axis));
    const margins = {
      low: on.span.low - span.low,
      high: span.high - on.span.high,
      acrossLow: on.across.low - across.low,
      acrossHigh: across.high - on.across.high,
    };
    for (const { edge } of ownEdges(on)) {
      const own = edge.side === 'low' ? margins.low : margins.high;
      const opposite = edge.side === 'low' ? margins.high : margins.low;
      const wanted =
        on.grip === 'move'
          ? [margins.acrossLow, margins.acrossHigh]
          : [opposite, margins.acrossLow, margins.acrossHigh];
      for (const margin of distinct(wanted)) {
        const delta = edge.side === 'low' ? margin - own : own - margin;
        const after = on.grip === 'move' ? opposite + own - margin : opposite;
        const around = [after, margins.acrossLow, margins.acrossHigh].every(
          (m) => Math.abs(m - margin) <= SAME_LENGTH,
        );
        found.push(candidate(on, id, edge, container, margin, delta, around));
      }
    }
  }
  return found;
}

const distinct = (values: readonly Mm[]): Mm[] =>
  values.filter((v, i) => values.findIndex((w) => Math.abs(v - w) <= SAME_LENGTH) === i);

function candidate(
  on: SnapAxis,
  id: string,
  edge: Edge,
  container: Container,
  margin: Mm,
  delta: Mm,
  around: boolean,
): SnapCandidate {
  const span = spanOf(container.box, on.axis);
  const from: Edge = container.inner
    ? { of: container.of, side: edge.side, inner: true }
    : { of: container.of, side: edge.side };
  const wall = edge.side === 'low' ? span.low : span.high;
  const distance = edge.side === 'low' ? margin : -margin;
  return {
    kind: 'reveal',
    axis: on.axis,
    delta,
    rule: around
      ? { kind: 'reveal', part: id, inside: container.of, inner: container.inner, margin }
      : { kind: 'set', axis: on.axis, edge, from, distance },
    guides: [],
    dimensions: [dimensionAlong(on, wall, wall + distance)],
  };
}
