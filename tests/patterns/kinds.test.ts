import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { characterOf } from '../../src/design/picture.ts';
import type { Picture } from '../../src/design/schema.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { subtract, union } from '../../src/geometry/clip.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { boxOf, regionOfBox, regionOfRing, ringsOf } from '../../src/geometry/region.ts';
import { boxOfPoints, perimeter } from '../../src/geometry/ring.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Box } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import type { Stencil } from '../../src/lettering/result.ts';
import { hasInk, inkOf } from '../../src/patterns/ink.ts';
import type { SignPattern } from '../../src/patterns/kind/sign.ts';
import { patternsOf, planPatterns } from '../../src/patterns/planPatterns.ts';
import type { PatternSet } from '../../src/patterns/result.ts';
import { EN } from '../../src/plan/words/en.ts';
import { fontOf } from '../lettering/fonts.ts';
import { lettering as written } from '../lettering/lettering.ts';
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
  spacing: 3,
  board,
  lettered,
  bent: false,
  seams: [],
  stencils: Array.from({ length: colors }, (_, i) => ({ finish: `color ${i}`, stencil })),
});
const pathsOn = (items: Parameters<typeof flatten>[0], layer: string) =>
  flatten(items)
    .paths.filter((p) => p.layer === layer)
    .map((p) => p.path);

/** What is written beside guide lines. */
const namesOn = (items: Parameters<typeof flatten>[0]) =>
  flatten(items)
    .texts.filter((t) => t.layer === 'guides')
    .map((t) => t.item.text);

