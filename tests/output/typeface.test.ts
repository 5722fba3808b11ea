import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { decodePDFRawStream, PDFDocument, PDFName, PDFRawStream } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import type { DrawItem } from '../../src/drawing/drawing.ts';
import { shape, text } from '../../src/drawing/items.ts';
import { textWidth } from '../../src/drawing/text.ts';
import { CHARACTERS } from '../../src/drawing/typeface.ts';
import { subsetOf } from '../../src/output/pdf/font/subset.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { pathOf } from './letters.ts';
import { fontsOf, printerTools, type Raster, rasterOf, textOf } from './raster.ts';
import { LETTERS } from './setWith.ts';

const WEIGHTS = [
  { name: 'regular', file: 400, bold: false },
  { name: 'bold', file: 700, bold: true },
] as const;
const require = createRequire(import.meta.url);
const kitOf = (weight: number) =>
  create(
    readFileSync(require.resolve(`@fontsource/barlow/files/barlow-latin-${weight}-normal.woff`)),
  ) as Font;
const glyphOf = (font: Font, char: string) =>
  /\d/.test(char) ? font.layout(char, ['tnum']).glyphs[0]! : font.glyphForCodePoint(char.codePointAt(0)!);

const SIZE = { w: 180, h: 120 };
const page = (items: DrawItem[]) =>
  pdfOf(
    [
      {
        width_mm: SIZE.w,
        height_mm: SIZE.h,
        drawing: { width: SIZE.w, height: SIZE.h, title: 't', items },
      },
    ],
    { title: 't', date: '', language: 'en' },
    LETTERS,
  );

/** Rows of all characters, in lines of 24. */
const ROWS = Array.from({ length: Math.ceil(CHARACTERS.length / 24) }, (_, i) =>
  CHARACTERS.slice(24 * i, 24 * i + 24),
);

describe('the typeface of a PDF', () => {
  it.each(WEIGHTS)(
    'is cut to the glyphs that are set, $name: each as in the whole font, no other',
    ({ name, file }) => {
      const whole = kitOf(file);
      const face = LETTERS.typeface[name];
      fc.assert(
        fc.property(fc.array(fc.constantFrom(...CHARACTERS), { minLength: 1, maxLength: 12 }), (chars) => {
          const glyphs = chars.map((char) => face.glyphOf(char));
          expect(glyphs).toEqual(chars.map((char) => glyphOf(whole, char).id));
          const cut = create(Buffer.from(subsetOf(face, glyphs))) as Font;
          for (const glyph of glyphs) {
            expect(cut.getGlyph(glyph).path.toSVG()).toBe(whole.getGlyph(glyph).path.toSVG());
            expect(cut.getGlyph(glyph).advanceWidth).toBe(whole.getGlyph(glyph).advanceWidth);
          }
          const drawn = Array.from({ length: cut.numGlyphs }, (_, i) => cut.getGlyph(i)).filter(
            (glyph) => glyph.path.commands.length > 0,
          );
          // Each letter and the sign for none, with all that each may be put together of: a half is three, a letter with a mark two.
          expect(drawn.length).toBeLessThanOrEqual(4 * (new Set(chars).size + 1));
        }),
        { numRuns: 20 },
      );
    },
  );

  it('embeds no more than it sets', async () => {
    const sizeOf = async (words: string) => {
      const { context } = await PDFDocument.load(await page([text({ x: 5, y: 5 }, words)]));
      return context
        .enumerateIndirectObjects()
        .flatMap(([, object]) =>
          object instanceof PDFRawStream && object.dict.has(PDFName.of('Length1'))
            ? [decodePDFRawStream(object).decode().length]
            : [],
        );
    };
    const [some, more] = [await sizeOf('38 1/2'), await sizeOf(CHARACTERS)];
    expect([some.length, more.length]).toEqual([1, 1]);
    expect(some[0]).toBeLessThan((more[0] ?? 0) / 4);
  });
});

describe.skipIf(!printerTools)('the typeface as a printer reads it', () => {
  it.each(WEIGHTS)('is embedded, and leaves the ink of its outlines, $name', async ({ file, bold }) => {
    const whole = kitOf(file);
    const size = 8;
    const place = (row: number) => ({ x: 6, y: SIZE.h - 14 - 11 * row });
    const set = await page(ROWS.map((row, i) => text(place(i), row, { size, bold })));
    const drawn = await page(
      ROWS.flatMap((row, i) =>
        [...row].map((char, k) => {
          const at = { ...place(i), x: place(i).x + textWidth(row.slice(0, k), { size, bold }) };
          return shape(pathOf(glyphOf(whole, char), size / whole.unitsPerEm, at), { fill: '#1c2126' });
        }),
      ),
    );
    expect(fontsOf(set)).toEqual([
      { name: expect.stringMatching(/^[A-Z]{6}\+Barlow/), embedded: true, subset: true, unicode: true },
    ]);
    const [ours, theirs] = [rasterOf(set, 200), rasterOf(drawn, 200)];
    // Letters are set on whole pixels up the page: ink counts as met by any beside it.
    const beside = [-1, 0, 1].flatMap((dx) => [-1, 0, 1].map((dy) => [dx, dy] as const));
    const met = (other: Raster, x: number, y: number) =>
      beside.some(([dx, dy]) => other.at(x + dx, y + dy) < 192);
    let [ink, apart] = [0, 0];
    for (let y = 1; y < ours.height - 1; y++) {
      for (let x = 1; x < ours.width - 1; x++) {
        const [a, b] = [ours.at(x, y) < 64, theirs.at(x, y) < 64];
        if (b) ink++;
        if ((a && !met(theirs, x, y)) || (b && !met(ours, x, y))) apart++;
      }
    }
    expect(ink).toBeGreaterThan(10_000);
    expect(apart).toBe(0);
  });

  it('gives every character back', async () => {
    const chars = [...CHARACTERS].filter((char) => /\S/.test(char) && char !== '\u00ad');
    const bytes = await page(
      chars.map((char, i) => text({ x: 6 + 8 * (i % 20), y: 110 - 9 * Math.floor(i / 20) }, char)),
    );
    const read = new Set(textOf(bytes).normalize('NFC'));
    expect(chars.filter((char) => !read.has(char.normalize('NFC')))).toEqual([]);
  });
});
