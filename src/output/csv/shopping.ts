import { formatFar, formatLength, formatVolume } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import type { Plan, ShoppingLine } from '../../plan/types.ts';
import { styleIn } from '../../plan/words/languages.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import type { Amount, Cell } from './csv.ts';

const HEAD = ['kind', 'name', 'size', 'count', 'each', 'price', 'owned'];

/** Size of a line in the design's units: length by width, or volume; and how many are in a box. */
export function sizeText(
  { kind, size }: ShoppingLine,
  measure: MeasureStyle,
  piecesOf: (count: number) => string,
): string {
  const { length_mm, width_mm, volume_l, pieces } = size;
  if (kind === 'tape' && length_mm !== undefined) return formatFar(length_mm, measure);
  if (volume_l !== undefined) return formatVolume(volume_l, measure);
  const sides = [length_mm, width_mm]
    .filter((mm): mm is number => mm !== undefined)
    .map((mm) => formatLength(mm, measure));
  return [
    ...(sides.length > 0 ? [sides.join(' x ')] : []),
    ...(pieces === undefined ? [] : [piecesOf(pieces)]),
  ].join(', ');
}

/** The shopping list as rows, with its total in the last one. */
export function shoppingRows(plan: Plan): Cell[][] {
  const words = PLAN_WORDS[plan.language];
  const money = (value: number): Amount => ({ value, digits: 2 });
  const rows = plan.shopping.map((line): Cell[] => [
    words.shopping[line.kind],
    line.name,
    sizeText(line, styleIn(plan.language, plan.design.measure), words.pieces),
    line.count,
    money(line.each),
    money(line.price),
    line.owned ? 'yes' : 'no',
  ]);
  return [HEAD, ...rows, ['total', '', '', null, null, money(plan.total), '']];
}
