import { describe, expect, it } from 'vitest';
import { flatten } from '../../src/drawing/walk.ts';
import { subtract, union } from '../../src/geometry/clip.ts';
import { ellipseRing } from '../../src/geometry/curve.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Stencil } from '../../src/lettering/result.ts';
import { hasInk, inkOf } from '../../src/patterns/ink.ts';
import type { SignPattern } from '../../src/patterns/kind/sign.ts';
import { patternsOf, planPatterns } from '../../src/patterns/planPatterns.ts';
import type { PatternSet } from '../../src/patterns/result.ts';
import { EN } from '../../src/plan/words/en.ts';
import { letteredLine } from '../output/letters.ts';
import { PAPERS, setupOf } from './setup.ts';

const lettered = letteredLine('FIT', 100, { x: 50, y: 50 });
const width = lettered.width + 100;
const board = regionOfBox({ x: 0, y: 0, w: width, h: 200 });
const region = lettered.layers[0]!.region;
/** A registration hole, as the stencil's own room makes it. */
const hole = regionOfRing(ellipseRing({ x: 27, y: 27, w: 6, h: 6 }));
const stencil: Stencil = {
  sheet: subtract(regionOfBox({ x: 20, y: 20, w: width - 40, h: 160 }), union([region, hole])),
  cut: region,
  bridges: [],
  islands: [],
  loose: 0,
  single: 0,
};
const sign = (mode: SignPattern['mode'], colors = 1): SignPattern => ({
  kind: 'sign',
  id: 'sign',
  name: 'Sign',
  mode,
  board,
  lettered,
  stencils: Array.from({ length: colors }, (_, i) => ({ finish: `color ${i}`, stencil })),
});
const pathsOn = (items: Parameters<typeof flatten>[0], layer: string) =>
  flatten(items)
    .paths.filter((p) => p.layer === layer)
    .map((p) => p.path);

describe('a sign', () => {
  it('to trace has the outlines of its letters, its edge and its center lines', () => {
    const [pattern] = patternsOf(sign('trace'), EN.patterns);
    const { items } = pattern!.drawing;
    expect(pathsOn(items, 'fill')).toHaveLength(3);
    const guides = pathsOn(items, 'guides').map(boxOfPath);
    expect(guides[0]).toEqual({ x: 0, y: 0, w: width, h: 200 });
    expect(guides[1]).toMatchObject({ x: width / 2, w: 0, h: 200 });
    expect(guides[2]).toMatchObject({ y: 100, w: width, h: 0 });
    expect(pattern!.letters).toHaveLength(3);
  });

  it('mirrored is its own mirror image about the middle of the board', () => {
    const plain = pathsOn(patternsOf(sign('trace'), EN.patterns)[0]!.drawing.items, 'fill').map(boxOfPath);
    const turned = pathsOn(patternsOf(sign('mirrored'), EN.patterns)[0]!.drawing.items, 'fill').map(
      boxOfPath,
    );
    plain.forEach((box, i) => {
      expect(turned[i]!.x).toBeCloseTo(width - box.x - box.w, 6);
      expect(turned[i]!.y).toBeCloseTo(box.y, 9);
    });
  });

  it('as a stencil shows all that is cut out of the sheet, letters and registration holes, one pattern a color', () => {
    const patterns = patternsOf(sign('stencil', 2), EN.patterns);
    expect(patterns.map((p) => p.title)).toEqual([
      'Sign, color 1 of 2: color 0',
      'Sign, color 2 of 2: color 1',
    ]);
    for (const { drawing } of patterns) {
      const cut = pathsOn(drawing.items, 'cut').map(boxOfPath);
      expect(cut).toHaveLength(stencil.cut.length + 1);
      expect(cut.some((b) => Math.abs(b.w - 6) < 0.1 && Math.abs(b.h - 6) < 0.1)).toBe(true);
      expect(pathsOn(drawing.items, 'sheet').map(boxOfPath)).toEqual([
        { x: 20, y: 20, w: width - 40, h: 160 },
      ]);
    }
  });
});

