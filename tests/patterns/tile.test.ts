import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawItem, Drawing } from '../../src/drawing/drawing.ts';
import { circle, line, polyline, rectangle, text } from '../../src/drawing/items.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { lerp } from '../../src/geometry/point.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import { inches } from '../../src/measure/units.ts';
import { jointsOf, pagesAlong } from '../../src/patterns/cells.ts';
import { hasInk, inkOf } from '../../src/patterns/ink.ts';
import { occupancyOf } from '../../src/patterns/occupancy.ts';
import { marksOf } from '../../src/patterns/registration.ts';
import type { PatternPage, PatternSet } from '../../src/patterns/result.ts';
import { tile } from '../../src/patterns/tile.ts';
import { EN } from '../../src/plan/words/en.ts';
import { letteredLine } from '../output/letters.ts';
import { runs } from '../runs.ts';
import { fullOfInk, PAPERS, setupOf } from './setup.ts';

const named = { for: 'sign', title: 'A sign' };
const place = fc.integer({ min: 0, max: 900 });
const anyItem: fc.Arbitrary<DrawItem> = fc.oneof(
  fc.tuple(place, place, place, place).map(([x, y, a, b]) => line({ x, y }, { x: a, y: b })),
  fc.tuple(place, place, fc.integer({ min: 2, max: 200 })).map(([x, y, r]) => circle({ x, y }, r)),
  fc.tuple(place, place).map(([x, y]) => rectangle({ x, y, w: 60, h: 90 }, { fill: '#333333' })),
  fc.tuple(place, place).map(([x, y]) => text({ x, y }, 'Some words', { angle: x % 90 })),
);
const anyDrawing = fc
  .array(anyItem, { minLength: 1, maxLength: 12 })
  .map((items): Drawing => ({ width: 1100, height: 1100, title: 't', items }));

const contains = (b: Box, p: Point) => p.x >= b.x && p.x <= b.x + b.w && p.y >= b.y && p.y <= b.y + b.h;
const tiled = (drawing: Drawing, change: Parameters<typeof setupOf>[0] = {}): PatternSet => {
  const set = tile(drawing, { setup: setupOf(change), ...named });
  if (!set) throw new Error('no room');
  return set;
};

describe('ink', () => {
  it('is found exactly where points of the drawing lie', () => {
    fc.assert(
      fc.property(anyDrawing, place, place, fc.integer({ min: 1, max: 250 }), (drawing, x, y, size) => {
        const ink = inkOf(drawing);
        const box = { x, y, w: size, h: size };
        // Plain twin: many points along every line.
        const seen = ink.segments.some(([a, b]) =>
          Array.from({ length: 400 }, (_, i) => lerp(a, b, i / 399)).some((p) => contains(box, p)),
        );
        if (seen) expect(hasInk(ink, box)).toBe(true);
        const wider = { x: x - 3, y: y - 3, w: size + 6, h: size + 6 };
        if (!hasInk(ink, box) && ink.areas.length === 0) expect(seen).toBe(false);
        if (hasInk(ink, box)) expect(hasInk(ink, wider)).toBe(true);
      }),
    );
  });

  it('is not in the bare counter of a big letter, nor under a white fill', () => {
    const items = [
      circle({ x: 500, y: 500 }, 400),
      rectangle({ x: 0, y: 0, w: 50, h: 50 }, { fill: '#ffffff' }),
    ];
    const ink = inkOf({ width: 1000, height: 1000, title: '', items });
    expect(hasInk(ink, { x: 400, y: 400, w: 200, h: 200 })).toBe(false);
    expect(hasInk(ink, { x: 0, y: 0, w: 60, h: 60 })).toBe(false);
    expect(hasInk(ink, { x: 880, y: 450, w: 100, h: 100 })).toBe(true);
  });

  it('is never called free by the coarse grid', () => {
    const whole = { x: -300, y: -300, w: 1500, h: 1500 };
    fc.assert(
      fc.property(anyDrawing, place, place, fc.integer({ min: 5, max: 300 }), (drawing, x, y, size) => {
        const ink = inkOf(drawing);
        const box = { x, y, w: size, h: size };
        if (hasInk(ink, box)) expect(occupancyOf(whole, ink, [], 7).count(box)).toBeGreaterThan(0);
      }),
    );
  });
});

