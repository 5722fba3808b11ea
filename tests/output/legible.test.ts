import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { bodyOf } from '../../src/output/packet/sheet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planned, STARTERS, starter } from '../plan/starters.ts';
import { manyParts, threeMeters } from './large.ts';
import { LEAST, overlaps, toldOn } from './told.ts';

const DESIGNS: readonly (readonly [string, () => Design])[] = [
  ...STARTERS.map((name) => [name, () => starter(name)] as const),
  ['a face of 200 parts', manyParts],
  ['a face 3 m wide', threeMeters],
];

describe.each(DESIGNS)('each sheet of %s', (_, design) => {
  const pages = packetPages(planned(design()));

  it(`has no text under ${LEAST} points`, () => {
    const small = pages.flatMap((page, i) =>
      toldOn(page)
        .filter(({ points }) => points < LEAST - 1e-6)
        .map(({ words, points }) => `${i + 1} ${page.drawing.title}: ${words}, ${points.toFixed(1)}`),
    );
    expect(small).toEqual([]);
  });

  it('cuts no text short', () => {
    const short = pages.flatMap((page, i) =>
      toldOn(page).flatMap(({ words }) =>
        words.endsWith('…') ? [`${i + 1} ${page.drawing.title}: ${words}`] : [],
      ),
    );
    expect(short).toEqual([]);
  });

  it('has nothing written over its title block or below it but what stands there', () => {
    const over = pages.flatMap((page, i) => {
      const { y } = bodyOf({ paper: '', width: page.width_mm, height: page.height_mm });
      const told = toldOn(page);
      // The title block is drawn last: what comes before its first field belongs to the page.
      const first = told.findLastIndex(({ words }) => words === EN.block.design);
      return told
        .slice(0, first)
        .filter(({ box }) => box.y < y - 1)
        .map(({ words }) => `${i + 1} ${page.drawing.title}: ${words}`);
    });
    expect(over).toEqual([]);
  });

  it('has no text in another, and none over its edge', () => {
    const lost = pages.flatMap((page, i) => {
      const told = toldOn(page);
      const over = told.filter(
        ({ box }) =>
          box.x < 0 || box.y < 0 || box.x + box.w > page.width_mm || box.y + box.h > page.height_mm,
      );
      const where = `${i + 1} ${page.drawing.title}`;
      return [
        ...over.map(({ words }) => `${where}: ${words}`),
        ...overlaps(told).map((p) => `${where}: ${p}`),
      ];
    });
    expect(lost).toEqual([]);
  });
});
