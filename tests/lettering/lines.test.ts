import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import opentype from 'opentype.js';
import { difference, type Geom, union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Look } from '../../src/design/look.ts';
import type { Lettering, LetterLine } from '../../src/design/schema.ts';
import { areaOf, boxOf } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { cutOuts } from '../../src/lettering/cut-out.ts';
import { letter } from '../../src/lettering/letter.ts';
import { paintedLayers } from '../../src/lettering/painted.ts';
import type { Lettered } from '../../src/lettering/result.ts';
import { setText } from '../../src/lettering/setting.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { fontOf, SHIPPED } from './fonts.ts';
import { lettering } from './lettering.ts';

const sign = { id: 'board', w: 1200, h: 500 };
const lato = fontOf('lato');
const fonts = new Map(['lato', 'lobster', 'bebas-neue'].map((name) => [name, fontOf(name)]));
const written = (lines: readonly LetterLine[], changes: Partial<Lettering> = {}) =>
  letter({ lettering: { ...lettering('', changes), lines: [...lines] }, font: lato, fonts, sign });
const inkOf = ({ glyphs }: Lettered, line: number): Region =>
  glyphs.filter((glyph) => glyph.line === line).flatMap(({ region }) => region);

/** The tool's own regions for the other polygon library, which cuts in decimals without end. */
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

const GOLD: Look = { finish: 'gold', outline: { width: 3, finish: 'red' }, inline: null, shade: null };

/** A font file as a second library reads it. */
function otherFont(id: string) {
  const entry = SHIPPED.find((one) => one.id === id);
  const root = fileURLToPath(new URL('../..', import.meta.url));
  const file = readFileSync(`${root}/node_modules/${entry?.package}/${entry?.file}`);
  return opentype.parse(file.buffer.slice(file.byteOffset, file.byteOffset + file.byteLength));
}

describe('lines with a font of their own', () => {
  it('advance as a second font library has it, each in its own cap height', () => {
    const lines = [
      { text: 'HARBOR' },
      { text: 'BREAD', font: 'bebas-neue' },
      { text: 'No', font: 'lobster' },
    ];
    const of = (line: LetterLine) => fonts.get(line.font ?? 'lato') ?? lato;
    const made = setText({ ...lettering('', { kerning: false }), lines }, of, 1);
    lines.forEach((line, i) => {
      const name = line.font ?? 'lato';
      const other = otherFont(name);
      const units = [...line.text].reduce((sum, c) => sum + (other.charToGlyph(c).advanceWidth ?? 0), 0);
      expect(made.lines[i]?.width).toBeCloseTo((units * 100) / of(line).capHeight, 6);
    });
    const { lettered } = written(lines);
    expect(boxOf(inkOf(lettered, 1))?.h).toBeCloseTo(100, -0.5);
  });

  it('tell what their own font lacks', () => {
    const { lettered } = written([{ text: 'Ж' }, { text: 'Ж', font: 'bebas-neue' }]);
    expect(lettered.missing).toEqual(['Ж'].filter((c) => !lato.has(c) || !fontOf('bebas-neue').has(c)));
  });
});

