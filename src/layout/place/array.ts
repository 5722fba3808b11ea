import type { Axis, Member, PartArray, Spacing, Strip } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import { memberId } from '../reference.ts';
import { countOf, spread } from '../rule/spacing.ts';
import { sizeOf, startOf } from '../span.ts';
import { memberSize } from '../structure.ts';

/** One member in its place. */
export interface Slot {
  readonly id: string;
  readonly name: string;
  readonly column: number;
  readonly row: number;
  readonly member: Member & Pick<Strip, 'read'>;
  readonly box: Box;
}

interface Line {
  readonly starts: readonly Mm[];
  readonly size: Mm;
  readonly gap: Mm;
}

/** Places along one axis; without spacing one place, the whole box. */
function lineOf(
  array: PartArray,
  box: Box,
  axis: Axis,
  spacing: Spacing | null,
  stocks: ReadonlyMap<string, Stock>,
): Line {
  const room = sizeOf(box, axis);
  const size = memberSize(array, array.member, axis, stocks) ?? room;
  if (spacing === null) return { starts: [startOf(box, axis)], size, gap: 0 };
  const found = spread(room, size, spacing);
  return { starts: found.starts.map((start) => startOf(box, axis) + start), size, gap: found.gap };
}

export interface Grid {
  readonly columns: number;
  readonly rows: number;
  /** Every place from the lower left, row by row, those that are left empty too. */
  readonly slots: readonly Slot[];
  /** The direction in which the members do not fit: how many, and the room they have. */
  readonly tight: { readonly count: number; readonly room: Mm } | null;
}

/** All the places of an array in its box. */
export function gridOf(array: PartArray, box: Box, stocks: ReadonlyMap<string, Stock>): Grid {
  const across = lineOf(array, box, 'x', array.across, stocks);
  const up = lineOf(array, box, 'y', array.up, stocks);
  const columns = across.starts.length;
  const rows = up.starts.length;
  const slots = up.starts.flatMap((y, row) =>
    across.starts.map((x, column): Slot => {
      const member = overridden(array.member, array.overrides[`${column},${row}`]);
      // A member of other stock keeps the center line of its place.
      const w = memberSize(array, member, 'x', stocks) ?? across.size;
      const h = memberSize(array, member, 'y', stocks) ?? up.size;
      return {
        id: memberId(array.id, column, row),
        name: memberName(array.name, column, row, columns, rows),
        column,
        row,
        member,
        box: { x: x + (across.size - w) / 2, y: y + (up.size - h) / 2, w, h },
      };
    }),
  );
  const tight = [
    { line: across, room: box.w },
    { line: up, room: box.h },
  ].find(({ line }) => line.gap < -SAME_LENGTH);
  return {
    columns,
    rows,
    slots,
    tight: tight ? { count: tight.line.starts.length, room: tight.room } : null,
  };
}

/** Every member of an array, from the lower left, row by row, without those left out. */
export function expandArray(
  array: PartArray,
  box: Box,
  stocks: ReadonlyMap<string, Stock>,
): Pick<Grid, 'slots' | 'tight'> {
  const { slots, tight } = gridOf(array, box, stocks);
  return { slots: slots.filter(({ column, row }) => !array.overrides[`${column},${row}`]?.omit), tight };
}

/** How many places an array has in its box, counted without laying them. */
export function membersOf(array: PartArray, box: Box, stocks: ReadonlyMap<string, Stock>): number {
  const along = (axis: Axis, spacing: Spacing | null): number => {
    if (spacing === null) return 1;
    const room = sizeOf(box, axis);
    return countOf(room, memberSize(array, array.member, axis, stocks) ?? room, spacing);
  };
  return along('x', array.across) * along('y', array.up);
}

function overridden(member: Member, own: PartArray['overrides'][string] | undefined): Slot['member'] {
  if (!own) return member;
  const finish = own.finish === undefined ? member.finish : own.finish;
  const { read } = own;
  if ('stock' in member)
    return { ...member, finish, stock: own.stock ?? member.stock, ...(read ? { read } : {}) };
  return { ...member, finish };
}

/** What a member of a row, of a column or of a grid is called. */
export function memberName(name: string, column: number, row: number, columns: number, rows: number): string {
  if (columns > 1 && rows > 1) return `${name} ${column + 1}/${row + 1}`;
  return `${name} ${Math.max(column, row) + 1}`;
}
