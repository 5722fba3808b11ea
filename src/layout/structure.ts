import { isBought } from '../design/made.ts';
import { goesAround } from '../design/path.ts';
import type { Axis, Fitting, Member, Part, PartArray, Strip } from '../design/schema.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { radians } from '../measure/units.ts';

/** Sizes that a part is given from outside, such as a sign sized by its text. */
export type Sizes = ReadonlyMap<string, { readonly w?: Mm | undefined; readonly h?: Mm | undefined }>;

/** What a part's own make fixes along one axis. */
export interface Structure {
  /** Size of its box; null: free. */
  readonly fixed: Mm | null;
  /** From the box in to the inside edge (closed run with its stock inside the path). */
  readonly inset: Mm;
  /** From the box out to the outside edge (closed run with its stock outside the path). */
  readonly outset: Mm;
}

const FREE: Structure = { fixed: null, inset: 0, outset: 0 };

/** Width seen from the front and height out of the face of strip stock; null for sheets and unknown stock. */
export function section(
  stock: Stock | undefined,
  onEdge: boolean,
): { readonly width: Mm; readonly thickness: Mm } | null {
  if (stock === undefined || stock.form === 'sheet') return null;
  return onEdge
    ? { width: stock.thickness, thickness: stock.width }
    : { width: stock.width, thickness: stock.thickness };
}

type StripLike = Pick<Strip, 'lie' | 'angle' | 'length' | 'onEdge' | 'stock'>;

/** Size of a strip's box that its stock and lie decide along an axis; null: free. */
function stripSize(strip: StripLike, axis: Axis, stocks: ReadonlyMap<string, Stock>): Mm | null {
  const width = section(stocks.get(strip.stock), strip.onEdge)?.width;
  if (width === undefined) return null;
  switch (strip.lie) {
    case 'across':
      return axis === 'y' ? width : null;
    case 'up':
      return axis === 'x' ? width : null;
    case 'rising':
    case 'falling':
      return null;
    case 'turned': {
      const cos = Math.abs(Math.cos(radians(strip.angle)));
      const sin = Math.abs(Math.sin(radians(strip.angle)));
      return axis === 'x' ? strip.length * cos + width * sin : strip.length * sin + width * cos;
    }
  }
}

/** Size of hardware as it is sold; null where it has any. */
const soldSize = ({ sold }: Pick<Fitting, 'sold'>, axis: Axis): Mm | null =>
  sold ? (axis === 'x' ? sold.w : sold.h) : null;

/** Whether what a part is made of and its lie decide its size along an axis, so that nobody gives it one there. */
export const isFixedAlong = (part: Part | Member, axis: Axis): boolean =>
  isBought(part)
    ? soldSize(part, axis) !== null
    : part.kind === 'strip' && (part.lie === 'turned' || part.lie === (axis === 'x' ? 'up' : 'across'));

const spacingAlong = (array: PartArray, axis: Axis) => (axis === 'x' ? array.across : array.up);

/** Size of one member of an array along an axis; null: it takes the whole box. */
export function memberSize(
  array: PartArray,
  member: Member,
  axis: Axis,
  stocks: ReadonlyMap<string, Stock>,
): Mm | null {
  const own =
    member.kind === 'strip'
      ? stripSize(member, axis, stocks)
      : isBought(member)
        ? soldSize(member, axis)
        : null;
  if (own !== null) return own;
  if (spacingAlong(array, axis) === null) return null;
  return axis === 'x' ? array.memberSize.w : array.memberSize.h;
}

export function structureOf(
  part: Part,
  axis: Axis,
  stocks: ReadonlyMap<string, Stock>,
  sizes: Sizes | undefined,
): Structure {
  const imposed = sizes?.get(part.id)?.[axis === 'x' ? 'w' : 'h'];
  const fixed = imposed ?? null;
  switch (part.kind) {
    case 'strip':
      return { ...FREE, fixed: stripSize(part, axis, stocks) ?? fixed };
    case 'run': {
      const width = section(stocks.get(part.stock), part.onEdge === true)?.width ?? 0;
      if (!goesAround(part.path) || width === 0) return { ...FREE, fixed };
      return part.side === 'inside' ? { fixed, inset: width, outset: 0 } : { fixed, inset: 0, outset: width };
    }
    case 'fitting':
      return { ...FREE, fixed: soldSize(part, axis) ?? fixed };
    case 'array':
      return {
        ...FREE,
        fixed: spacingAlong(part, axis) === null ? memberSize(part, part.member, axis, stocks) : fixed,
      };
    case 'panel':
    case 'sign':
    case 'painted':
    case 'lettering':
    case 'fill':
      return fixed === null ? FREE : { ...FREE, fixed };
  }
}
