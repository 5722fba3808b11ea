import type { Design } from '../../design/schema.ts';
import { holds } from '../../geometry/box.ts';
import { containsPointInRegion } from '../../geometry/region.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import type { Mm } from '../../measure/units.ts';
import { groupOf } from '../edit/movable.ts';
import { fromBelow } from './order.ts';

/** What lies under a point, topmost first: keep-clears, then parts; thin parts are picked within a reach. */
export function pickAt(design: Design, layout: Layout, p: Point, reach: Mm): string | null {
  const parts = fromBelow(layout);
  for (let i = parts.length - 1; i >= 0; i--) {
    const part = parts[i];
    if (!part || !holds(part.box, p, reach)) continue;
    const thin = Math.min(part.box.w, part.box.h) < 2 * reach;
    if (thin || containsPointInRegion(part.region, p)) return groupOf(design, part.part) ?? part.part;
  }
  const keep = design.keepClears.findLast((k) => holds(k.box, p));
  return keep?.id ?? null;
}

/** The part itself, whatever group it is in. */
export function partAt(layout: Layout, p: Point): string | null {
  return (
    fromBelow(layout).findLast((part) => holds(part.box, p) && containsPointInRegion(part.region, p))?.part ??
    null
  );
}
