import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { type ColorSet, inColors } from '../../src/finish/colorSet.ts';
import { shoppingRows } from '../../src/output/csv/shopping.ts';
import { bodyOf, packetSheet, turned } from '../../src/output/packet/sheet.ts';
import { faceFigures, sideBySidePage } from '../../src/output/packet/sideBySide.ts';
import { planned, STARTERS, starter } from '../plan/starters.ts';
import { LEAST, overlaps, toldOn } from './told.ts';

const SETS = JSON.parse(
  readFileSync(new URL('../../assets/color-sets.json', import.meta.url), 'utf8'),
) as ColorSet[];

/** A starter as it is and in five other sets of colors. */
function six(name: string) {
  const design = starter(name);
  const others = SETS.slice(0, 5).map((set): { name: string; design: Design } => ({
    name: set.id,
    design: { ...design, finishes: inColors(design.finishes, set) },
  }));
  const all = [{ name: 'As it is now', design }, ...others].map((one) => ({
    name: one.name,
    plan: planned(one.design),
  }));
  return all as [(typeof all)[number], ...typeof all];
}

const numberIn = (text: string): number => Number(text.replace(/[^0-9.]/g, ''));

describe.each(STARTERS)('%s beside itself in other colors', (name) => {
  const faces = six(name);
  const figures = faces.map(({ plan }) => faceFigures(plan));

  it('costs what the lines of its shopping list add up to, and its paint what they say', () => {
    faces.forEach(({ plan }, i) => {
      const [head, ...rows] = shoppingRows(plan);
      const column = (title: string) => (head ?? []).indexOf(title);
      const price = (row: (typeof rows)[number]): number => {
        const cell = row[column('price')];
        return typeof cell === 'object' && cell !== null ? cell.value : 0;
      };
      const lines = rows.filter((row) => row[column('kind')] !== 'total');
      const total = figures[i]?.rows.at(-1);
      expect(total?.term).toBe('Total cost');
      expect(numberIn(total?.words ?? '')).toBeCloseTo(
        lines.reduce((sum, row) => sum + price(row), 0),
        2,
      );
      const paints = lines.filter((row) => ['Paint', 'Primer'].includes(String(row[column('kind')])));
      expect(figures[i]?.paints).toHaveLength(paints.length);
      const told = (figures[i]?.paints ?? []).map((paint) =>
        numberIn(paint.price.replace(/^no price$/, '0')),
      );
      expect(told.reduce((sum, one) => sum + one, 0)).toBeCloseTo(
        paints.reduce((sum, row) => sum + price(row), 0),
        2,
      );
    });
  });

  it('costs the same in every set: paint alone is another', () => {
    expect(new Set(figures.map(({ rows }) => rows.at(-1)?.words)).size).toBe(1);
  });

  it('stands on one landscape sheet, all of it within its room, nothing over anything else', () => {
    const page = sideBySidePage(faces);
    const sheet = turned(packetSheet(faces[0].plan.design.pages.paper));
    expect([page.width_mm, page.height_mm]).toEqual([sheet.width, sheet.height]);
    const body = bodyOf(sheet);
    const boxes = toldOn(page);
    expect(boxes.filter(({ points }) => points < LEAST - 1e-6)).toEqual([]);
    for (const { words, box } of boxes) {
      expect(box.x, words).toBeGreaterThanOrEqual(body.x - 0.1);
      expect(box.x + box.w, words).toBeLessThanOrEqual(body.x + body.w + 0.1);
    }
    expect(overlaps(boxes)).toEqual([]);
    expect(boxes.some(({ words }) => words.includes('more line'))).toBe(false);
  });
});
