import { describe, expect, it } from 'vitest';
import { characterOf, pictureOf } from '../../src/design/picture.ts';
import type { Picture } from '../../src/design/schema.ts';
import { aspectOf, sidesOf as pictureSides, sizeBySide } from '../../src/editor/edit/letterSizes.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { areaOf, boxOf } from '../../src/geometry/region.ts';
import type { Path, Point } from '../../src/geometry/shape.ts';
import { cutOuts } from '../../src/lettering/cut-out.ts';
import { letter } from '../../src/lettering/letter.ts';
import { ORNAMENT_IDS, ORNAMENTS } from '../../src/lettering/picture/ornaments.ts';
import { pathOfOutline } from '../../src/lettering/picture/outline.ts';
import { withPictures } from '../../src/lettering/picture/withPictures.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { fontOf, SHIPPED } from './fonts.ts';
import { faultsOf } from './held.ts';
import { lettering, stencilOptions } from './lettering.ts';

/** A red square with a blue one in the middle of it, and a hole in that. */
const BADGE: Picture = {
  id: 'picture-3',
  name: 'Badge',
  width: 10_000,
  colors: [
    { color: '#ff0000', finish: 'red', outline: 'M0 0L10000 0L10000 10000L0 10000Z' },
    {
      color: '#0000ff',
      finish: 'blue',
      outline: 'M2000 2000L8000 2000L8000 8000L2000 8000ZM4000 4000L4000 6000L6000 6000L6000 4000Z',
    },
  ],
};
const inColors = (red: string | null, blue: string | null): Picture => ({
  ...BADGE,
  colors: BADGE.colors.map((color, i) => ({ ...color, finish: i === 0 ? red : blue })),
});

const lato = fontOf('lato');
const sign = { id: 'board', w: 3000, h: 300 };
const drawn = (character: string, changes: Parameters<typeof lettering>[1] = {}) =>
  letter({ lettering: lettering(character, { fit: 'none', ...changes }), font: lato, sign });

/** Straight pieces of closed contours, curves in 24 each: a twin of the tool's flattening. */
function sidesOf(path: Path): [Point, Point][] {
  const sides: [Point, Point][] = [];
  let start: Point = { x: 0, y: 0 };
  let from = start;
  const to = (p: Point) => {
    sides.push([from, p]);
    from = p;
  };
  for (const c of path) {
    if (c.op === 'M') {
      start = c;
      from = c;
    } else if (c.op === 'Z') to(start);
    else if (c.op === 'L') to(c);
    else {
      const a = from;
      for (let i = 1; i <= 24; i += 1) {
        const t = i / 24;
        const u = 1 - t;
        const at = (p: number, q: number, r: number, s: number) =>
          u ** 3 * p + 3 * u * u * t * q + 3 * u * t * t * r + t ** 3 * s;
        to({ x: at(a.x, c.x1, c.x2, c.x), y: at(a.y, c.y1, c.y2, c.y) });
      }
    }
  }
  return sides;
}

/** Area by the nonzero rule, a scan line in every unit: windings are summed from side to side. */
function scannedArea(path: Path): number {
  const { y, h } = boxOfPath(path);
  const sides = sidesOf(path);
  let area = 0;
  for (let at = y + 0.5; at < y + h; at += 1) {
    const hits = sides
      .filter(([a, b]) => a.y <= at !== b.y <= at)
      .map(([a, b]) => ({ x: a.x + ((at - a.y) / (b.y - a.y)) * (b.x - a.x), way: b.y > a.y ? 1 : -1 }))
      .sort((a, b) => a.x - b.x);
    let winding = 0;
    hits.forEach(({ x, way }, i) => {
      winding += way;
      const next = hits[i + 1];
      if (winding !== 0 && next) area += next.x - x;
    });
  }
  return area;
}

