import { PDFArray, PDFDict, PDFDocument, PDFHexString, PDFName } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Design } from '../../src/design/schema.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { patternPages } from '../../src/output/packet/patternPages.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { drawPlate, keyMapOf } from '../../src/patterns/furniture.ts';
import type { PatternSet } from '../../src/patterns/result.ts';
import { plan as planInFull } from '../../src/plan/plan.ts';
import { patterns as WORDS } from '../../src/plan/words/en/patterns.ts';
import { planned, planOf, STARTERS, SUPPLIES, starter } from '../plan/starters.ts';
import { LETTERS } from './setWith.ts';

const textsOf = (items: Parameters<typeof flatten>[0]) =>
  flatten(items).texts.filter(({ item }) => item.text !== '');

/** Margins of the starters, and what they leave of a Letter page (ANSI/ASME Y14.1 size A: 8 1/2 by 11 in). */
const MARGIN = 12.7;
const ROOM = [215.9 - 2 * MARGIN, 279.4 - 2 * MARGIN] as const;

/** Points of a pattern's lines, along long ones every two centimeters, where they lie in the whole of it. */
function pointsOf({ pages }: PatternSet): Point[] {
  return pages.flatMap(({ drawing, window }) =>
    flatten(drawing.items)
      .paths.filter(({ layer }) => layer !== 'page' && layer !== 'guides')
      .flatMap(({ path }) => {
        const own = path.flatMap((c) =>
          'x' in c ? [{ x: c.x - MARGIN + window.x, y: c.y - MARGIN + window.y }] : [],
        );
        return own.flatMap((p, i) => {
          const from = path[i]?.op === 'M' ? p : (own[i - 1] ?? p);
          const count = Math.max(1, Math.ceil(Math.hypot(p.x - from.x, p.y - from.y) / 20));
          return Array.from({ length: count }, (_, k) => ({
            x: p.x - ((p.x - from.x) * k) / count,
            y: p.y - ((p.y - from.y) * k) / count,
          }));
        });
      }),
  );
}

/**
 * As many pages as no plan can do without: points of which no two lie on one page, gathered from one corner or another,
 * on upright paper or turned.
 */
function leastPages(set: PatternSet): number {
  const points = pointsOf(set);
  const along = [
    [1e4, 1],
    [-1e4, 1],
    [1, 1e4],
    [1, -1e4],
    [1, 1],
    [1, -1],
  ] as const;
  const apart = (w: number, h: number) =>
    Math.max(
      ...along.map(([u, v]) => {
        const chosen: Point[] = [];
        for (const p of points.toSorted((a, b) => u * (a.x - b.x) + v * (a.y - b.y))) {
          const far = (q: Point) => Math.abs(p.x - q.x) > w + 0.01 || Math.abs(p.y - q.y) > h + 0.01;
          if (chosen.every(far)) chosen.push(p);
        }
        return chosen.length;
      }),
    );
  return Math.min(apart(...ROOM), apart(ROOM[1], ROOM[0]));
}

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

  it('count their cover as paper to buy, whatever they are printed on and in whatever language', () => {
    const own = starter(name);
    const jobs = [
      ['letter', 'en'],
      ['a4', 'de'],
      ['tabloid', 'es'],
      ['roll-36in', 'en'],
    ] as const;
    for (const [paper, language] of jobs) {
      const pages = { ...own.pages, paper, also: ['story-sticks' as const, 'parts' as const] };
      const plan = planInFull({ ...own, pages }, { ...SUPPLIES, language }, { effort: { nodes: 200 } });
      // Twin: pages of the file on the cover's paper, by their size (ANSI/ASME Y14.1 size A, ISO 216 A4).
      const [short, long] = paper === 'a4' ? [210, 297] : [215.9, 279.4];
      const bench = patternPages(plan).filter(({ width_mm, height_mm }) => {
        const sides = [width_mm, height_mm].sort((a, b) => a - b);
        return Math.abs((sides[0] ?? 0) - short) < 0.1 && Math.abs((sides[1] ?? 0) - long) < 0.1;
      });
      const line = plan.shopping.find(
        ({ kind, item }) => kind === 'paper' && item === (paper === 'a4' ? 'a4' : 'letter'),
      );
      expect(line?.count ?? 0, `${paper} ${language}`).toBe(bench.length);
    }
  });

  it('are the fewest pages that there can be, and story sticks two more at most than their length alone asks for', () => {
    const [sticks, sets] = [true, false].map((is) =>
      plan.patterns.filter((set) => set.pages.length > 0 && set.for.startsWith('story-sticks') === is),
    ) as [PatternSet[], PatternSet[]];
    for (const set of sets.filter(
      ({ pages: [first] }) => first && first.drawing.width + first.drawing.height < 500,
    )) {
      // Of the library's board the fifth page is that of four overlaps, which the bound leaves out.
      const overlaps = name === 'village-library' && !set.for.startsWith('drilling') ? 1 : 0;
      expect(set.pages.length - overlaps, set.title).toBe(leastPages(set));
    }
    // Strips of 46 mm lie beside each other; the measuring square and the ruler take the rest of each page.
    const { width, height } = plan.face;
    const least = Math.ceil((width + height) / (Math.floor(ROOM[0] / 46) * ROOM[1]));
    expect(sticks.length).toBeLessThanOrEqual(least + 2);
    if (name === 'harbor-ticket-kiosk') expect(sticks.length).toBeLessThanOrEqual(8);
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

/** The bread shop with signs beside its own, of one name and of the names that numbering would give. */
function likeNamed(): Design {
  const design = starter('bread-shop');
  const sign = design.parts.find((part) => part.kind === 'sign');
  if (sign?.kind !== 'sign') throw new Error('no sign');
  const { name, lettering } = sign;
  const more = [name, `${name} (2)`, name].map((own, i) => {
    const make = i === 2 ? ('printed' as const) : ('trace' as const);
    return { ...sign, id: `sign-${i}`, name: own, lettering: { ...lettering, make } };
  });
  return { ...design, parts: [...design.parts, ...more] };
}

it('names every page of the file, no two alike, whatever its signs are called', async () => {
  const plan = planned(likeNamed());
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
