import { describe, expect, it } from 'vitest';
import type { Drawing } from '../../src/drawing/drawing.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { intersect, offset, regionOfRings, subtract, union } from '../../src/geometry/clip.ts';
import { ringsOfPath } from '../../src/geometry/curve.ts';
import { areaOf, boxOf, regionOfBox, translateRegion } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { type Printing, printOf } from '../../src/patterns/kind/print.ts';
import type { SignPattern } from '../../src/patterns/kind/sign.ts';
import { planPattern } from '../../src/patterns/planPatterns.ts';
import type { PatternPage } from '../../src/patterns/result.ts';
import { fontOf } from '../lettering/fonts.ts';
import { lettering } from '../lettering/lettering.ts';
import { setupOf } from './setup.ts';

const INK = '#1e5f74';
const font = fontOf('bebas-neue');

function printed(
  id: string,
  text: string,
  w: number,
  h: number,
  capHeight: number,
): SignPattern & { readonly printing: Printing } {
  const board = regionOfBox({ x: 0, y: 0, w, h });
  const made = lettering(text, { make: 'printed', capHeight, finish: 'ink' });
  const { lettered } = letter({ lettering: made, font, sign: { id, w, h } });
  const printing = { ground: '#eeddbb', bleed: 3, photos: [], colors: { ink: INK }, blocks: [] };
  const more = { spacing: 3, bent: false, stencils: [], seams: [] };
  return { kind: 'sign', id, name: id, mode: 'printed', board, lettered, printing, ...more };
}

/** What of a color is on a page, in the page's millimeters, cut by all that clips it. */
const inkOn = ({ items }: Pick<Drawing, 'items'>, color: string): Region =>
  flatten(items)
    .paths.filter(({ item }) => item.fill === color)
    .reduce<Region>((all, { path, clips }) => {
      const own = clips.reduce(
        (left, clip) => intersect(left, regionOfRings(ringsOfPath(clip), 'nonzero')),
        regionOfRings(ringsOfPath(path), 'evenodd'),
      );
      return union([all, own]);
    }, []);

/** Where the ground of a page begins: as a person lays it, by the edge of the picture. */
const cornerOf = (page: PatternPage) => boxOf(inkOn(page.drawing, '#eeddbb')) ?? { x: 0, y: 0, w: 0, h: 0 };

/** The part of the picture on a page: its outermost clip. */
const windowOn = (page: PatternPage) => {
  const [clip = []] = flatten(page.drawing.items).paths.find(({ clips }) => clips.length > 0)?.clips ?? [];
  return boxOf(regionOfRings(ringsOfPath(clip), 'nonzero')) ?? { x: 0, y: 0, w: 0, h: 0 };
};

