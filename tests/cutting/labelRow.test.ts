import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { parted } from '../../src/cutting/labelRow.ts';
import { text } from '../../src/drawing/items.ts';
import { textWidth } from '../../src/drawing/text.ts';

describe('labels in a row', () => {
  const places = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 1, maxLength: 8 });

  it('do not touch, keep their order, and end within the row', () => {
    fc.assert(
      fc.property(places, (xs) => {
        const labels = xs.map((x, i) => text({ x, y: 0 }, `G${i}`, { size: 2, anchor: 'middle' }));
        const row = parted(labels, 110);
        expect(row.map((l) => l.text)).toEqual(
          [...labels].sort((a, b) => a.at.x - b.at.x).map((l) => l.text),
        );
        row.forEach((label, i) => {
          const half = textWidth(label.text, label) / 2;
          expect(label.at.x + half).toBeLessThanOrEqual(110 + 1e-9);
          const before = row[i - 1];
          if (!before) return;
          const gap = label.at.x - half - before.at.x - textWidth(before.text, before) / 2;
          expect(gap).toBeGreaterThanOrEqual(0.8 - 1e-9);
        });
      }),
    );
  });

  it('stay where they are when nothing is in the way', () => {
    const labels = [10, 40, 80].map((x) => text({ x, y: 1 }, 'A1', { size: 2, anchor: 'middle' }));
    expect(parted(labels, 100)).toEqual(labels);
  });
});