describe('ornaments', () => {
  it('stand in one list, each once, in thousandths of the cap height', () => {
    expect(ORNAMENTS.map(({ id }) => id)).toEqual(ORNAMENT_IDS);
    expect(new Set(ORNAMENTS.map(({ character }) => character)).size).toBe(ORNAMENTS.length);
    for (const { id, width, outline } of ORNAMENTS) {
      const { x, y, w, h } = boxOfPath(pathOfOutline(outline));
      expect(Math.abs(x), id).toBeLessThan(1.5);
      expect(Math.abs(w - width), id).toBeLessThan(2);
      expect(y, id).toBeGreaterThan(-1.5);
      expect(y + h, id).toBeLessThan(1001.5);
    }
  });

  it('are drawn for characters that a font lacks, between its baseline and its caps', () => {
    for (const { id } of SHIPPED) {
      const font = fontOf(id);
      const with1 = withPictures(font, []);
      for (const { character } of ORNAMENTS) {
        if (font.has(character)) {
          expect(with1.outline(character)).toEqual(font.outline(character));
          continue;
        }
        expect(with1.has(character)).toBe(true);
        const { x, y, w, h } = boxOfPath(with1.outline(character));
        const slack = font.capHeight * 0.002;
        expect(x + w).toBeLessThan(with1.advance(character));
        expect(y).toBeGreaterThan(font.foot - slack);
        expect(y + h).toBeLessThan(font.foot + font.capHeight + slack);
      }
      expect(with1.has('\u{1F300}')).toBe(font.has('\u{1F300}'));
    }
  });

  it('cover what a scan of their outlines by the nonzero rule covers', () => {
    for (const { id, character, outline } of ORNAMENTS) {
      const { lettered } = drawn(character, { capHeight: 1000 });
      const area = scannedArea(pathOfOutline(outline));
      expect(Math.abs(lettered.ink_mm2 - area) / area, id).toBeLessThan(0.002);
    }
  });

  it('hold together as stencils, and fall out as sawn pieces with their holes', () => {
    for (const { id, character } of ORNAMENTS) {
      const { lettered, checks } = drawn(character, { capHeight: 150 });
      expect(checks, id).toEqual([]);
      const board = [{ outer: [], holes: [] }];
      const options = stencilOptions({ bridgeWidth: 3, tongue: 1 });
      const { set } = stencilSet(lettered, options, board);
      for (const { stencil } of set.layers) {
        expect(
          faultsOf(
            stencil,
            set.sheet,
            lettered.glyphs.flatMap((g) => g.region),
            3,
          ),
          id,
        ).toEqual([]);
      }
      const pieces = cutOuts(lettered);
      const sum = pieces.reduce((total, { region }) => total + areaOf(region), 0);
      expect(sum).toBeCloseTo(lettered.ink_mm2, 6);
    }
  });

  it('are sized, spaced and bent as letters are, and typed with or without the sign of a picture', () => {
    const star = '\u2605';
    const { lettered } = letter({
      lettering: lettering(`${star} OPEN ${star}\uFE0F`, { arcRise: 40 }),
      font: lato,
      sign,
    });
    expect(lettered.missing).toEqual([]);
    expect(lettered.glyphs.map(({ character }) => character).join('')).toBe(`${star}OPEN${star}`);
    const [first, last] = [lettered.glyphs[0], lettered.glyphs.at(-1)];
    const [a, b] = [boxOf(first?.region ?? []), boxOf(last?.region ?? [])];
    // The arch is the same on both sides, but for the middle of advances and that of ink.
    expect(a?.y).toBeCloseTo(b?.y ?? 0, 1);
    expect(a?.w).toBeCloseTo(b?.w ?? 0, 1);
  });
});

