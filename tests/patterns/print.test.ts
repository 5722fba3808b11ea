import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import { inches } from '../../src/measure/units.ts';
import { pdfOf } from '../../src/output/pdf/pdf.ts';
import { squareSide } from '../../src/patterns/furniture.ts';
import { planPatterns } from '../../src/patterns/planPatterns.ts';
import type { PatternPage } from '../../src/patterns/result.ts';
import { testPage } from '../../src/patterns/testPage.ts';
import { letteredLine } from '../output/letters.ts';
import { printerTools, rasterOf, textOf } from '../output/raster.ts';
import { LETTERS } from '../output/setWith.ts';
import { PAPERS, setupOf } from './setup.ts';

const lettered = letteredLine('TICKETS', 120, { x: 40, y: 40 });
const sign = {
  kind: 'sign',
  id: 'sign',
  name: 'Sign over the hatch',
  mode: 'trace',
  spacing: 3,
  board: [
    {
      outer: [
        { x: 0, y: 0 },
        { x: lettered.width + 80, y: 0 },
        { x: lettered.width + 80, y: 200 },
        { x: 0, y: 200 },
      ],
      holes: [],
      notches: [],
    },
  ],
  lettered,
  bent: false,
  seams: [],
  stencils: [],
} as const;

const pagesWith = (change: Parameters<typeof setupOf>[0]) =>
  planPatterns([sign], setupOf(change)).sets.flatMap((set) => set.pages);
const pdf = (pages: readonly PatternPage[]) =>
  pdfOf(
    pages.map(({ drawing }) => ({ width_mm: drawing.width, height_mm: drawing.height, drawing })),
    { title: 'patterns', date: '', language: 'en' },
    LETTERS,
  );

/** The page's measuring square as drawn: the only band on the page; between its two edges. */
function squareOn(page: PatternPage, w: number, h: number): Box {
  const found = flatten(page.drawing.items)
    .paths.filter((p) => p.item.fillRule === 'evenodd')
    .map((p) => {
      const outer = boxOfPath(p.path.slice(0, 5));
      const inner = boxOfPath(p.path.slice(5));
      return {
        x: (outer.x + inner.x) / 2,
        y: (outer.y + inner.y) / 2,
        w: (outer.w + inner.w) / 2,
        h: (outer.h + inner.h) / 2,
      };
    });
  expect(found).toHaveLength(1);
  expect(found[0]!.w).toBeCloseTo(w, 6);
  expect(found[0]!.h).toBeCloseTo(h, 6);
  return found[0]!;
}

describe('printer correction', () => {
  it('makes the square come out true in both directions when the printer prints 99.2 % by 100.6 %', () => {
    const correction = { x: 0.992, y: 1.006 };
    for (const page of pagesWith({ correction, paper: PAPERS.a4 })) {
      // A turned page goes through the printer sideways.
      const turned = page.drawing.width > page.drawing.height;
      const by = turned ? { x: 1.006, y: 0.992 } : correction;
      const drawn = squareOn(page, 50 / by.x, 50 / by.y);
      expect(drawn.w * by.x).toBeCloseTo(50, 9);
      expect(drawn.h * by.y).toBeCloseTo(50, 9);
    }
  });

  it.skipIf(!printerTools)('is measured back in the printed pixels at 600 dpi', async () => {
    const correction = { x: 0.992, y: 1.006 };
    const pages = pagesWith({ correction, paper: PAPERS.a4 });
    const page = pages[0]!;
    const turned = page.drawing.width > page.drawing.height;
    const by = turned ? { x: 1.006, y: 0.992 } : correction;
    const box = squareOn(page, 50 / by.x, 50 / by.y);
    const found = measured(rasterOf(await pdf([page]), 600), box, page.drawing.height, 600);
    expect(Math.abs(found.w * by.x - 50)).toBeLessThanOrEqual(25.4 / 600);
    expect(Math.abs(found.h * by.y - 50)).toBeLessThanOrEqual(25.4 / 600);
  });

  it('never lets a page show less than its cell', () => {
    for (const page of pagesWith({ correction: { x: 0.95, y: 1.05 } })) {
      expect(page.window.w).toBeGreaterThanOrEqual(page.cell.w - 1e-9);
      expect(page.window.h).toBeGreaterThanOrEqual(page.cell.h - 1e-9);
    }
  });
});