describe('a printed sign', () => {
  it('larger than the paper comes out as it is drawn once its pages are laid over each other, within 0.1 mm', () => {
    const sign = printed('long', 'BREAD & ROLLS', 900, 260, 150);
    const setup = setupOf({});
    const { sets, checks } = planPattern({ kind: 'prints', signs: [sign] }, setup);
    expect(checks).toEqual([]);
    const [set] = sets;
    if (!set) throw new Error('no pages');
    expect(set.pages.length).toBe(set.rows * set.columns);
    expect(set.pages.length).toBeGreaterThan(3);
    const print = printOf(sign);
    expect([print.w, print.h]).toEqual([906, 266]);
    const whole = inkOn(print, INK);
    const laid: Region[] = [];
    const grounds: Region[] = [];
    for (const page of set.pages) {
      const corner = cornerOf(page);
      const by = { x: page.window.x - corner.x, y: page.window.y - corner.y };
      // On the sheet, inside its margins.
      const { left, bottom, right, top } = setup.pages.margin;
      expect(corner.x).toBeGreaterThanOrEqual(left);
      expect(corner.y).toBeGreaterThanOrEqual(bottom);
      expect(corner.x + corner.w).toBeLessThanOrEqual(page.drawing.width - right);
      expect(corner.y + corner.h).toBeLessThanOrEqual(page.drawing.height - top);
      laid.push(translateRegion(inkOn(page.drawing, INK), by.x, by.y));
      grounds.push(translateRegion(inkOn(page.drawing, '#eeddbb'), by.x, by.y));
    }
    const stitched = union(laid);
    // No ink is farther than a tenth of a millimeter from where it should be: what differs is thinner than that.
    const differs = areaOf(subtract(stitched, whole)) + areaOf(subtract(whole, stitched));
    expect(areaOf(whole)).toBeGreaterThan(30_000);
    expect(differs).toBeLessThan(0.5);
    // The same as a length: each lies in the other grown by less than a tenth of a millimeter.
    expect(areaOf(subtract(stitched, offset(whole, 0.02, 'miter')))).toBe(0);
    expect(areaOf(subtract(whole, offset(stitched, 0.02, 'miter')))).toBe(0);
    expect(areaOf(union(grounds))).toBeCloseTo(906 * 266, 0);
    // Neighbors share the overlap that is asked for.
    const [first, second] = set.pages;
    const shared = (first?.window.x ?? 0) + (first?.window.w ?? 0) - (second?.window.x ?? 0);
    expect(shared).toBeCloseTo(setup.pages.overlap, 6);
  });

  it('has one paper with all blocks on it: one line to trim, and pages that come out as drawn within 0.1 mm', () => {
    const lead = printed('long', 'BREAD', 700, 200, 90);
    const blockAt = (text: string, x: number, y: number, ground: string | null) => {
      const { board, lettered, printing } = printed(text, text, 420, 120, 60);
      return { at: { x, y }, board, lettered, ground, photos: printing.photos };
    };
    // One within the notice, in its color; one beyond its right edge, in a color of its own.
    const blocks = [blockAt('ROLLS', 20, 40, null), blockAt('CAKES', 600, 30, '#cc4433')];
    const sign = { ...lead, printing: { ...lead.printing, blocks } };
    const print = printOf(sign);
    // By hand: 700 x 200, and 320 x 120 of the second block beyond it; bleed of 3 all around.
    expect([print.w, print.h]).toEqual([1020 + 6, 206]);
    const trims = flatten(print.items).paths.filter(({ layer }) => layer === 'trim');
    expect(trims).toHaveLength(1);
    const trimmed = trims.map(({ path }) => regionOfRings(ringsOfPath(path), 'evenodd'))[0] ?? [];
    expect(areaOf(trimmed)).toBeCloseTo(700 * 200 + 320 * 120, 3);
    const { sets, checks } = planPattern({ kind: 'prints', signs: [sign] }, setupOf({}));
    expect(checks).toEqual([]);
    expect(sets).toHaveLength(1);
    for (const color of [INK, '#cc4433']) {
      const whole = inkOn(print, color);
      const stitched = union(
        (sets[0]?.pages ?? []).map((page) => {
          // As a person lays it: by its picture's clip, whose lower left is the window's.
          const corner = windowOn(page);
          return translateRegion(
            inkOn(page.drawing, color),
            page.window.x - corner.x,
            page.window.y - corner.y,
          );
        }),
      );
      expect(areaOf(whole)).toBeGreaterThan(10_000);
      expect(areaOf(subtract(stitched, offset(whole, 0.02, 'miter')))).toBe(0);
      expect(areaOf(subtract(whole, offset(stitched, 0.02, 'miter')))).toBe(0);
    }
    // The red runs on into the bleed on three sides, and ends at the block's left edge, on the notice.
    const red = boxOf(union([inkOn(print, '#cc4433'), inkOn(print, INK)]));
    expect((red?.x ?? 0) + (red?.w ?? 0)).toBeCloseTo(1026, 2);
  });

  it('shares a page with others where they fit, none over another, and is trimmed along its board', () => {
    const signs = [
      printed('a', 'EGGS', 80, 50, 20),
      printed('b', 'MILK', 80, 50, 20),
      printed('c', 'TEA', 55, 40, 20),
      printed('d', 'OPEN FROM EIGHT TO FIVE', 190, 60, 12),
    ];
    const { sets } = planPattern({ kind: 'prints', signs }, setupOf({}));
    expect(sets.map((set) => set.pages.length)).toEqual([1]);
    const [page] = sets.flatMap((set) => set.pages);
    if (!page) throw new Error('no page');
    const grounds = flatten(page.drawing.items)
      .paths.filter(({ item }) => item.fill === '#eeddbb')
      .map(({ path }) => regionOfRings(ringsOfPath(path), 'nonzero'));
    expect(grounds.length).toBe(4);
    expect(areaOf(union(grounds))).toBeCloseTo(2 * 86 * 56 + 61 * 46 + 196 * 66, 3);
  });

  it('finds no paper too small without being told', () => {
    const setup = setupOf({});
    const tight = {
      ...setup,
      pages: { ...setup.pages, margin: { left: 100, right: 100, top: 100, bottom: 100 } },
    };
    const { sets, checks } = planPattern(
      { kind: 'prints', signs: [printed('a', 'EGGS', 80, 50, 20)] },
      tight,
    );
    expect(sets).toEqual([]);
    expect(checks.map(({ code }) => code)).toEqual(['patterns.no-room']);
  });
});
