import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import { patternPages } from '../../src/output/packet/patternPages.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { drawPlate, keyMapOf } from '../../src/patterns/furniture.ts';
import { patterns as WORDS } from '../../src/plan/words/en/patterns.ts';
import { planOf, STARTERS } from '../plan/starters.ts';
import { LETTERS } from './setWith.ts';

const textsOf = (items: Parameters<typeof flatten>[0]) =>
  flatten(items).texts.filter(({ item }) => item.text !== '');

describe.each(STARTERS)('the patterns of %s', (name) => {
  const plan = planOf(name);
  const pages = patternPages(plan);
  const isCover = ({ drawing }: (typeof pages)[number]) => drawing.title === EN.patternCover.title;
  const covers = pages.filter(isCover);

  it('come behind a cover that tells on which pages of the file each of them is', () => {
    expect(pages.slice(0, covers.length).every(isCover)).toBe(true);
    const told = covers.flatMap(({ drawing }) => textsOf(drawing.items).map(({ item }) => item.text));
    const ranges = told.flatMap((words) => {
      const found = /^pages? (\d+)(?: to (\d+))? of the file/.exec(words);
      return found ? [[Number(found[1]), Number(found[2] ?? found[1])] as const] : [];
    });
    // Together they are all pages of the file behind the cover, in order.
    const all = ranges.flatMap(([a, b]) => Array.from({ length: b - a + 1 }, (_, i) => a + i));
    expect(all).toEqual(pages.flatMap((page, i) => (isCover(page) ? [] : [i + 1])));
    // Each range holds the pages of one pattern, by the title that they carry.
    for (const [a, b] of ranges) {
      const titles = pages
        .slice(a - 1, b)
        .map(({ drawing }) => drawing.title.replace(/: Page \d+ of \d+$/, ''));
      expect(new Set(titles).size, titles.join()).toBe(1);
    }
  });

  it('have a cover that is read: nothing under 8 points, no text in another', () => {
    for (const { drawing } of covers) {
      const told = textsOf(drawing.items).map((flat) => ({ flat, box: boxOfPoints(textCorners(flat)) }));
      told.forEach(({ flat, box: a }, i) => {
        expect(flat.item.size * (72 / 25.4)).toBeGreaterThan(8 - 1e-6);
        for (const { flat: other, box: b } of told.slice(i + 1)) {
          const deep = Math.min(
            Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x),
            Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y),
          );
          expect(deep, `${flat.item.text} / ${other.item.text}`).toBeLessThan(0.1);
        }
      });
    }
  });
});

it('names every page of the file, no two alike', async () => {
  const plan = planOf('bread-shop');
  const pages = patternPages(plan);
  const file = await pdfOf(pages, { title: 't', date: '', language: 'en' }, LETTERS);
  const { catalog } = await PDFDocument.load(file);
  // ISO 32000-1, 12.4.2: a number tree from the page's index to a dictionary with its prefix.
  const nums = catalog.lookup(PDFName.of('PageLabels'), PDFDict).lookup(PDFName.of('Nums'), PDFArray);
  const names = pages.map((_, i) => {
    const label = nums.lookup(2 * i + 1, PDFDict).lookup(PDFName.of('P'));
    return label instanceof PDFHexString ? label.decodeText() : '';
  });
  expect(nums.size()).toBe(2 * pages.length);
  expect(new Set(names).size).toBe(pages.length);
  expect(names[0]).toBe(EN.patternCover.title);
});

describe('the plate of a page', () => {
  const box = { x: 0, y: 0, w: 400, h: 200 };
  const cell = { row: 0, column: 0, box };
  const words = fc.array(fc.stringMatching(/^[a-z]{1,14}$/), { maxLength: 60 }).map((all) => all.join(' '));

  it('says its title, how it is printed and the caution however long the rest is, and nothing over its sides', () => {
    fc.assert(
      fc.property(
        words,
        words,
        words,
        fc.boolean(),
        fc.constantFrom('in', 'mm'),
        (title, note, design, bare, unit) => {
          const plate = drawPlate({
            cell,
            keyMap: keyMapOf(box, [cell], unit),
            title: `Sign ${title}`,
            note,
            design,
            place: 'lower left at 0, 0',
            bare,
            page: 1,
            of: 4,
            unit,
            terms: WORDS,
          });
          const told = textsOf(plate);
          const all = told.map(({ item }) => item.text).join(' ');
          expect(all).toContain('Sign');
          expect(all).toContain(WORDS.print);
          expect(all).toContain(WORDS.caution);
          const side = unit === 'in' ? 50.8 : 50;
          for (const flat of told) {
            const { x, y, w, h } = boxOfPoints(textCorners(flat));
            expect(Math.min(x, y)).toBeGreaterThan(-0.01);
            expect(Math.max(x + w, y + h)).toBeLessThan(side + 0.01);
          }
        },
      ),
    );
  });
});
