import type { Axis, Edge } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { boundsIn, type Shown } from './shown.ts';

/** Box of whatever a rule's edge names. */
export function boxOfReference(of: string, shown: Shown, inner = false): Box | null {
  const { face, layout } = shown;
  if (of === 'face') return face.box;
  if (of.startsWith('level:')) {
    const level = face.levels.find((l) => l.id === of.slice(6));
    return level ? (inner ? (level.inner ?? level.box) : level.box) : null;
  }
  const bounds = boundsIn(shown, of);
  if (bounds) return inner ? (bounds.inner ?? bounds.box) : bounds.box;
  return layout.parts.find((p) => p.id === of)?.box ?? null;
}

/** Where a rule's edge is along an axis; null where it is not there. */
export function placeOfEdge(edge: Edge, axis: Axis, shown: Shown): Mm | null {
  const box = boxOfReference(edge.of, shown, edge.inner);
  return box ? edgeOfBox(box, axis, edge.side) : null;
}

/** Where an edge of a box is along an axis. */
export function edgeOfBox(box: Box, axis: Axis, side: Edge['side']): Mm {
  const [at, size] = axis === 'x' ? [box.x, box.w] : [box.y, box.h];
  return side === 'low' ? at : side === 'high' ? at + size : at + size / 2;
}