describe('small text on a large board', () => {
  const wide: SignPattern = { ...sign('trace'), board: regionOfBox({ x: -1000, y: -800, w: 2400, h: 1800 }) };
  const wordsOn = (set: PatternSet) =>
    set.pages.flatMap((page) => flatten(page.drawing.items).texts.map((t) => t.item.text));

  it('prints no page that has only the edge and the center lines of the board, and says so', () => {
    const [set] = planPatterns([wide], setupOf({})).sets;
    const ink = inkOf(patternsOf(wide, EN.patterns)[0]!.drawing, ['guides']);
    expect(set!.pages.length).toBeGreaterThan(0);
    for (const { cell } of set!.pages) expect(hasInk(ink, cell)).toBe(true);
    // No more than the letters' own box takes by the tiling formula.
    const room = setupOf({}).paper;
    const [w, h] = [room.width - 25.4, (room.height ?? 0) - 25.4];
    const along = (length: number, page: number) => Math.ceil((length - 12.7) / (page - 12.7));
    const { main } = ink;
    expect(set!.pages.length).toBeLessThanOrEqual(
      Math.min(along(main!.w, w) * along(main!.h, h), along(main!.w, h) * along(main!.h, w)),
    );
    expect(wordsOn(set!)).toContain(EN.patterns.bare);
  });

  it('shows all of a board that takes no further page', () => {
    const [set] = planPatterns([sign('trace')], setupOf({ paper: PAPERS.tabloid })).sets;
    expect(set!.pages).toHaveLength(1);
    expect(wordsOn(set!)).not.toContain(EN.patterns.bare);
    const low = Math.min(...set!.pages.map((p) => p.cell.y));
    const high = Math.max(...set!.pages.map((p) => p.cell.y + p.cell.h));
    expect([low, high]).toEqual([0, 200]);
  });
});

describe('templates and sticks', () => {
  it('a part is drawn from its own lower left corner, holes and all', () => {
    const ring = subtract(
      regionOfBox({ x: 300, y: 500, w: 200, h: 100 }),
      regionOfBox({ x: 350, y: 520, w: 50, h: 50 }),
    );
    const [pattern] = patternsOf({ kind: 'part', id: 'p', name: 'Panel', region: ring }, EN.patterns);
    expect(pattern!.drawing).toMatchObject({ width: 200, height: 100 });
    const boxes = pathsOn(pattern!.drawing.items, 'parts').map(boxOfPath);
    expect(boxes).toEqual([
      { x: 0, y: 0, w: 200, h: 100 },
      { x: 50, y: 20, w: 50, h: 50 },
    ]);
  });

  it.each(['x', 'y'] as const)('a stick along %s has every mark at its distance from the datum', (axis) => {
    const marks = [10, 10.001, 55.5, 57, 900].map((at, i) => ({
      at,
      shown: at,
      name: `P${i}`,
      edge: 'low' as const,
    }));
    const [pattern] = patternsOf(
      {
        kind: 'stick',
        axis,
        length: 985,
        marks,
        measure: { unit: 'mm', fraction: '16' },
      },
      EN.patterns,
    );
    const places = pathsOn(pattern!.drawing.items, 'marks').map((p) => boxOfPath(p)[axis]);
    expect(places.map((p) => Math.round(p * 1e6) / 1e6).sort((a, b) => a - b)).toEqual([10, 55.5, 57, 900]);
    expect(axis === 'x' ? pattern!.drawing.width : pattern!.drawing.height).toBe(985);
    const words = flatten(pattern!.drawing.items).texts.map((t) => t.item.text);
    expect(words.find((w) => w.includes('P0'))).toContain('P1');
  });

  it('a whole face has its parts, levels and keep-clears and leaves its bare middle unprinted', () => {
    const rim = subtract(
      regionOfBox({ x: 0, y: 0, w: 985, h: 1981 }),
      regionOfBox({ x: 38, y: 38, w: 909, h: 1905 }),
    );
    const face = {
      kind: 'face',
      width: 985,
      height: 1981,
      levels: [{ id: 'rim', region: rim }],
      keepClears: [{ x: 0, y: 0, w: 60, h: 40 }],
      parts: [{ id: 'p', name: 'Door', region: regionOfBox({ x: 100, y: 100, w: 350, h: 1500 }) }],
    } as const;
    const { sets, checks } = planPatterns([face], setupOf({}));
    expect(checks).toEqual([]);
    expect(sets[0]).toMatchObject({ for: 'face', width: 985, height: 1981 });
    expect(sets[0]!.pages.length).toBeLessThan(sets[0]!.rows * sets[0]!.columns);
  });
});

describe('checks', () => {
  const big = {
    kind: 'part',
    id: 'big',
    name: 'Big',
    region: regionOfBox({ x: 0, y: 0, w: 9000, h: 9000 }),
  } as const;

  it('a paper without room is named', () => {
    const { sets, checks } = planPatterns([big], setupOf({ margin: 100 }));
    expect(sets).toEqual([]);
    expect(checks).toEqual([
      { code: 'patterns.no-room', severity: 'error', parts: ['big'], figures: { paper: 'letter' } },
    ]);
  });

  it('very many pages are told', () => {
    const { checks, sets } = planPatterns([big], setupOf({}));
    expect(checks).toEqual([
      {
        code: 'patterns.too-many-pages',
        severity: 'warning',
        parts: ['big'],
        figures: { pages: sets[0]!.pages.length },
      },
    ]);
  });
});
