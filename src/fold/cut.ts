import type { Bed } from '../bed/bed.ts';
import type { Mm } from '../measure/units.ts';
import type { Body } from './body.ts';
import { type PlaneName, planeClear } from './plane.ts';
import { wallBoardClear } from './wallBoard.ts';

export type Obstacle = PlaneName | 'wall-board';

/** Halvings of a part's size: beyond the digits of any measure. */
const HALVINGS = 60;

function clears(bed: Bed, body: Body, obstacle: Obstacle): boolean {
  if (obstacle === 'wall-board') return wallBoardClear(bed, body).contact === null;
  return planeClear(bed, body, obstacle).value >= 0;
}

/**
 * Least amount, up to `all`, that makes the cut body clear. A smaller body is part of the larger one, so
 * once it clears it stays clear, and halving finds the border. Null when even nothing left would hit.
 */
function leastCut(bed: Bed, obstacle: Obstacle, all: Mm, cut: (by: Mm) => Body): Mm | null {
  if (!clears(bed, cut(all), obstacle)) return null;
  let hits = 0;
  let clear = all;
  for (let i = 0; i < HALVINGS; i++) {
    const middle = (hits + clear) / 2;
    if (clears(bed, cut(middle), obstacle)) clear = middle;
    else hits = middle;
  }
  return clear;
}

const lesser = (a: Mm | null, b: Mm | null): Mm | null => (a === null || (b !== null && b < a) ? b : a);

/** What would have to come off a part that hits: off its outer side, or off one of its ends. */
export function cutToClear(
  bed: Bed,
  body: Body,
  obstacle: Obstacle,
): { readonly thinner: Mm | null; readonly shorter: Mm | null } {
  const { y0, y1, z0, z1 } = body;
  const length = y1 - y0;
  return {
    thinner: leastCut(bed, obstacle, z1 - z0, (by) => ({ ...body, z1: z1 - by })),
    shorter: lesser(
      leastCut(bed, obstacle, length, (by) => ({ ...body, y1: y1 - by })),
      leastCut(bed, obstacle, length, (by) => ({ ...body, y0: y0 + by })),
    ),
  };
}