describe('pages', () => {
  const half = inches(0.5);

  it('take no more than the tiling formula and hold every bit of ink between their trim lines', () => {
    fc.assert(
      fc.property(anyDrawing, fc.constantFrom('letter', 'a4', 'a3'), fc.boolean(), (drawing, paper, butt) => {
        const ink = inkOf(drawing);
        const overlap = butt ? 0 : half;
        const set = tiled(drawing, { paper: PAPERS[paper], join: butt ? 'butt' : 'overlap' });
        const { width, height } = PAPERS[paper];
        const room = { w: width - 2 * half, h: height - 2 * half };
        const box = ink.box ?? { x: 0, y: 0, w: 0, h: 0 };
        const formula = pagesAlong(box.w, room.w, overlap) * pagesAlong(box.h, room.h, overlap);
        expect(set.pages.length).toBeLessThanOrEqual(formula);
        for (const [a, b] of ink.segments) {
          for (let i = 0; i <= 20; i++) {
            const p = lerp(a, b, i / 20);
            expect(set.pages.some((page) => contains(grown(page.cell, 1e-6), p))).toBe(true);
          }
        }
        for (const page of set.pages) expect(hasInk(ink, page.cell)).toBe(true);
      }),
      { numRuns: runs(10) },
    );
  });

  it('show their cell and half an overlap beyond every trim line', () => {
    const set = tiled(fullOfInk(900, 700));
    for (const page of set.pages) {
      for (const other of set.pages) {
        const shared = overlapOf(page.cell, grown(other.cell, 1e-6));
        if (other === page || !shared) continue;
        expect(
          contains(grown(page.window, 1e-6), { x: shared.x + shared.w / 2, y: shared.y + shared.h / 2 }),
        ).toBe(true);
        const both = overlapOf(page.window, other.window);
        expect(Math.min(both?.w ?? 0, both?.h ?? 0)).toBeGreaterThanOrEqual(half - 1e-6);
      }
    }
  });

  it('leave out what has no ink: a frame of one line has no pages in its middle', () => {
    const frame = rectangle({ x: 0, y: 0, w: 900, h: 1200 });
    const set = tiled({ width: 900, height: 1200, title: '', items: [frame] });
    expect(set.pages.length).toBeLessThan(set.rows * set.columns);
    expect(set.pages.some((page) => contains(page.cell, { x: 450, y: 600 }))).toBe(false);
  });

  it('shift the grid to save pages', () => {
    // Two short strokes 300 mm apart: a grid that starts at the first one needs both, and the page between is blank.
    const strokes = [0, 300].map((x) => line({ x, y: 0 }, { x: x + 5, y: 0 }));
    expect(tiled({ width: 305, height: 1, title: '', items: strokes }).pages).toHaveLength(2);
    // Four strokes that fall on two pages only when the grid is shifted.
    const four = [0, 100, 200, 300].map((x) => rectangle({ x, y: 0, w: 60, h: 40 }));
    expect(tiled({ width: 360, height: 40, title: '', items: four }).pages.length).toBeLessThanOrEqual(2);
  });

  it('are numbered by rows from the top and from the left, without a gap', () => {
    const set = tiled(fullOfInk(600, 400), { paper: PAPERS.a4 });
    const [first] = set.pages;
    expect(set.pages.map(({ name }) => name)).toEqual(set.pages.map((_, i) => `${i + 1}`));
    const places = set.pages.map(({ row, column }) => [row, column] as const);
    expect(places).toEqual(places.toSorted(([a, b], [c, d]) => a - c || b - d));
    const top = Math.max(...set.pages.map((p) => p.cell.y + p.cell.h));
    const left = Math.min(...set.pages.map((p) => p.cell.x));
    expect(first!.cell.y + first!.cell.h).toBe(top);
    expect(first!.cell.x).toBe(left);
  });

  it('share their registration marks with their neighbors', () => {
    const cells = tiled(fullOfInk(900, 700)).pages.map(({ row, column, cell: box }) => ({
      row,
      column,
      box,
    }));
    let joints = 0;
    for (const cell of cells) {
      for (const joint of jointsOf(cell, cells)) {
        const back = jointsOf(joint.other, cells).find((j) => j.other === cell);
        expect(back && marksOf(back)).toEqual(marksOf(joint));
        joints++;
      }
    }
    expect(joints).toBeGreaterThan(10);
  });

  it('name their page, its number, the pattern and the neighbors', () => {
    const set = tiled(fullOfInk(500, 200), { paper: PAPERS.a4 });
    const words = (page: PatternPage) => flatten(page.drawing.items).texts.map((t) => t.item.text);
    const first = words(set.pages[0]!);
    expect(first).toEqual(
      expect.arrayContaining(['1', `Page 1 of ${set.pages.length}`, 'A sign', 'joins 2']),
    );
    expect(words(set.pages[1]!)).toEqual(expect.arrayContaining(['2', 'joins 1']));
    // The caution is on the first page alone, in as many lines as it takes.
    expect(first.join(' ')).toContain(EN.patterns.caution);
    expect(words(set.pages[1]!).join(' ')).not.toContain(EN.patterns.caution.slice(0, 20));
  });

  it('are none for a drawing without ink, and no set where margins leave no room', () => {
    expect(tiled({ width: 10, height: 10, title: '', items: [] }).pages).toEqual([]);
    expect(tile(fullOfInk(100, 100), { setup: setupOf({ margin: 105 }), ...named })).toBeNull();
    expect(tile(fullOfInk(100, 100), { setup: setupOf({ overlap: 250 }), ...named })).toBeNull();
  });

  it('of a roll are as long as the pattern, on one length of paper where it is wide enough', () => {
    const set = tiled(fullOfInk(2000, 400), { paper: PAPERS.roll });
    expect(set).toMatchObject({ rows: 1, columns: 1, turned: true });
    expect(set.pages[0]?.drawing.height).toBe(610);
    expect(set.pages[0]?.drawing.width).toBeCloseTo(2000 + 2 * half, 6);
    const narrow = tiled(fullOfInk(2000, 400), { paper: PAPERS.roll, rollWidth: 300 });
    expect(narrow.pages[0]?.drawing.height).toBe(300);
    expect(narrow.pages).toHaveLength(2);
  });

  it('are the same every time', () => {
    const drawing = fullOfInk(700, 500);
    expect(tiled(drawing)).toEqual(tiled(drawing));
  });
});

