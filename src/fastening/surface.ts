import type { Ring } from '../geometry/shape.ts';
import { cyclic } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';

/** Highest point of a section over `x`; 0 beside it. */
function topOver(section: Ring, x: Mm): Mm {
  let top: Mm = 0;
  section.forEach((p, i) => {
    const q = cyclic(section, i + 1);
    if (x < Math.min(p.x, q.x) || x > Math.max(p.x, q.x)) return;
    top = Math.max(top, p.x === q.x ? Math.max(p.y, q.y) : p.y + ((x - p.x) * (q.y - p.y)) / (q.x - p.x));
  });
  return top;
}

/**
 * How high the surface stands over the back where something is driven in, `sideways` from the middle of a
 * stock of full height `height`. A molding is lower than its full height in most places: the lowest of the
 * fastener's two sides and its middle counts, on either side of the stock, since it may lie either way round.
 */
export function surfaceHeight(stock: Stock | undefined, height: Mm, radius: Mm, sideways: Mm): Mm {
  if (stock?.form !== 'shaped') return height;
  const { section, width, thickness } = stock;
  const spots = [sideways, -sideways].flatMap((s) => [s - radius, s, s + radius]);
  const lowest = Math.min(...spots.map((s) => topOver(section, width / 2 + s)));
  return (lowest / thickness) * height;
}
