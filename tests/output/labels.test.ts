import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import { labelPages } from '../../src/output/packet/labels.ts';
import { plan } from '../../src/plan/plan.ts';
import { STARTERS, SUPPLIES, starter } from '../plan/starters.ts';

// Sizes as such sheets are sold by, in inches and millimeters: common practice, from memory.
const SHEETS = {
  letter: {
    columns: 3,
    rows: 10,
    x: 0.1875 * 25.4,
    y: 0.5 * 25.4,
    dx: 2.75 * 25.4,
    dy: 25.4,
    w: 66.675,
    h: 25.4,
  },
  a4: { columns: 3, rows: 8, x: 0, y: 0.5, dx: 70, dy: 37, w: 70, h: 37 },
} as const;

const PAPERS = ['letter', 'a4'] as const;

describe.each(STARTERS.flatMap((name) => PAPERS.map((paper) => [name, paper] as const)))(
  'labels of %s on %s',
  (name, paper) => {
    const design: Design = { ...starter(name), pages: { ...starter(name).pages, paper } };
    const language = paper === 'a4' ? 'de' : 'en';
    const made = plan(design, { ...SUPPLIES, language }, { effort: { nodes: 2000 } });
    const pages = labelPages(made);
    const sheet = SHEETS[paper];
    /** Texts of each label, by where they stand. */
    const labels = pages.flatMap(({ drawing, height_mm }) => {
      const cells = new Map<
        number,
        { words: string; box: ReturnType<typeof boxOfPoints>; inside: boolean }[]
      >();
      for (const flat of flatten(drawing.items).texts) {
        const box = boxOfPoints(textCorners(flat));
        const column = Math.floor((box.x - sheet.x) / sheet.dx);
        const row = Math.floor((height_mm - sheet.y - box.y) / sheet.dy);
        const left = sheet.x + column * sheet.dx;
        const top = height_mm - sheet.y - row * sheet.dy;
        const inside =
          box.x > left + 1 &&
          box.x + box.w < left + sheet.w - 1 &&
          box.y + box.h < top - 1 &&
          box.y > top - sheet.h + 1;
        const key = row * sheet.columns + column;
        cells.set(key, [...(cells.get(key) ?? []), { words: flat.item.text, box, inside }]);
      }
      return [...cells.values()];
    });

    it('are one for each piece, inside the border of its own label, nothing over another', () => {
      const told = labels.map((texts) => texts[0]?.words).sort();
      expect(told).toEqual(made.joinery.pieces.map(({ label }) => label).sort());
      for (const texts of labels) {
        for (const [i, { words, box: a, inside }] of texts.entries()) {
          expect(inside, words).toBe(true);
          expect(words.endsWith('…'), words).toBe(false);
          for (const { words: other, box: b } of texts.slice(i + 1)) {
            const deep = Math.min(
              Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x),
              Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y),
            );
            expect(deep, `${words} / ${other}`).toBeLessThan(0.1);
          }
        }
      }
    });
  },
);
