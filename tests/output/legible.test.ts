import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { bodyOf } from '../../src/output/packet/sheet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import type { PdfPage } from '../../src/output/pdf/pdf.ts';
import { planned, STARTERS, starter } from '../plan/starters.ts';
import { manyParts, threeMeters } from './large.ts';

/** Points of PDF (ISO 32000-1, 8.3.2.3: 72 to the inch) in a millimeter. */
const POINTS = 72 / 25.4;
/** At arm's length, 500 mm, capitals of 16 arc minutes are 2.33 mm high (NUREG-0700); on a sheet in the hand less will do. */
const LEAST = 8;

interface Told {
  readonly words: string;
  readonly points: number;
  readonly box: Box;
}

const toldOn = (page: PdfPage): Told[] =>
  flatten(page.drawing.items)
    .texts.filter(({ item }) => item.text.trim() !== '')
    .map((flat) => ({
      words: flat.item.text,
      points: flat.item.size * Math.hypot(flat.matrix.a, flat.matrix.b) * POINTS,
      box: boxOfPoints(textCorners(flat)),
    }));

/** How far two boxes lie in each other, in the direction of the lesser depth. */
const depth = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x),
    Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y),
  );

/** Pairs that lie in each other, looked for among those that begin before one ends, from left to right. */
function overlaps(told: readonly Told[]): string[] {
  const sorted = [...told].sort((a, b) => a.box.x - b.box.x);
  return sorted.flatMap((a, i) => {
    const found: string[] = [];
    for (let k = i + 1; k < sorted.length && sorted[k]!.box.x < a.box.x + a.box.w; k++) {
      const b = sorted[k]!;
      if (depth(a.box, b.box) > 0.1) found.push(`${a.words} / ${b.words}`);
    }
    return found;
  });
}

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