describe('lines with a look of their own', () => {
  const lines: readonly LetterLine[] = [
    { text: 'HOME' },
    { text: 'BOAT', look: GOLD },
    { text: 'GO', look: GOLD },
  ];

  it('are layers of their own, named by the first line that looks so, equal looks together', () => {
    const { lettered } = written(lines, { capHeight: 80 });
    expect(lettered.layers.map(({ role, finish }) => [role, finish])).toEqual([
      ['fill', 'black'],
      ['outline-2', 'red'],
      ['fill-2', 'gold'],
    ]);
    const [own, , gold] = lettered.layers;
    expect(areaOf(own?.region ?? [])).toBeCloseTo(areaBy(union(geom(inkOf(lettered, 0)))), 1);
    const second = [...inkOf(lettered, 1), ...inkOf(lettered, 2)];
    expect(areaOf(gold?.region ?? [])).toBeCloseTo(areaBy(union(geom(second))), 1);
  });

  it('are what one look for all gives where all are alike', () => {
    const alike = written([
      { text: 'HOME', look: GOLD },
      { text: 'BOAT', look: GOLD },
    ]).lettered.layers;
    const plain = written([{ text: 'HOME' }, { text: 'BOAT' }], GOLD).lettered.layers;
    expect(alike.map(({ region, whole, finish }) => ({ region, whole, finish }))).toEqual(
      plain.map(({ region, whole, finish }) => ({ region, whole, finish })),
    );
  });

  it('lie over those before them where they overlap, as a second polygon library cuts them', () => {
    const near = written([{ text: 'HHHH' }, { text: 'OOOO', look: GOLD }], { lineSpace: 0.6 }).lettered;
    const over = near.layers.slice(1).flatMap(({ whole }) => whole);
    const [under] = near.layers;
    const left = areaBy(difference(geom(under?.whole ?? []), union(geom(over))));
    expect(left).toBeLessThan(areaOf(under?.whole ?? []) - 100);
    expect(areaOf(under?.region ?? [])).toBeCloseTo(left, 0);
  });

  it('have a stencil for each color, and paint what it opens', () => {
    const { lettered } = written(lines, { capHeight: 80 });
    const { set } = stencilSet(lettered, lettering('').stencil, [{ outer: [], holes: [] }]);
    expect(set.layers.map(({ role, finish }) => [role, finish])).toEqual(
      lettered.layers.map(({ role, finish }) => [role, finish]),
    );
    for (const layer of paintedLayers(lettered, false, set))
      expect(layer.painted).toBe(set.layers.find(({ role }) => role === layer.role)?.stencil.cut);
    const { placed, ...rest } = lettering('').stencil;
    const byHand = { ...rest, placed: [...placed, { layer: 'fill-2' as const, island: 0, angles: [90] }] };
    const moved = stencilSet(lettered, byHand, [{ outer: [], holes: [] }]).set;
    expect(moved.layers[0]).toEqual(set.layers[0]);
    expect(moved.layers[2]).not.toEqual(set.layers[2]);
  });

  it('are sawn as letters in their own finish, those next to a color under their edge each by its own', () => {
    const { lettered } = written(lines, { make: 'cut-out', capHeight: 80 });
    const finishes = cutOuts(lettered).map(({ label, finish }) => [label, finish]);
    expect(finishes).toEqual([
      ...[...'HOME'].map((c) => [c, 'black']),
      ...[...'BOATGO'].map((c) => [c, 'gold']),
    ]);
    const around = paintedLayers(lettered, true, null).find(({ role }) => role === 'outline-2');
    expect(areaOf(around?.painted ?? [])).toBeGreaterThan(areaOf(around?.region ?? []));
  });
});

describe('lines fitted one by one', () => {
  it('are all as wide as the room, each in a cap height of its own', () => {
    const { lettered, checks } = written([{ text: 'BREAD' }, { text: 'CAKES AND ROLLS' }, { text: 'TEA' }], {
      fit: 'lines',
      lineSpace: 1.2,
      capHeight: 20,
      outline: { width: 4, finish: 'red' },
    });
    const boxes = [0, 1, 2].map((line) => boxOf(inkOf(lettered, line)));
    for (const box of boxes) {
      expect(box?.w).toBeCloseTo(boxes[0]?.w ?? Number.NaN, 2);
      expect(box?.x).toBeCloseTo(boxes[0]?.x ?? Number.NaN, 2);
    }
    const all = boxOf(lettered.layers.flatMap(({ whole }) => whole));
    expect(all?.x).toBeCloseTo(10, 0);
    expect(all?.w).toBeCloseTo(1180, 0);
    expect(new Set(lettered.capHeights.map((mm) => Math.round(mm))).size).toBe(3);
    expect(checks.every(({ code }) => code === 'lettering.off-sign')).toBe(true);
  });
});

