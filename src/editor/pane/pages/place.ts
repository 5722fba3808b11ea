import type { Point } from '../../../geometry/shape.ts';
import type { PatternSet } from '../../../patterns/result.ts';
import type { Plan } from '../../../plan/types.ts';

/** Where a pattern's lower left corner lies on the face; null for what does not lie there. */
export function patternPlace(plan: Plan, set: PatternSet): Point | null {
  const sign = plan.signs.find((s) => s.id === set.for);
  if (sign) {
    // A stencil's sheet may reach past its board.
    const reach = sign.stencils?.sheet ?? sign.lettered.box;
    return { x: sign.at.x + Math.min(0, reach.x), y: sign.at.y + Math.min(0, reach.y) };
  }
  if (set.for === 'face') return { x: 0, y: 0 };
  const part = plan.layout.parts.find((p) => p.id === set.for);
  return part ? { x: part.box.x, y: part.box.y } : null;
}