describe('pictures of a design', () => {
  const badge = characterOf('picture-3');
  const with1 = (picture: Picture, changes: Parameters<typeof lettering>[1] = {}) =>
    letter({ lettering: lettering(`A${badge}`, changes), font: lato, sign, pictures: [picture] }).lettered;
  const told = (picture: Picture, changes: Parameters<typeof lettering>[1] = {}) =>
    with1(picture, changes).layers.map(({ role, finish, region, whole }) => ({
      role,
      finish,
      seen: Math.round(areaOf(region)),
      painted: Math.round(areaOf(whole)),
    }));
  const a = Math.round(drawn('A').lettered.ink_mm2);

  it('stand for characters by the number of their ids, and are told by their names', () => {
    for (const id of ['picture-1', 'picture-3', 'picture-6399']) expect(pictureOf(characterOf(id))).toBe(id);
    expect(pictureOf('A')).toBe(null);
    expect(with1(BADGE).text).toBe('A[Badge]');
    expect(letter({ lettering: lettering(badge), font: lato, sign }).lettered.missing).toEqual([badge]);
  });

  it('have a layer for each finish, painted on under those that follow', () => {
    expect(told(BADGE)).toEqual([
      { role: 'fill', finish: 'black', seen: a, painted: a },
      { role: 'picture-1', finish: 'red', seen: 6800, painted: 10_000 },
      { role: 'picture-2', finish: 'blue', seen: 3200, painted: 3200 },
    ]);
  });

  it('are merged with the letters, or with each other, where they share a finish', () => {
    expect(told(inColors(null, 'blue'))).toEqual([
      { role: 'fill', finish: 'black', seen: a + 6800, painted: a + 10_000 },
      { role: 'picture-1', finish: 'blue', seen: 3200, painted: 3200 },
    ]);
    // What lies over it is the letters': they go on first, and red must not cover them.
    expect(told(inColors('red', null))).toEqual([
      { role: 'fill', finish: 'black', seen: a + 3200, painted: a + 3200 },
      { role: 'picture-1', finish: 'red', seen: 6800, painted: 6800 },
    ]);
    expect(told(inColors('red', 'red')).map(({ seen }) => seen)).toEqual([a, 10_000]);
    expect(told(inColors(null, null))).toEqual([
      { role: 'fill', finish: 'black', seen: a + 10_000, painted: a + 10_000 },
    ]);
  });

  it('are sawn whole, with the other colors painted on', () => {
    expect(told(BADGE, { make: 'cut-out' })).toEqual([
      { role: 'fill', finish: 'black', seen: a, painted: a + 10_000 },
      { role: 'picture-1', finish: 'red', seen: 6800, painted: 10_000 },
      { role: 'picture-2', finish: 'blue', seen: 3200, painted: 3200 },
    ]);
    expect(cutOuts(with1(BADGE, { make: 'cut-out' })).map(({ label }) => label)).toEqual(['A', badge]);
  });

  it('have a stencil for each color, on one sheet with the same holes', () => {
    const { set } = stencilSet(with1(BADGE), stencilOptions({ bridgeWidth: 3 }), []);
    expect(set.layers.map(({ role }) => role)).toEqual(['fill', 'picture-1', 'picture-2']);
    for (const { stencil } of set.layers) expect(stencil.loose).toBe(0);
  });

  it('are as wide or as high as they were measured', () => {
    const badge = characterOf(BADGE.id);
    const wide: Picture = { ...BADGE, width: 25_000 };
    const sides = { capHeight: 80, aspect: aspectOf(badge, [wide]) ?? Number.NaN };
    for (const side of ['height', 'width'] as const) {
      const size = sizeBySide(side, 137.5, sides);
      expect(pictureSides({ size }, sides)[side]).toBeCloseTo(137.5, 9);
      const lines = [{ text: badge, sizes: [{ from: 0, count: 1, size, stand: 'baseline' as const }] }];
      const made = { ...lettering('', { capHeight: 80 }), lines };
      // Outlined in ten thousandths of its height: a square of 10000 in a picture that is said to be 25000 wide.
      const box = boxOf(
        letter({ lettering: made, font: lato, sign, pictures: [wide] }).lettered.glyphs.flatMap(
          (g) => g.region,
        ),
      );
      expect(side === 'height' ? box?.h : (box?.w ?? 0) * 2.5).toBeCloseTo(137.5, 2);
    }
  });
});