describe('a sign', () => {
  it('to trace has the outlines of its letters, its edge, its center lines and its baseline beside them', () => {
    const [pattern] = patternsOf(sign('trace'), EN.patterns);
    const { items } = pattern!.drawing;
    expect(pathsOn(items, 'fill')).toHaveLength(3);
    const guides = pathsOn(items, 'guides').map(boxOfPath);
    expect(guides[0]).toEqual({ x: 0, y: 0, w: width, h: 200 });
    const ink = boxOf(region)!;
    const [right, top] = [ink.x + ink.w, ink.y + ink.h];
    const upright = guides.filter((b) => b.w === 0);
    expect(upright.map((b) => b.x)).toEqual([width / 2, width / 2]);
    expect(upright.map((b) => [b.y, b.y + b.h]).sort((a, b) => a[0]! - b[0]!)).toEqual([
      [0, expect.closeTo(ink.y - 2, 9)],
      [expect.closeTo(top + 2, 9), 200],
    ]);
    // The letters stand on 50, as they were set.
    const level = guides.filter((b) => b.h === 0).sort((a, b) => a.y - b.y || a.x - b.x);
    expect(level.map((b) => [b.y, b.x, b.x + b.w])).toEqual(
      [50, 100].flatMap((y) => [
        [y, 0, expect.closeTo(ink.x - 2, 9)],
        [y, expect.closeTo(right + 2, 9), expect.closeTo(width, 9)],
      ]),
    );
    expect(namesOn(items)).toEqual([...Array(4).fill('center'), ...Array(2).fill('baseline')]);
    expect(pattern!.letters).toHaveLength(3);
  });

  it('with bent lines has no straight baseline, and names nothing where there is no room', () => {
    const bent = patternsOf({ ...sign('trace'), bent: true }, EN.patterns)[0]!.drawing.items;
    expect(namesOn(bent)).toEqual(Array(4).fill('center'));
    const { x, y, w, h } = boxOf(region)!;
    const tight = { ...sign('stencil'), board: regionOfBox({ x: x - 2.5, y: y - 2.5, w: w + 5, h: h + 5 }) };
    const { items } = patternsOf(tight, EN.patterns)[0]!.drawing;
    expect(namesOn(items)).toEqual([]);
    expect(pathsOn(items, 'guides')).toHaveLength(1);
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

  it('mirrored turns the colors of pictures with its letters', () => {
    const badge: Picture = {
      id: 'picture-1',
      name: 'Flag',
      width: 20_000,
      colors: [
        { color: '#ff0000', finish: 'red', outline: 'M0 0L5000 0L5000 10000L0 10000Z' },
        { color: '#0000ff', finish: 'blue', outline: 'M5000 2000L20000 2000L20000 8000L5000 8000Z' },
      ],
    };
    const { lettered: flag } = letter({
      lettering: written(`A${characterOf(badge.id)}`, { make: 'mirrored', capHeight: 40 }),
      font: fontOf('bebas-neue'),
      pictures: [badge],
      sign: { id: 'sign', w: width, h: 200 },
    });
    const boxes = (mode: 'trace' | 'mirrored', layer: string) =>
      pathsOn(patternsOf({ ...sign(mode), lettered: flag }, EN.patterns)[0]!.drawing.items, layer).map(
        boxOfPath,
      );
    for (const layer of ['fill', 'picture-1', 'picture-2']) {
      const sorted = (all: readonly Box[]) => all.toSorted((a, b) => a.x - b.x || a.w - b.w);
      const meant = sorted(boxes('trace', layer).map((box) => ({ ...box, x: width - box.x - box.w })));
      const turned = sorted(boxes('mirrored', layer));
      expect(meant.length).toBeGreaterThan(0);
      meant.forEach(({ x, y, w, h }, k) => {
        const own = turned[k]!;
        for (const [is, of] of [
          [own.x, x],
          [own.y, y],
          [own.w, w],
          [own.h, h],
        ] as const)
          expect(is).toBeCloseTo(of, 3);
      });
    }
  });

  it('to pounce has dots all along the outlines that are traced, none farther on than asked, and no line', () => {
    const dots = pathsOn(patternsOf(sign('pounce'), EN.patterns)[0]!.drawing.items, 'fill').map(boxOfPath);
    const rings = ringsOf(region);
    const around = rings.map(perimeter).reduce((sum, one) => sum + one, 0);
    expect(dots.length).toBeGreaterThanOrEqual(around / 3);
    expect(dots.length).toBeLessThanOrEqual(around / 3 + 30);
    for (const { x, y, w, h } of dots) {
      expect(w).toBeLessThan(1);
      const middle = { x: x + w / 2, y: y + h / 2 };
      const off = rings.flatMap((ring) =>
        ring.map((from, i) => distanceToSegment(middle, from, ring[(i + 1) % ring.length]!)),
      );
      expect(Math.min(...off)).toBeLessThan(1e-6);
    }
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

  it('names guide lines whole or not at all', () => {
    const names = new Set(Object.values(EN.patterns.guide));
    let left = 0;
    // Letters of some of these heights leave less beside them on the page than a name is long.
    for (const high of [134, 140, 144, 146, 148, 150, 152]) {
      const tall = letteredLine('FIT', high, { x: 50, y: 50 });
      const long = regionOfBox({ x: -1000, y: 0, w: 2400, h: 200 });
      const [set] = planPatterns([{ ...sign('trace'), lettered: tall, board: long }], setupOf({})).sets;
      for (const page of set!.pages) {
        for (const flat of flatten(page.drawing.items).texts.filter((t) => names.has(t.item.text))) {
          const name = boxOfPoints(textCorners(flat));
          left += 1;
          for (const window of flat.clips.map(boxOfPath)) {
            expect(name.x).toBeGreaterThan(window.x - 0.01);
            expect(name.y).toBeGreaterThan(window.y - 0.01);
            expect(name.x + name.w).toBeLessThan(window.x + window.w + 0.01);
            expect(name.y + name.h).toBeLessThan(window.y + window.h + 0.01);
          }
        }
      }
    }
    expect(left).toBeGreaterThan(0);
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

  const stickOf = (axis: 'x' | 'y', length: number, places: readonly number[]) => ({
    axis,
    length,
    marks: places.map((at, i) => ({ at, shown: at, name: `P${i}`, edge: 'low' as const })),
  });
  const sticksOf = (...sticks: ReturnType<typeof stickOf>[]) =>
    ({ kind: 'sticks', sticks, measure: { unit: 'mm', fraction: '16' } }) as const;

  it.each(['x', 'y'] as const)('a stick along %s has every mark at its distance from the datum', (axis) => {
    const [pattern] = patternsOf(sticksOf(stickOf(axis, 985, [10, 10.001, 55.5, 57, 900])), EN.patterns);
    const places = pathsOn(pattern!.drawing.items, 'marks').map((p) => boxOfPath(p).y);
    expect(places.map((p) => Math.round(p * 1e6) / 1e6).sort((a, b) => a - b)).toEqual([10, 55.5, 57, 900]);
    expect(pattern!.drawing.height).toBe(985);
    const words = flatten(pattern!.drawing.items).texts.map((t) => t.item.text);
    expect(words.find((w) => w.includes('P0'))).toContain('P1');
  });

  it('sticks that are cut into strips and joined line on line have every mark where it was, each once', () => {
    const length = fc.integer({ min: 300, max: 3000 });
    fc.assert(
      fc.property(
        length,
        fc.uniqueArray(fc.integer({ min: 0, max: 1000 }), { minLength: 1, maxLength: 40 }),
        fc.constantFrom({ w: 190, h: 254 }, { w: 198, h: 285 }, { w: 597, h: 4990 }),
        (whole, shares, room) => {
          const places = shares.map((share) => (share / 1000) * whole).sort((a, b) => a - b);
          const request = sticksOf(stickOf('x', whole, places), stickOf('y', 700, [0, 350]));
          const found = { x: [] as number[], y: [] as number[] };
          const joined = { x: 0, y: 0 };
          for (const { drawing } of patternsOf(request, EN.patterns, room)) {
            expect(drawing.width).toBeLessThanOrEqual(room.w);
            expect(drawing.height).toBeLessThanOrEqual(room.h);
            for (const strip of drawing.items) {
              if (strip.kind !== 'group') continue;
              // As a person joins them: by the bold lines across, the first of a strip on the last of the one before.
              const across = pathsOn(strip.items, 'stick').map(boxOfPath);
              const outline = across[0]!;
              const lines = across.filter((box) => box.h === 0).map((box) => box.y);
              const foot = Math.min(...lines);
              const end = lines.length > 1 ? Math.max(...lines) : outline.h;
              const axis = joined.x < whole - 1e-6 ? 'x' : 'y';
              const ticks = pathsOn(strip.items, 'marks').map((path) => boxOfPath(path).y);
              found[axis].push(...ticks.map((at) => at - foot + joined[axis]));
              joined[axis] += end - foot;
            }
          }
          expect(joined.x).toBeCloseTo(whole, 6);
          expect(joined.y).toBeCloseTo(700, 6);
          expect(found.y.map((at) => Math.round(at * 1e6) / 1e6)).toEqual([0, 350]);
          const sorted = [...found.x].sort((a, b) => a - b);
          const apart = places.filter((at, i) => i === 0 || at - places[i - 1]! >= 0.01);
          expect(sorted.length).toBe(apart.length);
          for (const [i, at] of sorted.entries()) expect(at).toBeCloseTo(apart[i]!, 6);
        },
      ),
    );
  });

  it('a whole face has its parts, levels and keep-clears and leaves its bare middle unprinted', () => {
    const rim = subtract(
      regionOfBox({ x: 0, y: 0, w: 985, h: 1981 }),
      regionOfBox({ x: 38, y: 38, w: 909, h: 1905 }),
    );
    const face = {
      kind: 'face',
      box: { x: 0, y: 0, w: 985, h: 1981 },
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
