import { cyclic, pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { cross, distance, subtract, unit } from './point.ts';
import type { Point, Ring } from './shape.ts';
import { placeAt, type Side, sideBetween } from './side.ts';
import { DUST, SAME_LENGTH } from './tolerance.ts';

/** How a band meets a border: all of it, only some of its width, or nowhere. */
export type Ahead =
  | { readonly meets: 'whole'; readonly line: readonly Point[] }
  | { readonly meets: 'part' | 'nowhere' };

/**
 * The first border that a band comes to on its way along x, from `from` on, over its whole width of `half` to
 * either side of y = 0: a line from its left edge (y = half) to its right one. Borders do not cross each other,
 * so that the nearest one changes only where one of them has a corner or comes to lie ahead.
 */
export function borderAhead(rings: readonly Ring[], from: Mm, half: Mm): Ahead {
  const sides = rings.flatMap((ring) => sidesOf(ring, from, half));
  if (sides.length === 0) return { meets: 'nowhere' };
  const inside = sides.flatMap((side) => changesAt(side, from)).filter((y) => Math.abs(y) < half - DUST);
  const levels = [half, ...inside.sort((a, b) => b - a), -half];
  const line: Point[] = [];
  let missed = 0;
  for (let i = 1; i < levels.length; i++) {
    const [upper, lower] = [pick(levels, i - 1), pick(levels, i)];
    if (upper - lower <= DUST) continue;
    const side = nearest(sides, (upper + lower) / 2, from);
    if (side) line.push({ x: placeAt(side, upper), y: upper }, { x: placeAt(side, lower), y: lower });
    else missed += upper - lower;
  }
  if (line.length === 0) return { meets: 'nowhere' };
  return missed > SAME_LENGTH ? { meets: 'part' } : { meets: 'whole', line: withoutStraight(line) };
}

function sidesOf(ring: Ring, from: Mm, half: Mm): Side[] {
  return ring.flatMap((p, i): Side[] => {
    const q = cyclic(ring, i + 1);
    const side = sideBetween(p, q);
    const beside = side.low.y >= half || side.high.y <= -half || side.high.y - side.low.y <= DUST;
    return beside || Math.max(p.x, q.x) <= from ? [] : [side];
  });
}

/** Heights at which a side begins or ends to lie ahead. */
function changesAt({ low, high }: Side, from: Mm): Mm[] {
  const [below, above] = [low.x - from, high.x - from];
  const crossing = below * above < 0 ? [low.y + ((high.y - low.y) * below) / (below - above)] : [];
  return [low.y, high.y, ...crossing];
}

/** The nearest side at a height; what the band already lies on is not ahead of it. */
function nearest(sides: readonly Side[], y: Mm, from: Mm): Side | null {
  let best: Side | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const side of sides) {
    if (side.low.y > y || side.high.y < y) continue;
    const x = placeAt(side, y);
    if (x > from + SAME_LENGTH && x < least) {
      best = side;
      least = x;
    }
  }
  return best;
}

/** A line without the points that it passes twice, and those at which it does not turn. */
function withoutStraight(line: readonly Point[]): Point[] {
  const kept: Point[] = [];
  for (const p of line) {
    const last = kept.at(-1);
    if (last && distance(p, last) <= SAME_LENGTH) continue;
    const before = kept.at(-2);
    if (before && last && Math.abs(cross(unit(subtract(p, before)), subtract(last, before))) <= SAME_LENGTH)
      kept.pop();
    kept.push(p);
  }
  return kept;
}
