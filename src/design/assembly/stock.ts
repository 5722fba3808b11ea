import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { FlatStock, SheetStock, Stock } from '../../materials/types.ts';
import type { Mm } from '../../measure/units.ts';
import { usualStock } from '../defaults.ts';
import type { Supplies } from './question.ts';

const isFlat = (stock: Stock): stock is FlatStock => stock.form === 'flat';
const isSheet = (stock: Stock): stock is SheetStock => stock.form === 'sheet';

/** The entry whose measure is nearest to what is wanted; of two as near the first. */
function nearest<S>(among: readonly S[], measure: (one: S) => Mm, wanted: Mm): S | undefined {
  const [first, ...rest] = among;
  if (first === undefined) return undefined;
  const off = (one: S) => Math.abs(measure(one) - wanted);
  return rest.reduce((best, one) => (off(one) < off(best) - SAME_LENGTH ? one : best), first);
}

/** What strips are made of when nothing is said: the boards that a new strip is made of. */
const usualBoard = ({ stocks, unit }: Supplies): FlatStock | undefined => {
  const usual = stocks.get(usualStock('strip', unit) ?? 'pine-1x3');
  return usual && isFlat(usual) ? usual : [...stocks.values()].find(isFlat);
};

/**
 * The flat stock nearest to a width, as thick as usual boards and of their wood: frames of doors lie flush. Lumber comes
 * in few widths, so that proportions are met as nearly as boards allow.
 * @param most no wider than this, where one is so narrow
 */
export function boardNear(has: Supplies, width: Mm, most: Mm = Number.POSITIVE_INFINITY): string {
  const usual = usualBoard(has);
  if (!usual) return '';
  const alike = [...has.stocks.values()].filter(
    (stock): stock is FlatStock =>
      isFlat(stock) &&
      stock.material === usual.material &&
      Math.abs(stock.thickness - usual.thickness) <= SAME_LENGTH,
  );
  const narrow = alike.filter((stock) => stock.width <= most);
  const fallback = nearest(alike, (stock) => stock.width, 0);
  return (nearest(narrow, (stock) => stock.width, width) ?? fallback ?? usual).id;
}

/** The flat stock of the usual wood nearest to a width among those of a thickness. */
export function lathNear(has: Supplies, width: Mm, thickness: Mm): string {
  const flats = [...has.stocks.values()].filter(isFlat);
  const thin = nearest(flats, (stock) => stock.thickness, thickness)?.thickness ?? thickness;
  const alike = flats.filter((stock) => Math.abs(stock.thickness - thin) <= SAME_LENGTH);
  return nearest(alike, (stock) => stock.width, width)?.id ?? '';
}

/** The sheet that is as thick as a flat stock, of the material of new panels where there is one; null where there is none. */
export function sheetAsThick(has: Supplies, flat: string): string | null {
  const thick = thicknessOf(has, flat);
  const usual = has.stocks.get(usualStock('panel', has.unit) ?? '');
  const alike = [...has.stocks.values()].filter(
    (stock): stock is SheetStock => isSheet(stock) && Math.abs(stock.thickness - thick) <= SAME_LENGTH,
  );
  return (alike.find(({ material }) => material === usual?.material) ?? alike[0])?.id ?? null;
}

/** The flat stock nearest to a width of those whose arcs can be sawn from sheet as thick. */
export function bandNear(has: Supplies, width: Mm): string {
  const flats = [...has.stocks.values()].filter(isFlat);
  const sawn = flats.filter(({ id }) => sheetAsThick(has, id) !== null);
  return nearest(sawn.length > 0 ? sawn : flats, (stock) => stock.width, width)?.id ?? '';
}

/** The sheet of the material of new panels nearest to a thickness, sold by the measures in use. */
export function sheetNear(has: Supplies, thickness: Mm): string {
  const usual = has.stocks.get(usualStock('panel', has.unit) ?? 'mdf-quarter');
  const alike = [...has.stocks.values()].filter(
    (stock): stock is SheetStock => isSheet(stock) && (!usual || stock.material === usual.material),
  );
  return nearest(alike, (stock) => stock.thickness, thickness)?.id ?? '';
}

/** The first of some shaped stocks that is there; of any, where none is. */
export function moldingOf({ stocks }: Supplies, ...wanted: readonly string[]): string {
  const found = wanted.find((id) => stocks.get(id)?.form === 'shaped');
  return found ?? [...stocks.values()].find((stock) => stock.form === 'shaped')?.id ?? '';
}

export const thicknessOf = ({ stocks }: Supplies, id: string): Mm => stocks.get(id)?.thickness ?? 0;
