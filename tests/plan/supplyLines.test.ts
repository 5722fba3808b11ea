import { describe, expect, it } from 'vitest';
import { NO_SUPPLIES } from '../../src/design/defaults.ts';
import type { Design, ShedSupplies } from '../../src/design/schema.ts';
import { supplyLines } from '../../src/plan/supplyLines.ts';
import type { ShoppingKind, ShoppingLine } from '../../src/plan/types.ts';
import { planOf, starter } from './starters.ts';

const design = starter('bread-shop');
const whole = planOf('bread-shop');
const primerNeed = whole.finish.uses.reduce((sum, use) => sum + use.primer, 0);
const tapeNeed = whole.finish.uses.reduce((sum, use) => sum + use.tape, 0);

/** Lines of one kind, with what the design says of the shed changed. */
function lines(
  kind: ShoppingKind,
  supplies: Partial<ShedSupplies> | null,
  more: Partial<Design> = {},
): ShoppingLine[] {
  const given = { ...design, ...more, ...(supplies ? { supplies: { ...NO_SUPPLIES, ...supplies } } : {}) };
  const { tables, finish, fastening, patterns } = whole;
  return supplyLines({ design: given, had: [], language: 'en', tables, finish, fastening, patterns }).filter(
    (l) => l.kind === kind,
  );
}
const owned = (fields: Partial<ShedSupplies['owned']>) => ({ owned: { ...NO_SUPPLIES.owned, ...fields } });
const volume = (of: readonly ShoppingLine[]) =>
  of.reduce((sum, l) => sum + l.count * (l.size.volume_l ?? 0), 0);

describe('supplies of a face', () => {
  it('needs some of everything here, so that what follows is no empty test', () => {
    expect(primerNeed).toBeGreaterThan(0);
    expect(tapeNeed).toBeGreaterThan(0);
    expect(whole.fastening.glue).toBeGreaterThan(0);
    expect(whole.fastening.use.some((u) => u.how === 'screws' && u.count > 1)).toBe(true);
  });

  it.each(['primer', 'glue'] as const)('takes %s in the shed off what is bought', (kind) => {
    const field = kind === 'primer' ? 'primer_l' : 'glue_l';
    const need = kind === 'primer' ? primerNeed : whole.fastening.glue;
    const none = lines(kind, null);
    expect(none.every((l) => !l.owned)).toBe(true);
    expect(volume(none)).toBeGreaterThanOrEqual(need - 1e-9);
    const half = lines(kind, owned({ [field]: need / 2 }));
    expect(half[0]?.owned).toBe(true);
    expect(half[0]?.size.volume_l).toBeCloseTo(need / 2, 12);
    expect(volume(half)).toBeGreaterThanOrEqual(need - 1e-9);
    expect(volume(half.slice(1))).toBeLessThanOrEqual(volume(none));
    const all = lines(kind, owned({ [field]: need + 1 }));
    expect(all.map((l) => [l.owned, l.price])).toEqual([[true, 0]]);
    expect(all[0]?.size.volume_l).toBeCloseTo(need, 12);
  });

  it('takes tape in the shed off what is bought', () => {
    const [roll] = lines('tape', null);
    expect((roll?.count ?? 0) * (roll?.size.length_mm ?? 0)).toBeGreaterThanOrEqual(tapeNeed);
    expect(lines('tape', owned({ tape: tapeNeed })).map((l) => l.owned)).toEqual([true]);
    expect(lines('tape', owned({ tape: tapeNeed / 3 })).map((l) => l.owned)).toEqual([true, false]);
  });

  it('takes screws of the same kind and length off, and no others', () => {
    const use = whole.fastening.use.find((u) => u.how === 'screws');
    if (!use) throw new Error('no screws here');
    const need = Math.ceil(use.count * 1.1);
    const shed = (count: number, length = use.length) =>
      owned({ screws: [{ screw: use.fastener, length, count }] });
    const some = lines('screws', shed(need - 1));
    expect(some.map((l) => [l.owned, l.count, l.size.pieces])).toEqual([
      [true, 1, need - 1],
      [false, 1, 100],
    ]);
    expect(lines('screws', shed(need + 50)).map((l) => [l.owned, l.size.pieces])).toEqual([[true, need]]);
    expect(lines('screws', shed(need, use.length + 10)).map((l) => l.owned)).toEqual([false]);
  });

  it('takes paint in the shed off, and says so', () => {
    const finishes = design.finishes.map((f) => ({ ...f, owned_l: 0.1 }));
    const first = lines('paint', null, { finishes })[0];
    expect(first?.owned).toBe(true);
    expect(first?.size.volume_l).toBeCloseTo(0.1, 12);
  });

  it('buys the cheapest bottles that are enough', () => {
    // By hand: 0.3 L of glue are two bottles of 8 fl oz at 5.48 or one of 16 at 8.48.
    const given = { ...whole.fastening, glue: 0.3 };
    const { tables, finish, patterns } = whole;
    const [bottle, ...others] = supplyLines({
      design,
      had: [],
      language: 'en',
      tables,
      finish,
      fastening: given,
      patterns,
    }).filter((l) => l.kind === 'glue');
    expect([bottle?.item, bottle?.count, bottle?.price, others.length]).toEqual(['glue-16oz', 1, 8.48, 0]);
  });

  it('goes by the prices that the person entered', () => {
    const prices = { 'glue-8oz': 1, 'glue-16oz': 3, [design.pages.paper]: 0.05 };
    expect(lines('glue', { prices }).map((l) => [l.item, l.each])).toEqual([['glue-8oz', 1]]);
    const [paper] = lines('paper', { prices });
    expect(paper?.priced).toBe(true);
    expect(paper?.price).toBeCloseTo((paper?.count ?? 0) * 0.05, 12);
    expect(lines('paper', null)[0]?.priced).toBe(false);
    const primer = lines('primer', { primer: [{ container: 'us-quart', price: 14 }] });
    expect(primer.map((l) => [l.item, l.each, l.priced])).toEqual([['us-quart', 14, true]]);
  });
});
