import { expect, it } from 'vitest';
import { NO_SUPPLIES, USUAL_SPARE } from '../../src/design/defaults.ts';
import { shoppingRows } from '../../src/output/csv/shopping.ts';
import { shoppingList } from '../../src/plan/shopping.ts';
import type { ShoppingKind, ShoppingLine } from '../../src/plan/types.ts';
import { chanceOf } from '../chance.ts';
import { planOf } from './starters.ts';

const whole = planOf('bread-shop');
const spared = (spare: Partial<typeof USUAL_SPARE>): ShoppingLine[] => {
  const supplies = { ...NO_SUPPLIES, ...whole.design.supplies, spare: { ...USUAL_SPARE, ...spare } };
  return shoppingList({ ...whole, design: { ...whole.design, supplies } });
};
const isSpare = ({ name }: ShoppingLine): boolean => name.endsWith(', spare');
const counted = (lines: readonly ShoppingLine[], kind: ShoppingKind, item?: string): number =>
  lines
    .filter((l) => l.kind === kind && !l.owned && (item === undefined || l.item === item))
    .reduce((sum, l) => sum + l.count, 0);

it('is nothing but a tenth of brads and screws where nothing is said', () => {
  expect(spared({})).toEqual(whole.shopping);
});

it('is the share asked for of each stock, rounded up, in its largest size, and nothing else changes (by hand)', () => {
  const chance = chanceOf(5);
  for (const share of [0.05, 0.1, 0.25, 1, chance(), chance()]) {
    const lines = spared({ boards: share, sheets: share });
    expect(lines.filter((l) => !isSpare(l))).toEqual(whole.shopping);
    for (const kind of ['board', 'sheet'] as const)
      for (const item of new Set(
        whole.shopping.filter((l) => l.kind === kind && !l.owned).map((l) => l.item),
      )) {
        const need = counted(whole.shopping, kind, item);
        const more = lines.filter((l) => isSpare(l) && l.kind === kind && l.item === item);
        // By whole thousandths, so that a tenth of thirty is three.
        expect(counted(more, kind)).toBe(Math.ceil(Math.round(need * share * 1e6) / 1e6));
        const longest = Math.max(
          ...whole.shopping.filter((l) => l.item === item).map((l) => l.size.length_mm ?? 0),
        );
        expect(more.every((l) => l.size.length_mm === longest && l.price === l.count * l.each)).toBe(true);
      }
  }
});

it('is one of each kind of board, sheet, can and box, priced in a line of its own beside those of its kind', () => {
  const lines = spared({ one: true });
  const kinds = new Set(whole.shopping.filter((l) => !l.owned).map(({ kind, item }) => `${kind} ${item}`));
  const more = lines.filter(isSpare);
  expect(more.every((l) => l.count === 1)).toBe(true);
  const told = [...kinds].filter((kind) => /^(board|sheet|paint|primer|brads|screws) /.test(kind));
  expect(more.map(({ kind, item }) => `${kind} ${item}`).sort()).toEqual(told.sort());
  // Kinds stand together: a kind that has ended does not begin again.
  const order = lines.map((l) => l.kind).filter((kind, i, all) => kind !== all[i - 1]);
  expect(new Set(order).size).toBe(order.length);
  const total = lines.reduce((sum, l) => sum + l.price, 0);
  const rows = shoppingRows({ ...whole, shopping: lines, total });
  expect(rows.filter((row) => String(row[1]).endsWith(', spare'))).toHaveLength(more.length);
});

it('of brads and screws is in their boxes (by hand: a thousand of each, and the share)', () => {
  const use = whole.fastening.use.map((one) => ({ ...one, count: 1000 }));
  const { tables } = whole;
  const design = { ...whole.design, fastening: { ...whole.design.fastening, lengths: [] } };
  for (const fasteners of [0, 0.1, 0.5]) {
    const supplies = { ...NO_SUPPLIES, spare: { ...USUAL_SPARE, fasteners } };
    const lines = shoppingList({
      ...whole,
      design: { ...design, supplies },
      fastening: { ...whole.fastening, use },
    });
    for (const { fastener, length } of use) {
      const box = [...tables.brads, ...tables.screws].find(({ id }) => id === fastener)?.count ?? 0;
      const line = lines.find((l) => l.item === fastener && l.size.length_mm === length);
      expect(line?.count).toBe(Math.ceil(Math.round(1000 * (1 + fasteners)) / box));
    }
  }
});
