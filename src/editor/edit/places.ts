import { isBoards } from '../../design/made.ts';
import type { Fill, Part, PartArray } from '../../design/schema.ts';
import { holds } from '../../geometry/box.ts';
import { boxOf, containsPointInRegion } from '../../geometry/region.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { piecesOfFill } from '../../layout/fill/fill.ts';
import { gridOf, memberName, type Slot } from '../../layout/place/array.ts';
import { memberId } from '../../layout/reference.ts';
import type { Stock } from '../../materials/types.ts';

/** A part that is laid as many, each of which can be left out or painted otherwise. */
export type Many = PartArray | Fill;

export const isMany = (part: Part | undefined): part is Many =>
  part?.kind === 'array' || part?.kind === 'fill';

/** One of many in its place, left out or not. */
export interface MemberPlace extends Pick<Slot, 'id' | 'name' | 'column' | 'row' | 'box'> {
  /** With what it has of its own. */
  readonly finish: string | null;
  holds(p: Point): boolean;
}

export interface Places {
  readonly columns: number;
  readonly rows: number;
  /** From the lower left; those of an array row by row. */
  readonly slots: readonly MemberPlace[];
}

/** All the places of a part that is laid as many, in its box. */
export function placesOf(part: Many, box: Box, stocks: ReadonlyMap<string, Stock>): Places {
  if (isBoards(part)) return placesOfFill(part, box, stocks);
  const { slots, ...grid } = gridOf(part, box, stocks);
  return {
    ...grid,
    slots: slots.map((slot) => ({
      ...slot,
      finish: slot.member.finish,
      holds: (p) => holds(slot.box, p),
    })),
  };
}

function placesOfFill(fill: Fill, box: Box, stocks: ReadonlyMap<string, Stock>): Places {
  const all = piecesOfFill(fill, box, stocks);
  // A board that others are painted on is none of them.
  const painted = all.filter(({ on }) => on !== undefined);
  const pieces = painted.length > 0 ? painted : all;
  const columns = 1 + Math.max(0, ...pieces.map(({ column }) => column));
  const rows = 1 + Math.max(0, ...pieces.map(({ row }) => row));
  const slotOf = (column: number, row: number, region: Region, own: Box): MemberPlace => {
    const finish = fill.overrides[`${column},${row}`]?.finish;
    return {
      id: memberId(fill.id, column, row),
      name: memberName(fill.name, column, row, columns, rows),
      ...{ column, row, box: own },
      finish: finish === undefined ? fill.finish : finish,
      holds: (p) => containsPointInRegion(region, p),
    };
  };
  const slots = pieces.flatMap(({ column, row, region }) => {
    const own = boxOf(region);
    return own ? [slotOf(column, row, region, own)] : [];
  });
  return { columns, rows, slots };
}
