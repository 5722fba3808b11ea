import type { Axis } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import { DUST } from '../../geometry/tolerance.ts';
import type { Mm } from '../../measure/units.ts';
import { AXES, middle, otherAxis, pointOn, spanOf } from '../span.ts';
import { rounded, rulerStep } from './distance.ts';
import type { Guide, SnapInput } from './snapping.ts';

/** Where a single point snaps to along one axis, with the line that shows it; a round place has none. */
export interface PointSnap {
  readonly delta: Mm;
  readonly guide: Guide | null;
}

/** The nearest edge or middle of anything for a single point, such as a corner; else whole steps of the ruler. */
export function snapPointTo(
  p: Point,
  { others, face, reach, style }: Pick<SnapInput, 'others' | 'face' | 'reach' | 'style'>,
): Readonly<Record<Axis, PointSnap>> {
  const boxes = [
    face.box,
    ...face.levels.flatMap(({ box, inner }) => (inner ? [box, inner] : [box])),
    ...others.flatMap(({ box, inner }) => (inner ? [box, inner] : [box])),
  ];
  const step = rulerStep(style, reach);
  const along = (axis: Axis): PointSnap => {
    const at = p[axis];
    const cross = p[otherAxis(axis)];
    let best: PointSnap | null = null;
    for (const box of boxes) {
      const span = spanOf(box, axis);
      const across = spanOf(box, otherAxis(axis));
      for (const to of [span.low, span.high, middle(span)]) {
        const delta = to - at;
        if (Math.abs(delta) > (best ? Math.abs(best.delta) - DUST : reach)) continue;
        const guide = {
          from: pointOn(axis, to, Math.min(across.low, cross)),
          to: pointOn(axis, to, Math.max(across.high, cross)),
        };
        best = { delta, guide };
      }
    }
    return best ?? { delta: rounded(at, step) - at, guide: null };
  };
  const [x, y] = AXES.map(along);
  return { x: x ?? { delta: 0, guide: null }, y: y ?? { delta: 0, guide: null } };
}
