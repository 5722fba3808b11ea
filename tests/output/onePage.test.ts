import { describe, expect, it } from 'vitest';
import { onePage } from '../../src/output/packet/onePage.ts';
import { bodyOf } from '../../src/output/packet/sheet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import type { Plan } from '../../src/plan/types.ts';
import { inMetric, planned, planOf, STARTERS, starter } from '../plan/starters.ts';
import { manyParts, threeMeters } from './large.ts';
import { LEAST, overlaps, toldOn } from './told.ts';

const LONG = 'A word more. '.repeat(200);
const PLANS: readonly (readonly [string, () => Plan])[] = [
  ...STARTERS.map((name) => [name, () => planOf(name)] as const),
  ...STARTERS.map((name) => [`${name}, metric`, () => planned(inMetric(starter(name)))] as const),
  ['a face of 200 parts', () => planned(manyParts())],
  ['a face 3 m wide', () => planned(threeMeters())],
  ['one with a long note', () => planned({ ...starter('village-library'), note: LONG })],
];

describe.each(PLANS)('the page to show of %s', (_, plan) => {
  const made = plan();
  const page = onePage(made);
  const told = toldOn(page);

  it('is read from end to end: no text small, cut short, in another or over what stands around it', () => {
    expect(told.filter(({ points }) => points < LEAST - 1e-6)).toEqual([]);
    expect(overlaps(told)).toEqual([]);
    expect(told.filter(({ words }) => words.endsWith('…'))).toEqual([]);
    const { x, y, w } = bodyOf({ paper: '', width: page.width_mm, height: page.height_mm });
    const block = told.findLastIndex(({ words }) => words === EN.block.design);
    for (const { words, box } of told.slice(0, block)) {
      expect(box.y, words).toBeGreaterThan(y - 0.5);
      expect(box.x, words).toBeGreaterThan(x - 0.5);
      expect(box.x + box.w, words).toBeLessThan(x + w + 0.5);
    }
  });

  it('tells its weight, what it is not, and a cost that is the sum of its lines', () => {
    const all = told.map(({ words }) => words).join(' ');
    expect(all).toContain('can injure or kill');
    const figureOf = (term: string) => told[told.findIndex(({ words }) => words === term) + 1]?.words ?? '';
    expect(figureOf(EN.cover.weight)).toMatch(/\d (lb|kg)$/);
    const total = Number(figureOf(EN.cover.cost).replace(/[^\d.]/g, ''));
    // Whole cents: the total is rounded once.
    expect(Math.abs(total - made.shopping.reduce((sum, { price }) => sum + price, 0))).toBeLessThan(0.006);
  });
});