describe('whole letters', () => {
  const lettered = letteredLine('TICKETS', 150, { x: 0, y: 0 });
  const letters = inkOf({
    width: 0,
    height: 0,
    title: '',
    items: lettered.glyphs.map((g) => polyline(g.region[0]!.outer, true)),
  }).extents;
  const drawing: Drawing = {
    width: lettered.width,
    height: 155,
    title: '',
    items: lettered.glyphs.map((g) => polyline(g.region[0]!.outer, true)),
  };
  const split = (set: PatternSet) =>
    letters.filter(
      (b) => !set.pages.some((p) => overlapOf(b, p.cell)?.w === b.w && overlapOf(b, p.cell)?.h === b.h),
    );

  it('lie on one page each, between its trim lines, where a plain grid splits some', () => {
    const whole = tile(drawing, { setup: setupOf({ wholeLetters: true }), ...named, letters });
    expect(split(whole!)).toEqual([]);
  });

  it('are left to the grid when not asked for', () => {
    const plain = tile(drawing, { setup: setupOf({}), ...named, letters });
    expect(plain!.pages.length).toBeLessThanOrEqual(
      tile(drawing, { setup: setupOf({ wholeLetters: true }), ...named, letters })!.pages.length,
    );
  });

  it('choose the paper on which they fit', () => {
    const tall = letteredLine('IT', 200);
    const items = tall.glyphs.map((g) => polyline(g.region[0]!.outer, true));
    const boxes = inkOf({ width: 0, height: 0, title: '', items }).extents;
    const set = tile(
      { width: tall.width, height: 200, title: '', items },
      { setup: setupOf({ wholeLetters: true }), ...named, letters: boxes },
    );
    expect(set?.turned).toBe(false);
  });
});

function grown(b: Box, by: number): Box {
  return { x: b.x - by, y: b.y - by, w: b.w + 2 * by, h: b.h + 2 * by };
}

function overlapOf(a: Box, b: Box): Box | null {
  const x = Math.max(a.x, b.x);
  const y = Math.max(a.y, b.y);
  const w = Math.min(a.x + a.w, b.x + b.w) - x;
  const h = Math.min(a.y + a.h, b.y + b.h) - y;
  return w > 0 && h > 0 ? { x, y, w, h } : null;
}
