import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import opentype from 'opentype.js';
import { difference, type Geom, intersection, union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Look } from '../../src/design/look.ts';
import type { Lettering, LetterLine } from '../../src/design/schema.ts';
import { areaOf, boxOf, regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { outlineTracks } from '../../src/lettering/along.ts';
import { letter } from '../../src/lettering/letter.ts';
import { standsOf } from '../../src/lettering/placed.ts';
import { setText } from '../../src/lettering/setting.ts';
import { chanceOf } from '../chance.ts';
import { runs } from '../runs.ts';
import { fontOf, SHIPPED } from './fonts.ts';
import { lettering } from './lettering.ts';

const lato = fontOf('lato');
const R = 300;
/** A round board, its border true to 3e-3 mm. */
const ROUND = regionOfRing(
  Array.from({ length: 720 }, (_, i) => ({
    x: R + R * Math.cos((i * Math.PI) / 360),
    y: R + R * Math.sin((i * Math.PI) / 360),
  })),
);
const sign = { id: 'board', w: 2 * R, h: 2 * R };
const geom = (region: Region): Geom =>
  region.map(({ outer, holes }) =>
    [outer, ...holes].map((ring) => ring.map(({ x, y }): [number, number] => [x, y])),
  );
const areaBy = (multi: ReturnType<typeof union>): number =>
  multi.reduce(
    (sum, rings) =>
      sum +
      rings.reduce((area, ring, i) => {
        const twice = ring.reduce((t, [x, y], k) => {
          const [nx, ny] = ring[(k + 1) % ring.length] ?? [x, y];
          return t + x * ny - nx * y;
        }, 0);
        return area + (i === 0 ? 1 : -1) * Math.abs(twice / 2);
      }, 0),
    0,
  );

/** Advances of a text by a second font library, in millimeters. */
function advances(text: string, capHeight: number): number[] {
  const entry = SHIPPED.find(({ id }) => id === 'lato');
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const file = readFileSync(`${root}/node_modules/${entry?.package}/${entry?.file}`);
  const other = opentype.parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
  const scale = capHeight / lato.capHeight;
  return [...text].map((c) => (other.charToGlyph(c).advanceWidth ?? 0) * scale);
}

const plain = { kerning: false, capHeight: 40, margin: 20 } as const;
const along = (
  lines: readonly LetterLine[],
  changes: Partial<Lettering> = {},
  board: Region = ROUND,
  free = false,
) =>
  letter({
    lettering: { ...lettering('', { ...plain, along: 'inside', ...changes }), lines: [...lines] },
    font: lato,
    sign,
    board,
    free,
  });
const stands = (lines: readonly LetterLine[], changes: Partial<Lettering>, board = ROUND) => {
  const set = { ...lettering('', { ...plain, along: 'inside', ...changes }), lines: [...lines] };
  const made = setText(set, () => lato, 1);
  const atFoot = lines.map(({ foot }) => foot ?? false);
  const side = set.along === 'outside' ? 'outside' : 'inside';
  return standsOf(
    made,
    outlineTracks(made.lines, board, { side, margin: set.margin, shift: set.shift, atFoot }),
  );
};

describe('text along a circle', () => {
  // By hand: on a circle of radius r a letter that is a wide takes the angle a / r. Above, letters keep their distance
  // on their baseline; below, where they lean together, at the tops of their capitals.
  it.each([
    ['inside', false, R - 20 - 40, R - 20 - 40],
    ['outside', false, R + 20, R + 20],
    ['inside', true, R - 20, R - 20 - 40],
    ['outside', true, R + 20 + 40, R + 20],
  ] as const)('stands %s, at the foot %s, by the angle of its advances', (side, foot, radius, spaced) => {
    const text = 'HARBOR';
    const own = stands([foot ? { text, foot } : { text }], { along: side });
    const wide = advances(text, 40);
    own.forEach((stand, i) => {
      const [x, y] = [stand.x - R, stand.y - R];
      expect(Math.hypot(x, y)).toBeCloseTo(radius, 1);
      const angle = foot ? Math.atan2(x, -y) : Math.atan2(x, y);
      const turn = ((foot ? 1 : -1) * angle * 180) / Math.PI;
      expect(Math.abs(stand.turn - turn)).toBeLessThan(0.02);
      const next = own[i + 1];
      if (!next) return;
      const after = foot ? Math.atan2(next.x - R, -(next.y - R)) : Math.atan2(next.x - R, next.y - R);
      const by = ((wide[i] ?? 0) + (wide[i + 1] ?? 0)) / 2;
      expect(Math.abs((after - angle) * spaced - by)).toBeLessThan(0.02);
    });
  });

  it('has a line at the top and one at the foot, upright both, in the middle of the board', () => {
    const { lettered, checks } = along([{ text: 'VILLAGE' }, { text: 'BOOKS', foot: true }]);
    expect(checks).toEqual([]);
    for (const line of [0, 1]) {
      const box = boxOf(lettered.glyphs.filter((g) => g.line === line).flatMap(({ region }) => region));
      expect((box?.x ?? 0) + (box?.w ?? 0) / 2).toBeCloseTo(R, -0.5);
      expect((box?.y ?? 0) > R).toBe(line === 0);
    }
    const ink = lettered.glyphs.flatMap(({ region }) => region);
    const straight = along([{ text: 'VILLAGE' }, { text: 'BOOKS' }], { along: undefined }).lettered;
    expect(areaBy(union(geom(ink))) / straight.ink_mm2).toBeCloseTo(1, 4);
    // Straight tops of rigid letters reach past their circle by no more than the rise of a 35 mm chord on it.
    const radii = ink.flatMap(({ outer }) => outer.map(({ x, y }) => Math.hypot(x - R, y - R)));
    expect(Math.max(...radii)).toBeLessThan(R - 20 + 35 ** 2 / 8 / (R - 60));
    expect(Math.min(...radii)).toBeGreaterThan(R - 61);
  });

  it('fills half of the outline where it is fitted, each line its own where asked', () => {
    const { lettered } = along([{ text: 'VILLAGE' }, { text: 'BOOKS', foot: true }], { fit: 'lines' });
    const widths = [0, 1].map((line) => {
      const own = lettered.glyphs.filter((g) => g.line === line);
      return own.map(({ capHeight }) => capHeight)[0] ?? 0;
    });
    const [head, foot] = widths;
    const inner = (R - 20 - Math.max(head ?? 0, foot ?? 0)) * Math.PI - 40;
    const set = setText(
      {
        ...lettering('', plain),
        lines: [
          { text: 'VILLAGE', capHeight: head },
          { text: 'BOOKS', capHeight: foot },
        ],
      },
      () => lato,
      1,
    );
    const [a, b] = set.lines.map(({ left, right }) => right - left);
    expect(a).toBeCloseTo(b ?? Number.NaN, 6);
    expect(Math.abs((a ?? 0) / inner - 1)).toBeLessThan(0.002);
  });

  it('says where a line is longer than the outline', () => {
    const { checks } = along([{ text: 'VILLAGE BOOKS AND PAPERS FOR EVERYBODY TO READ AT NIGHT' }], {
      capHeight: 50,
    });
    expect(checks).toMatchObject([
      { code: 'lettering.off-sign', severity: 'error', figures: { by: 'outline' } },
    ]);
  });
});

describe('text along any outline', () => {
  it('stands its margin off the border, its letters rigid, on every random smooth outline', () => {
    const chance = chanceOf(31);
    for (let round = 0; round < runs(4); round++) {
      const waves = [2, 3, 5].map((n) => ({ n, by: (0.12 * chance()) / n, at: 2 * Math.PI * chance() }));
      const board = regionOfRing(
        Array.from({ length: 720 }, (_, i) => {
          const a = (i * Math.PI) / 360;
          const r = R * (1 + waves.reduce((sum, { n, by, at }) => sum + by * Math.cos(n * a + at), 0));
          return { x: R + r * Math.cos(a), y: R + r * Math.sin(a) };
        }),
      );
      const side = chance() < 0.5 ? 'inside' : 'outside';
      const line = { text: 'HARBOR', ...(chance() < 0.5 ? { foot: true as const } : {}) };
      const { lettered } = along([line], { along: side, capHeight: 25, margin: 15 }, board, true);
      const ink = lettered.glyphs.flatMap(({ region }) => region);
      // What of the letters lies on the wrong side of the border, by a second polygon library.
      const wrong =
        side === 'inside' ? difference(geom(ink), geom(board)) : intersection(geom(ink), geom(board));
      expect(areaBy(wrong)).toBe(0);
      const straight = along([line], { along: undefined, capHeight: 25 }, board, true).lettered;
      expect(areaOf(ink) / straight.ink_mm2).toBeCloseTo(1, 3);
    }
  });

  it('runs straight along a straight edge', () => {
    const board = regionOfBox({ x: 0, y: 0, w: 900, h: 300 });
    for (const { turn, y } of stands([{ text: 'HARBOR' }], { along: 'inside' }, board)) {
      expect(turn).toBeCloseTo(0, 6);
      expect(y).toBeCloseTo(300 - 20 - 40, 3);
    }
  });
});

describe('ribbons', () => {
  const ribbon: Look = {
    finish: 'black',
    outline: null,
    inline: null,
    shade: null,
    ribbon: { margin: 10, notch: 30, finish: 'red' },
  };
  it('lie the margin beyond the letters, ends notched, by hand', () => {
    const { lettered } = letter({
      lettering: { ...lettering('HOME', { ...ribbon, capHeight: 50 }) },
      font: lato,
      sign: { id: 's', w: 900, h: 200 },
    });
    const [band, fill] = lettered.layers;
    expect([band?.role, fill?.role]).toEqual(['ribbon', 'fill']);
    const length = lettered.box.w + 2 * 10 + 2 * 30;
    // Two triangles, each as high as the band and as deep as the notch, are out of the rectangle.
    const whole = length * 70 - 30 * 70;
    expect(areaOf(band?.whole ?? [])).toBeCloseTo(whole, 1);
    expect(areaOf(band?.region ?? [])).toBeCloseTo(whole - areaBy(union(geom(fill?.whole ?? []))), 1);
  });

  it('leave the white between lines free between them', () => {
    const set = { ...lettering(['HOME', 'BOAT'], { ...ribbon, capHeight: 40, lineSpace: 1.5 }) };
    const [first, second] = setText(set, () => lato, 1).lines;
    const below = (first?.baseline ?? 0) - 10;
    const above = (second?.baseline ?? 0) + 40 + 10;
    expect(below - above).toBeCloseTo(0.5 * 40, 9);
  });

  it('follow what their line follows: on a circle their area is that of a ring’s piece', () => {
    const { lettered } = along([{ text: 'VILLAGE' }], {
      ...ribbon,
      ribbon: { margin: 10, notch: 0, finish: 'red' },
    });
    const set = setText(lettering('VILLAGE', plain), () => lato, 1).lines[0];
    const inner = R - 20 - 40;
    const angle = ((set?.right ?? 0) - (set?.left ?? 0) + 20) / inner;
    const area = (angle / 2) * ((inner + 50) ** 2 - (inner - 10) ** 2);
    const whole = lettered.layers.find(({ role }) => role === 'ribbon')?.whole ?? [];
    expect(Math.abs(areaOf(whole) / area - 1)).toBeLessThan(0.002);
  });
});
