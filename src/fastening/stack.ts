import type { Bed } from '../bed/bed.ts';
import type { Face } from '../bed/face.ts';
import { solidBehind } from '../bed/solidBehind.ts';
import { isBought, isPaint } from '../design/made.ts';
import { intersect } from '../geometry/clip.ts';
import { boxesMeet, boxOf, containsPointInRegion } from '../geometry/region.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Solid } from '../joinery/piece.ts';
import { addTo, type Groups, groupOf } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';
import type { Asked } from './asked.ts';

/** A solid with its bounds, and where it stands among all. */
interface Standing {
  readonly solid: Solid;
  readonly box: Box;
  readonly rank: number;
}

/** Width of the columns in which solids are looked up, and how far they reach into the next. */
const COLUMN: Mm = 100;
const OVER: Mm = 1;

/** Everything that something could be driven into: solids by the columns they reach into, and the bed behind them. */
export interface Stack {
  readonly bed: Bed;
  readonly face: Face;
  readonly columns: ReadonlyMap<number, readonly Standing[]>;
  /** Told where it is looked for. */
  readonly asked: Asked;
}

/** Paint has no depth, and nobody drives a brad into a lamp. */
const holds = (solid: Solid): boolean =>
  !isPaint(solid) && !isBought(solid) && solid.z1 - solid.z0 > SAME_LENGTH;

export function stackOf(bed: Bed, face: Face, solids: readonly Solid[], asked: Asked): Stack {
  const columns: Groups<number, Standing> = new Map();
  solids.forEach((solid, rank) => {
    const box = boxOf(solid.region);
    if (!box || !holds(solid)) return;
    for (const column of columnsOf(box)) addTo(columns, column, { solid, box, rank });
  });
  return { bed, face, asked, columns };
}

function columnsOf({ x, w }: Box): number[] {
  const first = Math.floor((x - OVER) / COLUMN);
  const last = Math.floor((x + w + OVER) / COLUMN);
  return Array.from({ length: last - first + 1 }, (_, i) => first + i);
}

/** The solids that lie about a box, in the order of all. */
export function solidsIn({ columns }: Stack, box: Box): Solid[] {
  const found = new Map<number, Solid>();
  for (const column of columnsOf(box)) {
    for (const { solid, box: its, rank } of groupOf(columns, column))
      if (boxesMeet(its, box)) found.set(rank, solid);
  }
  return [...found].sort(([a], [b]) => a - b).map(([, solid]) => solid);
}

const level = (a: Mm, b: Mm): boolean => Math.abs(a - b) <= SAME_LENGTH;

/** Where something that covers `region` with its back at `z` touches wood: its contact with each support. */
export function contactsUnder(stack: Stack, region: Region, z: Mm): Region[] {
  const box = boxOf(region);
  if (!box) return [];
  stack.asked.within(box);
  const under = solidsIn(stack, box)
    .filter((solid) => level(solid.z1, z))
    .map((solid) => solid.region);
  const levels = stack.face.levels.filter((l) => level(l.z, z)).map((l) => l.region);
  return [...under, ...levels].map((support) => intersect(region, support)).filter((c) => c.length > 0);
}

/** What lies on the surface at `z` of something that covers `region`, within its bounds. */
export function solidsOver(stack: Stack, region: Region, z: Mm): Solid[] {
  const box = boxOf(region);
  if (!box) return [];
  stack.asked.within(box);
  return solidsIn(stack, box).filter((solid) => level(solid.z0, z));
}

/**
 * Unbroken wood from `z` down at a point: every solid that touches the one above it, then the bed. Zero
 * where there is air. Where two solids lie in the same place, the one that leads to less wood counts.
 */
function woodAt(stack: Stack, point: Point, z: Mm): Mm {
  stack.asked.at(point, 0);
  const found: Mm[] = [];
  for (const { solid, box } of groupOf(stack.columns, Math.floor(point.x / COLUMN))) {
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
