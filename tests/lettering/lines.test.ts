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
