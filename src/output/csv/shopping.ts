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

/**
 * The shopping list as rows, then its total, and how many lines have no price and are not in it. Their cells are
 * empty: a zero would be summed as if they cost nothing.
 */
export function shoppingRows(plan: Plan): Cell[][] {
  const words = PLAN_WORDS[plan.language];
  const money = (value: number): Amount => ({ value, digits: 2 });
  const rows = plan.shopping.map((line): Cell[] => [
    words.shopping[line.kind],
    line.name,
    sizeText(line, styleIn(plan.language, plan.design.measure), words.pieces),
    line.count,
    line.priced ? money(line.each) : null,
    line.priced ? money(line.price) : null,
    line.owned ? 'yes' : 'no',
  ]);
  const unpriced = plan.shopping.filter((line) => !line.priced).length;
  return [
    HEAD,
    ...rows,
    ['total', '', '', null, null, money(plan.total), ''],
    ...(unpriced > 0 ? [['not in total', '', '', unpriced, null, null, '']] : []),
  ];
}
