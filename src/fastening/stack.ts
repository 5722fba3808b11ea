import type { Bed } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import { solidBehind } from '../bed/solidBehind.ts';
import { isBought, isPaint } from '../design/made.ts';
import { intersect } from '../geometry/clip.ts';
import { boxesMeet, boxOf, containsPointInRegion } from '../geometry/region.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import type { Mm } from '../measure/units.ts';
import type { Asked } from './asked.ts';

/** Everything that something could be driven into: solids with their bounds, and the bed behind them. */
export interface Stack {
  readonly bed: Bed;
  readonly face: Face;
  readonly solids: readonly { readonly solid: Solid; readonly box: Box }[];
  /** Told where it is looked for. */
  readonly asked: Asked;
}

/** Paint has no depth, and nobody drives a brad into a lamp. */
const holds = (solid: Solid): boolean =>
  !isPaint(solid) && !isBought(solid) && solid.z1 - solid.z0 > SAME_LENGTH;

export function stackOf(bed: Bed, face: Face, solids: readonly Solid[], asked: Asked): Stack {
  return {
    bed,
    face,
    asked,
    solids: solids.flatMap((solid) => {
      const box = boxOf(solid.region);
      return box && holds(solid) ? [{ solid, box }] : [];
    }),
  };
}

/** The solids that lie about a box. */
export const solidsIn = ({ solids }: Stack, box: Box): Solid[] =>
  solids.flatMap((one) => (boxesMeet(one.box, box) ? [one.solid] : []));

const level = (a: Mm, b: Mm): boolean => Math.abs(a - b) <= SAME_LENGTH;

/** Where something that covers `region` with its back at `z` touches wood: its contact with each support. */
export function contactsUnder(stack: Stack, region: Region, z: Mm): Region[] {
  const box = boxOf(region);
  if (!box) return [];
  stack.asked.within(box);
  const under = stack.solids
    .filter((s) => level(s.solid.z1, z) && boxesMeet(s.box, box))
    .map((s) => s.solid.region);
  const levels = stack.face.levels.filter((l) => level(l.z, z)).map((l) => l.region);
  return [...under, ...levels].map((support) => intersect(region, support)).filter((c) => c.length > 0);
}

/**
 * Unbroken wood from `z` down at a point: every solid that touches the one above it, then the bed. Zero
 * where there is air. Where two solids lie in the same place, the one that leads to less wood counts.
 */
function woodAt(stack: Stack, point: Point, z: Mm): Mm {
  stack.asked.at(point, 0);
  const found: Mm[] = [];
  for (const { solid, box } of stack.solids) {
    if (!level(solid.z1, z)) continue;
    if (point.x < box.x || point.x > box.x + box.w || point.y < box.y || point.y > box.y + box.h) continue;
    if (!containsPointInRegion(solid.region, point)) continue;
    found.push(solid.z1 - solid.z0 + woodAt(stack, point, solid.z0));
  }
  if (found.length > 0) return Math.min(...found);
  const under = stack.face.levels.some((l) => level(l.z, z) && containsPointInRegion(l.region, point));
  return under ? solidBehind(stack.face, stack.bed, point) : 0;
}

/** Least wood from `z` down over the whole thickness of something driven in at `point`. */
export function woodUnder(stack: Stack, point: Point, z: Mm, radius: Mm): Mm {
  const { x, y } = point;
  const spots = [
    point,
    { x: x - radius, y },
    { x: x + radius, y },
    { x, y: y - radius },
    { x, y: y + radius },
  ];
  return Math.min(...spots.map((spot) => woodAt(stack, spot, z)));
}
