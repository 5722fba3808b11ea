import { formatLength, formatVolume } from '../../measure/format.ts';
import type { MeasureStyle } from '../../measure/style.ts';
import type { Plan, ShoppingLine } from '../../plan/types.ts';
import { styleIn } from '../../plan/words/languages.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import type { Cell } from './csv.ts';

const HEAD = ['kind', 'name', 'size', 'count', 'each', 'price', 'owned'];

/** Size of a line in the design's units: length by width, or volume. */
export function sizeText({ size }: ShoppingLine, measure: MeasureStyle): string {
  const { length_mm, width_mm, volume_l } = size;
  if (volume_l !== undefined) return formatVolume(volume_l, measure);
  return [length_mm, width_mm]
    .filter((mm): mm is number => mm !== undefined)
    .map((mm) => formatLength(mm, measure))
    .join(' x ');
}

/** The shopping list as rows, with its total in the last one. */
export function shoppingRows(plan: Plan): Cell[][] {
  const money = (value: number): string => value.toFixed(2);
  const rows = plan.shopping.map((line): Cell[] => [
    PLAN_WORDS[plan.language].shopping[line.kind],
    line.name,
    sizeText(line, styleIn(plan.language, plan.design.measure)),
    line.count,
    money(line.each),
    money(line.price),
    line.owned ? 'yes' : 'no',
  ]);
  return [HEAD, ...rows, ['total', '', '', null, null, money(plan.total), '']];
}
