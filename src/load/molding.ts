import { dot, leftNormal, subtract } from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import type { MoldedLength } from '../joinery/piece.ts';
import { pick } from '../list/at.ts';
import type { ShapedStock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';

/** A volume, cubic millimeters, and its center of gravity; `z` from the molding's back. */
export interface Volume {
  readonly volume: number;
  readonly x: Mm;
  readonly y: Mm;
  readonly z: Mm;
}

/** Points of the two-point Gauss rule on -1 to 1, which is exact for cubics. */
const GAUSS = [-1 / Math.sqrt(3), 1 / Math.sqrt(3)];

/**
 * The volume of a molding after its ends are cut, and where its center of gravity lies: at each distance
 * across it, the height of its section times the length that the cuts leave there. A ring of mitered lengths
 * so weighs its section times the way of the section's centroid (the theorem of Pappus and Guldin).
 *
 * Between two corners of outline or section both are straight, so every integrand is at most cubic and
 * the sum is exact.
 */
export function volumeOfMolding(lengths: readonly MoldedLength[], stock: ShapedStock): Volume | null {
  const sum = { volume: 0, x: 0, y: 0, z: 0 };
  for (const length of lengths) {
    const section = length.onEdge
      ? stock.section.map(({ x, y }) => ({ x: stock.thickness - y, y: x }))
      : stock.section;
    const across = leftNormal(length.along);
    for (const { outer } of length.region) {
      const outline = outer.map((p) => {
        const from = subtract(p, length.start);
        return { x: dot(from, across) + length.right, y: dot(from, length.along) };
      });
      eachShare(outline, section, (share) => {
        const off = share.across - length.right;
        sum.volume += share.volume;
        sum.x += share.volume * (length.start.x + length.along.x * share.along + across.x * off);
        sum.y += share.volume * (length.start.y + length.along.y * share.along + across.y * off);
        sum.z += share.volume * share.height;
      });
    }
  }
  const { volume } = sum;
  return volume > 0 ? { volume, x: sum.x / volume, y: sum.y / volume, z: sum.z / volume } : null;
}

interface Share {
  readonly volume: number;
  readonly across: Mm;
  readonly along: Mm;
  readonly height: Mm;
}

/** Calls `visit` for the prisms of every Gauss point: both rings have x across the molding. */
function eachShare(outline: Ring, section: Ring, visit: (share: Share) => void): void {
  const box = boxOfPoints(section);
  const xs = [...outline, ...section].map(({ x }) => Math.min(box.x + box.w, Math.max(box.x, x)));
  const stops = [...new Set(xs)].sort((a, b) => a - b);
  stops.slice(1).forEach((to, i) => {
    const from = pick(stops, i);
    for (const point of GAUSS) {
      const across = (from + to) / 2 + (point * (to - from)) / 2;
      const weight = (to - from) / 2;
      for (const [low, high] of stretchesAt(outline, across)) {
        for (const [bottom, top] of stretchesAt(section, across)) {
          visit({
            volume: weight * (high - low) * (top - bottom),
            across,
            along: (low + high) / 2,
            height: (bottom + top) / 2,
          });
        }
      }
    }
  });
}

/** The stretches of an upright line that lie within a ring, from low to high. */
function stretchesAt(ring: readonly Point[], x: Mm): (readonly [Mm, Mm])[] {
  const hits = ring
    .flatMap((p, i) => {
      const q = ring[(i + 1) % ring.length];
      if (!q || p.x < x === q.x < x) return [];
      return [p.y + ((q.y - p.y) * (x - p.x)) / (q.x - p.x)];
    })
    .sort((a, b) => a - b);
  return hits.flatMap((low, i) =>
    i % 2 === 0 && i + 1 < hits.length ? [[low, pick(hits, i + 1)] as const] : [],
  );
}