describe('marks before lines', () => {
  const list: readonly LetterLine[] = [
    { text: 'Menu' },
    { text: 'Bread', mark: 'number' },
    { text: 'Cakes and rolls', mark: 'number' },
    { text: 'Tea', mark: 'bullet' },
    { text: 'Milk', mark: 'number' },
  ];
  it.each(['left', 'center', 'right'] as const)('count on, and let %s lines begin at one place', (align) => {
    const { lettered } = written(list, { align, capHeight: 30 });
    const marks = [1, 2, 3, 4].map((line) =>
      lettered.glyphs
        .filter((glyph) => glyph.line === line)
        .slice(0, line === 3 ? 1 : 2)
        .map(({ character }) => character)
        .join(''),
    );
    expect(marks).toEqual(['1.', '2.', '•', '3.']);
    const begins = [1, 2, 3, 4].map((line) => {
      const own = lettered.glyphs.filter((glyph) => glyph.line === line).slice(line === 3 ? 1 : 2);
      return boxOf(own.flatMap(({ region }) => region))?.x ?? Number.NaN;
    });
    for (const x of begins) expect(x).toBeCloseTo(begins[0] ?? Number.NaN, 2);
    const all = boxOf([1, 2, 3, 4].flatMap((line) => inkOf(lettered, line)));
    const head = boxOf(inkOf(lettered, 0));
    if (!all || !head) throw new Error('lines expected');
    const held = {
      left: all.x - head.x,
      center: all.x + all.w / 2 - head.x - head.w / 2,
      right: all.x + all.w - head.x - head.w,
    };
    expect(held[align]).toBeCloseTo(0, 2);
  });

  it('stand clear of the line, and none of it is counted as typed', () => {
    const { lettered } = written(list, { capHeight: 30 });
    expect(lettered.text).toBe(list.map(({ text }) => text).join('\n'));
  });
});

describe('spacing by eye', () => {
  // The white between the letters, cut by a second polygon library out of the box between and into them.
  const whiteOf = (pair: string, optical: boolean): { white: number; near: number } => {
    const set = lettering(pair, { capHeight: 100, ...(optical ? { optical: true } : { kerning: false }) });
    const { glyphs } = letter({ lettering: set, font: lato, sign }).lettered;
    const [a, b] = glyphs.map(({ region }) => boxOf(region));
    if (!a || !b) throw new Error('two letters expected');
    const deep = 0.15 * 100;
    const y = 150 + 50;
    const low = glyphs[0]?.baseline ?? y;
    const from = a.x + a.w - deep;
    const to = b.x + deep;
    const between: Geom = [
      [
        [from, low],
        [to, low],
        [to, low + 100],
        [from, low + 100],
      ],
    ];
    const ink = glyphs.flatMap(({ region }) => region);
    // What lies behind a stem is another piece.
    const middle = (a.x + a.w + b.x) / 2;
    const pieces = difference(between, geom(ink)).filter(([outer = []]) => {
      const xs = outer.map(([x]) => x);
      return Math.min(...xs) < middle && middle < Math.max(...xs);
    });
    return { white: areaBy(pieces) / 100, near: b.x - a.x - a.w };
  };

  it('leaves as much white between any two letters as between two stems', () => {
    const stems = whiteOf('HH', false);
    expect(whiteOf('HH', true).white).toBeCloseTo(stems.white, 1);
    for (const pair of ['HO', 'HV', 'OO', 'OV', 'AV', 'AT', 'DA', 'TA', 'TH']) {
      const { white, near } = whiteOf(pair, true);
      // Sides are looked at in 64 levels; letters that would come too near a stem stay apart.
      expect(white, pair).toBeGreaterThan(stems.white - 0.5);
      if (near < 0 || near > 0.41 * stems.near) expect(white, pair).toBeLessThan(stems.white + 0.5);
    }
  });

  it('sets straight letters farthest apart, round ones nearest, and lets none touch', () => {
    // As handbooks of lettering have it (from memory): stem and stem, stem and curve, curve and curve.
    const [stems, mixed, curves] = ['HH', 'HO', 'OO'].map((pair) => whiteOf(pair, true).near);
    expect(stems).toBeGreaterThan(mixed ?? Number.NaN);
    expect(mixed).toBeGreaterThan(curves ?? Number.NaN);
    const { glyphs } = written([{ text: 'AVATAR LTD Toy' }], { optical: true }).lettered;
    const ink = glyphs.map(({ region }) => geom(region));
    ink.forEach((one, i) => {
      const next = ink[i + 1];
      if (next) expect(areaBy(union(one, next))).toBeCloseTo(areaBy(union(one)) + areaBy(union(next)), 1);
    });
  });
});
