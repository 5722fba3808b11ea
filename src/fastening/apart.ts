import { grownBox, holds } from '../geometry/box.ts';
import { distance } from '../geometry/point.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { addTo, type Groups, groupOf } from '../list/grouped.ts';
import type { Mm } from '../measure/units.ts';
import type { Around, Asked } from './asked.ts';

/** How near to each other, to an edge and to an end fasteners may stand, in shank diameters. */
interface Clearances {
  readonly apart: number;
  readonly edge: number;
  readonly end: number;
}

/**
 * EN 1995-1-1, table 8.2, angle 0 (LVL Handbook Europe 2025, table 5.1): brads are shot into softwood undrilled,
 * screws into drilled holes. The distance is the one along the grain in every direction, more than enough across
 * it (5 and 3 diameters): the woods that a fastener goes through have their grain each its own way, and sheets
 * have none. A structural rule, which trim can well keep.
 */
const IN_DIAMETERS = {
  brad: { apart: 10, edge: 5, end: 10 },
  screw: { apart: 5, edge: 3, end: 7 },
} as const satisfies Readonly<Record<'brad' | 'screw', Clearances>>;

/** At an edge of what lies beneath, where there is no room for more: the same table for drilled holes. */
export const DRILLED_EDGE = 3;

/** The least distances for a brad or screw of this diameter. */
export function leastFor(
  fastener: keyof typeof IN_DIAMETERS,
  diameter: Mm,
): Readonly<Record<keyof Clearances, Mm>> {
  const { apart, edge, end } = IN_DIAMETERS[fastener];
  return { apart: apart * diameter, edge: edge * diameter, end: end * diameter };
}

/** What a fastener takes up: where, and from which height down to which. */
export interface Shank {
  readonly at: Point;
  readonly top: Mm;
  readonly tip: Mm;
  /** No other in the same wood comes nearer than this. */
  readonly apart: Mm;
}

/** Side of the squares in which shanks are looked up. */
const CELL: Mm = 50;

/** Everything driven in so far, whatever part it holds. `asked` is told where it is looked for. */
export class Shanks {
  readonly #asked: Asked;
  readonly #cells: Groups<string, Shank> = new Map();
  /** The farthest that any of them keeps others away. */
  #farthest: Mm = 0;

  constructor(asked: Asked) {
    this.#asked = asked;
  }

  add(shank: Shank): void {
    const key = `${Math.floor(shank.at.x / CELL)} ${Math.floor(shank.at.y / CELL)}`;
    addTo(this.#cells, key, shank);
    this.#farthest = Math.max(this.#farthest, shank.apart);
  }

  /** Those that stand nearer to a point than they, or what would go there, may. */
  near(p: Point, apart: Mm): Shank[] {
    this.#asked.at(p, apart);
    return this.#inCells({ ...p, w: 0, h: 0 }, apart).filter(
      (shank) => distance(shank.at, p) < Math.max(apart, shank.apart) - SAME_LENGTH,
    );
  }

  /** All that `near` may have told of where it was asked. */
  within({ box, apart }: Around): Shank[] {
    return this.#inCells(box, apart).filter((shank) =>
      holds(grownBox(box, Math.max(apart, shank.apart)), shank.at),
    );
  }

  /** Those of the squares that a box with the room around it lies on. */
  #inCells(box: Box, apart: Mm): Shank[] {
    const { x, y, w, h } = grownBox(box, Math.max(apart, this.#farthest));
    const found: Shank[] = [];
    for (let i = Math.floor(x / CELL); i <= Math.floor((x + w) / CELL); i++) {
      for (let j = Math.floor(y / CELL); j <= Math.floor((y + h) / CELL); j++)
        found.push(...groupOf(this.#cells, `${i} ${j}`));
    }
    return found;
  }
}