/** Distances between the two pairs of sides near a drawn box, from the dark pixels. */
function measured(raster: ReturnType<typeof rasterOf>, box: Box, height: number, dpi: number) {
  const px = (mm: number) => (mm * dpi) / 25.4;
  const center = (at: number, dark: (i: number) => boolean) => {
    const hits: number[] = [];
    for (let i = Math.floor(px(at) - 6); i <= px(at) + 6; i++) if (dark(i)) hits.push(i + 0.5);
    return hits.reduce((a, b) => a + b, 0) / hits.length;
  };
  // At several places along each side, and the middle one of what is found: outlines of letters may cross.
  const middle = (values: number[]) => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;
  const shares = [0.03, 0.1, 0.16, 0.86, 0.97];
  const w = shares.map((share) => {
    const row = Math.round(px(height - (box.y + box.h * share)));
    const dark = (i: number) => raster.at(i, row) < 150;
    return center(box.x + box.w, dark) - center(box.x, dark);
  });
  const h = shares.map((share) => {
    const column = Math.round(px(box.x + box.w * share));
    const dark = (i: number) => raster.at(column, i) < 150;
    return center(height - box.y, dark) - center(height - box.y - box.h, dark);
  });
  return { w: (middle(w) * 25.4) / dpi, h: (middle(h) * 25.4) / dpi };
}

describe.skipIf(!printerTools)('printed pages', () => {
  it.each(['in', 'mm'] as const)(
    'carry a measuring square true to one pixel at 300 dpi (%s)',
    async (unit) => {
      const side = squareSide(unit);
      for (const page of pagesWith({ unit })) {
        const box = squareOn(page, side, side);
        const found = measured(rasterOf(await pdf([page]), 300), box, page.drawing.height, 300);
        expect(Math.abs(found.w - side)).toBeLessThanOrEqual(25.4 / 300);
        expect(Math.abs(found.h - side)).toBeLessThanOrEqual(25.4 / 300);
      }
    },
  );

  it('keep the printer margins bare', async () => {
    const dpi = 75;
    const pages = pagesWith({ margin: inches(0.5) });
    const bytes = await pdf(pages);
    pages.forEach((_, i) => {
      const raster = rasterOf(bytes, dpi, i + 1);
      const rim = Math.floor(0.5 * dpi) - 2;
      let dark = 0;
      for (let y = 0; y < raster.height; y++) {
        for (let x = 0; x < raster.width; x++) {
          const inside = x >= rim && y >= rim && x < raster.width - rim && y < raster.height - rim;
          if (!inside && raster.at(x, y) < 250) dark++;
        }
      }
      expect(dark).toBe(0);
    });
  });

  it('show the outlines of the letters, dark within a pixel of every point between the trim lines', async () => {
    const dpi = 300;
    const pages = pagesWith({});
    const bytes = await pdf(pages);
    let looked = 0;
    pages.forEach((page, i) => {
      const raster = rasterOf(bytes, dpi, i + 1);
      const toPixel = (p: Point) => ({
        x: ((p.x - page.window.x + inches(0.5)) * dpi) / 25.4,
        y: ((page.drawing.height - (p.y - page.window.y + inches(0.5))) * dpi) / 25.4,
      });
      for (const ring of lettered.layers[0]!.region.flatMap((polygon) => [polygon.outer, ...polygon.holes])) {
        for (const p of ring) {
          const { cell } = page;
          if (p.x < cell.x || p.y < cell.y || p.x > cell.x + cell.w || p.y > cell.y + cell.h) continue;
          const at = toPixel(p);
          const near = [-1, 0, 1].flatMap((dx) =>
            [-1, 0, 1].map((dy) => raster.at(Math.floor(at.x) + dx, Math.floor(at.y) + dy)),
          );
          expect(Math.min(...near)).toBeLessThan(128);
          looked++;
        }
      }
    });
    expect(looked).toBeGreaterThan(100);
  });

  it('give their words back', async () => {
    const pages = pagesWith({});
    const words = textOf(await pdf(pages));
    for (const page of pages) expect(words).toContain(page.name);
    expect(words).toContain('Sign over the hatch');
    expect(words).toContain(`Page ${pages.length} of ${pages.length}`);
  });
});

describe('the test page', () => {
  it('has a ruler in each direction, uncorrected, in whole units', () => {
    const page = testPage(setupOf({ unit: 'in', correction: { x: 0.9, y: 1.1 } }));
    expect([page!.x, page!.y]).toEqual([inches(6), inches(8)]);
    const boxes = flatten(page!.drawing.items).paths.map((p) => boxOfPath(p.path));
    expect(boxes[0]!.w).toBeCloseTo(inches(6), 9);
    expect(boxes[1]!.h).toBeCloseTo(inches(8), 9);
  });
});
