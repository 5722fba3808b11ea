import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { fillPages, led, paragraph, table, withNote } from '../../src/output/packet/flow.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { bodyOf, packetSheet, turned } from '../../src/output/packet/sheet.ts';
import type { PdfPage } from '../../src/output/pdf/pdf.ts';
import { inMetric, planned, planOf, STARTERS, starter } from '../plan/starters.ts';

/** The room that a page has for its content. */
function roomOf({ width_mm, height_mm }: PdfPage) {
  const sheet = packetSheet(Math.abs(Math.max(width_mm, height_mm) - 297) < 0.01 ? 'a4' : 'letter');
  return bodyOf(width_mm > height_mm ? turned(sheet) : sheet);
}

/** From the top of the room down to the lowest point of what stands in it, as a share of its height. */
function filled(page: PdfPage): number {
  const { y, h } = roomOf(page);
  const { paths, texts } = flatten(page.drawing.items);
  const points = [
    ...paths.flatMap(({ path }) => path.flatMap((step) => ('x' in step ? [step] : []))),
    ...texts.flatMap(textCorners),
  ];
  return (y + h - Math.min(...points.map((p) => p.y).filter((at) => at > y - 0.5 && at < y + h))) / h;
}

const SETS = STARTERS.flatMap((name) => [
  [`${name}, inches on Letter`, () => planOf(name)] as const,
  [`${name}, millimeters on A4`, () => planned(inMetric(starter(name)))] as const,
]);

describe.each(SETS)('the packet of %s', (_, plan) => {
  const pages = packetPages(plan());

  it('has no page under a quarter filled but one that holds all of a section', () => {
    const bare = pages.flatMap((page, i) => {
      const goesOn = pages[i - 1]?.drawing.title === page.drawing.title;
      const goesOver = pages[i + 1]?.drawing.title === page.drawing.title;
      const told = `${i + 1} ${page.drawing.title}: ${filled(page).toFixed(2)}`;
      return filled(page) < 0.25 && (goesOn || goesOver) ? [told] : [];
    });
    expect(bare).toEqual([]);
  });
});

describe('a table', () => {
  it('is on the page of what leads to it, and what explains it on that of its last rows', () => {
    const box = { x: 0, y: 0, w: 100, h: 90 };
    const rows = (count: number) => Array.from({ length: count }, (_, i) => ({ cells: [`row${i}`] }));
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 30 }), fc.integer({ min: 2, max: 20 }), (before, count) => {
        const own = table([{ title: 'Rows', share: 1 }], rows(count), 100);
        const lead = paragraph('leads to it '.repeat(12), 100);
        const blocks = [
          ...Array.from({ length: before }, () => paragraph('before', 100)).flat(),
          ...withNote(led(lead, own), paragraph('explains it '.repeat(12), 100)),
        ];
        const pages = fillPages(blocks, box).map(({ draw }) =>
          draw(box).flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
        );
        const on = (words: string) => pages.findIndex((page) => page.some((text) => text.includes(words)));
        expect(on('leads')).toBe(on('row0'));
        expect(on('explains')).toBe(on(`row${count - 1}`));
      }),
    );
  });

  it('has no row alone at the top of a page nor at its foot', () => {
    const width = 100;
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 3 }), { minLength: 2, maxLength: 40 }), (lines) => {
        const rows = lines.map((count, i) => ({
          cells: [`row${i}${' xxxxxxxxxxxxxxxx'.repeat(count * 2)}`],
        }));
        const blocks = table([{ title: 'Rows', share: 1 }], rows, width);
        const pages = fillPages(blocks, { x: 0, y: 0, w: width, h: 90 }).map(
          ({ draw }) =>
            draw({ x: 0, y: 0, w: width, h: 90 }).filter(
              (item) => item.kind === 'text' && item.text.startsWith('row'),
            ).length,
        );
        expect(pages.reduce((a, b) => a + b, 0)).toBe(rows.length);
        for (const count of pages) expect(count).toBeGreaterThanOrEqual(2);
      }),
    );
  });
});
