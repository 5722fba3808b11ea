import { describe, expect, it } from 'vitest';
import { TEXT } from '../../src/drawing/style.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import { table } from '../../src/output/packet/flow.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';

const WIDTH = 178;
const size = TEXT.small;

/** The texts of a table's blocks below each other, block by block. */
const drawn = (...made: Parameters<typeof table>) =>
  table(...made).map(({ draw }) =>
    flatten(draw({ x: 0, y: 0 }, WIDTH)).texts.map((flat) => ({
      words: flat.item.text,
      box: boxOfPoints(textCorners(flat)),
    })),
  );

describe('a table of the packet', () => {
  it('shows quantities of paint whole in a narrow column, with their units, and titles too', () => {
    const columns = [
      { title: 'Anstrich', share: 9 },
      { title: 'Schichten', share: 0.6, figure: true },
      { title: 'Bedarf', share: 0.8, figure: true },
    ];
    const words = drawn(columns, [{ cells: ['Harbor blue', '2', '16,9 fl oz'] }], 90)
      .flat()
      .map((one) => one.words);
    expect(words).toEqual(['Anstrich', 'Schichten', 'Bedarf', 'Harbor blue', '2', '16,9 fl oz']);
  });

  it('loses no letter of any cell, keeps figures in one line where all fit, and every line in the table', () => {
    const random = chanceOf(24);
    const below = (n: number) => Math.floor(random() * n);
    const word = () => 'Querfriese mit 16 1/2 halben Nuten'.slice(0, 1 + below(34)).replaceAll(' ', '');
    for (let run = 0; run < runs(60); run++) {
      const columns = Array.from({ length: 2 + below(6) }, () => ({
        title: `${word()} ${word()}`,
        share: 0.5 + 4 * random(),
        figure: random() < 0.5,
      }));
      const rows = Array.from({ length: 1 + below(4) }, () => ({
        cells: columns.map(() => Array.from({ length: 1 + below(3) }, word).join(' ')),
        bold: random() < 0.3,
      }));
      const [head = [], ...body] = drawn(columns, rows, WIDTH);
      const letters = (all: readonly string[]) => [...all.join('').replaceAll(' ', '')].sort().join('');
      expect(letters(head.map(({ words }) => words))).toBe(letters(columns.map(({ title }) => title)));
      // A row of many lines goes on in further blocks.
      const all = rows.flatMap(({ cells }) => cells);
      expect(letters(body.flat().map(({ words }) => words))).toBe(letters(all));
      for (const { box, words } of [head, ...body].flat()) {
        expect(box.x, words).toBeGreaterThan(0);
        expect(box.x + box.w, words).toBeLessThan(WIDTH);
      }
      // Whole lines of everything, with 5 mm between them: then nothing has to be broken.
      const widest = columns.map(({ title }, k) =>
        Math.max(
          ...[title, ...rows.map(({ cells }) => cells[k] ?? '')].map((one) =>
            textWidth(one, { size, bold: true }),
          ),
        ),
      );
      if (widest.reduce((sum, w) => sum + w + 5, 0) > WIDTH || Math.max(...widest) + 5 > 0.4 * WIDTH)
        continue;
      rows.forEach(({ cells }, i) => {
        const shown = (body[i] ?? []).map(({ words }) => words);
        columns.forEach(({ figure }, k) => {
          if (figure) expect(shown).toContain(cells[k]);
        });
      });
    }
  });
});
