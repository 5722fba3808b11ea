import type { Point } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { type EndKind, plainEnd } from './kind.ts';

/**
 * An end sawn to the section of the molding it runs against. Its long point reaches over that molding to
 * where the section has risen to this piece's own thickness; flat stock has nothing to reach over.
 */
export const cope: EndKind = {
  settle: (at) => plainEnd('cope', at),
  reach: ({ through, ownThickness }) => {
    if (through?.form !== 'shaped') return 0;
    const mirrored = through.section.map((p) => ({ x: through.width - p.x, y: p.y }));
    // Either edge of the molding may face the joint: enough wood for both.
    return Math.max(riseWithin(through.section, ownThickness), riseWithin(mirrored, ownThickness));
  },
};

/** Distance from the section's low edge at which it first stands `height` high, or highest when never. */
function riseWithin(section: readonly Point[], height: Mm): Mm {
  const top = section.reduce((most, p) => Math.max(most, p.y), 0);
  const level = Math.min(height, top);
  let first = Number.POSITIVE_INFINITY;
  section.forEach((p, i) => {
    const q = section[(i + 1) % section.length];
    if (p.y >= level) first = Math.min(first, p.x);
    if (q && p.y < level !== q.y < level) {
      first = Math.min(first, p.x + ((q.x - p.x) * (level - p.y)) / (q.y - p.y));
    }
  });
  return Number.isFinite(first) ? Math.max(0, first) : 0;
}
