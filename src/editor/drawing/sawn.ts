import { isBars } from '../../design/made.ts';
import { distance } from '../../geometry/point.ts';
import { ringsOf } from '../../geometry/region.ts';
import type { Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { LaidPart } from '../../layout/laid.ts';
import type { Plan } from '../../plan/types.ts';

/**
 * How parts are drawn: strips and runs to their cuts, where they lie as they did when the plan was made. Those that
 * are carried just now, and those that the saw leaves nothing of, are drawn as they are laid. The same part gives the
 * same object.
 */
export function sawnBy(plan: Pick<Plan, 'layout' | 'joinery'> | null): (part: LaidPart) => LaidPart {
  const laid = new Map(plan?.layout.parts.map((part) => [part.id, part.region]));
  const left = new Map(plan?.joinery.solids.map((solid) => [solid.part, solid.region]));
  const drawn = new WeakMap<LaidPart, LaidPart>();
  return (part) => {
    if (!isBars(part)) return part;
    const known = drawn.get(part);
    if (known) return known;
    const [before, region] = [laid.get(part.id), left.get(part.id)];
    const lies = before !== undefined && sameRegion(before, part.region);
    const now = lies && region && !sameRegion(region, part.region) ? { ...part, region } : part;
    drawn.set(part, now);
    return now;
  };
}

/** Whether two areas have the same corners, in the same order. */
function sameRegion(a: Region, b: Region): boolean {
  const [p, q] = [ringsOf(a).flat(), ringsOf(b).flat()];
  return (
    p.length === q.length &&
    p.every((one, i) => {
      const other = q[i];
      return other !== undefined && distance(one, other) <= SAME_LENGTH;
    })
  );
}
