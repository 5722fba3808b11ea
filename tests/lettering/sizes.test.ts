import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import type { Lettering } from '../../src/design/schema.ts';
import { intersect } from '../../src/geometry/clip.ts';
import { areaOf, boxOf } from '../../src/geometry/region.ts';
import { narrowestGap } from '../../src/lettering/legibility.ts';
import { letter } from '../../src/lettering/letter.ts';
import { setText } from '../../src/lettering/setting.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { bytesOf, fontOf } from './fonts.ts';
import { lettering, stencilOptions } from './lettering.ts';

type Sizes = NonNullable<Lettering['lines'][number]['sizes']>;
type Stand = Sizes[number]['stand'];

const sign = { id: 's', w: 2000, h: 900 };
const sized = (text: string, sizes: Sizes, changes: Partial<Lettering> = {}): Lettering => ({
  ...lettering(text, changes),
  lines: [{ text, sizes }],
});
const lettered = (text: string, sizes: Sizes, changes: Partial<Lettering> = {}, font = 'lato') =>
  letter({ lettering: sized(text, sizes, changes), font: fontOf(font), sign }).lettered;
const boxesOf = (...args: Parameters<typeof lettered>) =>
  lettered(...args).glyphs.map(({ region }) => boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 });
const one = (from: number, count: number, size: number, stand: Stand = 'baseline') => [
  { from, count, size, stand },
];

/** Oracle: fontkit, a second font library, lays each stretch of one size out by itself. */
const PLAIN = { liga: false, clig: false, rlig: false, calt: false, ccmp: false, locl: false, dlig: false };
function oracleOf(id: string) {
  const font = fontkit.create(Buffer.from(bytesOf(id)));
  if (!('layout' in font)) throw new Error('a single font expected');
  return font;
}

describe('letters of several sizes on a line', () => {
  const runs = [
    { text: 'AVANT ', size: 1 },
    { text: 'Tav', size: 0.62 },
    { text: ' WATER', size: 1 },
    { text: '1', size: 1.7 },
  ];
  const text = runs.map((run) => run.text).join('');
  const sizes: Sizes = [
    { from: 6, count: 3, size: 0.62, stand: 'top' },
    { from: 15, count: 1, size: 1.7, stand: 'baseline' },
  ];

  it.each(['lato', 'playfair-display', 'bebas-neue', 'lobster', 'league-gothic'])(
    'advance as a second font library lays out each stretch: %s',
    (id) => {
      const oracle = oracleOf(id);
      const capHeight = fontOf(id).capHeight;
      const setting = setText(sized(text, sizes, { capHeight }), () => fontOf(id), 1);
      let pen = setting.slots[0]?.x ?? Number.NaN;
      let slot = 0;
      for (const run of runs) {
        for (const { xAdvance } of oracle.layout(run.text, PLAIN).positions) {
          expect(setting.slots[slot]?.x).toBeCloseTo(pen, 6);
          pen += xAdvance * run.size;
          slot += 1;
        }
      }
      expect(slot).toBe([...text].length);
      expect(setting.lines[0]?.width).toBeCloseTo(pen - (setting.slots[0]?.x ?? Number.NaN), 6);
    },
  );

  it('stand on one baseline, half way up, or level with the tops of the caps', () => {
    const [big, low] = boxesOf('HH', one(1, 1, 0.6));
    expect(low?.h).toBeCloseTo(60, 6);
    expect(low?.y).toBeCloseTo(big?.y ?? Number.NaN, 6);
    const [, middle] = boxesOf('HH', one(1, 1, 0.6, 'middle'));
    expect(middle?.y).toBeCloseTo((big?.y ?? Number.NaN) + 20, 6);
    const [, top] = boxesOf('HH', one(1, 1, 0.6, 'top'));
    expect(top?.y).toBeCloseTo((big?.y ?? Number.NaN) + 40, 6);
  });

  it('are leveled by their ink where none is as tall as a cap, by their caps where one is', () => {
    // Letters stand on the grid of 1/10000 mm on which polygons are worked.
    const [caps, o] = boxesOf('No', one(1, 1, 0.7, 'top'));
    expect((o?.y ?? 0) + (o?.h ?? 0)).toBeCloseTo((caps?.y ?? Number.NaN) + 100, 3);
    // The d of "and" reaches over the caps; the cap height that they would have is what is leveled.
    const [tall, , , d] = boxesOf('Hand', one(1, 3, 0.5, 'top'));
    const above = (d?.y ?? 0) + (d?.h ?? 0) - (tall?.y ?? 0) - 100;
    const oracle = oracleOf('lato');
    const ascender = oracle.glyphForCodePoint(0x64).bbox.maxY;
    expect(above).toBeCloseTo((50 * (ascender - oracle.capHeight)) / oracle.capHeight, 3);
    const [ground, dash] = boxesOf('H–', one(1, 1, 0.5, 'middle'));
    expect((dash?.y ?? 0) + (dash?.h ?? 0) / 2).toBeCloseTo((ground?.y ?? Number.NaN) + 50, 3);
  });

  it('do not kern with letters of another size, and are tracked by the mean of both', () => {
    const widthOf = (changes: Partial<Lettering>) => lettered('AV', one(1, 1, 0.5), changes).width;
    expect(widthOf({ kerning: true })).toBeCloseTo(widthOf({ kerning: false }), 9);
    expect(widthOf({ tracking: 0.2 }) - widthOf({})).toBeCloseTo(0.2 * 75, 9);
  });

  it('push other lines away by what they stand out of their own', () => {
    const lines = (own: Sizes) =>
      setText(
        { ...lettering('x'), lines: [{ text: 'OVER' }, { text: 'Under', sizes: own }] },
        () => fontOf('lato'),
        1,
      ).lines.map((line) => line.baseline);
    expect(lines([])[1]).toBeCloseTo(-150, 9);
    expect(lines(one(0, 1, 1.5))[1]).toBeCloseTo(-200, 9);
    expect(lines(one(0, 1, 0.5, 'top'))[1]).toBeCloseTo(-150, 9);
    const hanging = setText(
      { ...lettering('x'), lines: [{ text: 'Big', sizes: one(0, 1, 1.5, 'top') }, { text: 'LOW' }] },
      () => fontOf('lato'),
      1,
    );
    expect(hanging.lines[0]?.foot).toBeCloseTo(-50, 9);
    expect(hanging.lines[1]?.baseline).toBeCloseTo(-200, 9);
  });

  it('count code points as typed and are composed within one size', () => {
    const slots = setText(sized('𝌆Cafe\u0301 1', one(1, 5, 0.5)), () => fontOf('lato'), 1).slots;
    const scale = 100 / fontOf('lato').capHeight;
    expect(slots.map((s) => s.character).join('')).toBe('𝌆Café 1');
    expect(slots.map((s) => Math.round((2 * s.scale) / scale))).toEqual([2, 1, 1, 1, 1, 2, 2]);
  });

  it('take the first size listed where two overlap, and pass over letters that are not there', () => {
    const slots = setText(
      sized('ABC', [...one(0, 2, 0.5), ...one(1, 9, 2, 'middle'), ...one(7, 2, 3)]),
      () => fontOf('lato'),
      1,
    ).slots;
    const scale = 100 / fontOf('lato').capHeight;
    expect(slots.map((s) => s.scale / scale)).toEqual([0.5, 0.5, 2]);
  });

  it('fill the sign and keep their shares when the text is fitted', () => {
    const fitted = lettered('N° 4', one(1, 1, 0.6, 'top'), { fit: 'both' });
    expect(fitted.box.h / 880 > 0.999 || fitted.box.w / 1980 > 0.999).toBe(true);
    expect((fitted.capHeights[1] ?? 0) / (fitted.capHeights[0] ?? 1)).toBeCloseTo(0.6, 6);
    expect(fitted.capHeights[0]).toBeCloseTo(fitted.capHeight, 6);
  });

  it('follow an arc, standing on the turned line', () => {
    const setting = sized('HHHHH', one(2, 1, 0.5, 'top'), { arcRise: 60, tracking: 0.2 });
    const { glyphs } = letter({ lettering: setting, font: fontOf('lato'), sign }).lettered;
    const plain = letter({ lettering: lettering('HHHHH', { arcRise: 60 }), font: fontOf('lato'), sign });
    const boxes = glyphs.map(({ region }) => boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 });
    const of = plain.lettered.glyphs.map(({ region }) => boxOf(region) ?? { x: 0, y: 0, w: 0, h: 0 });
    // The middle letter is not turned: its top stands where the top of a large one would.
    const over = (all: typeof boxes) => (all[2]?.y ?? 0) + (all[2]?.h ?? 0) - (all[0]?.y ?? 0);
    // Bent, polygons are true to a hundredth of a millimeter.
    expect(boxes[2]?.h).toBeCloseTo(50, 1);
    expect(over(boxes)).toBeGreaterThan(over(of) - 6);
  });

  it('are what legibility is judged by: the smallest, and the narrowest gap for its letters', () => {
    const { glyphs, capHeights } = lettered('MIN im', one(4, 2, 0.4), { kerning: false });
    expect(capHeights.map((h) => Math.round(h))).toEqual([100, 40]);
    const gap = narrowestGap(glyphs);
    const all = narrowestGap(glyphs.filter((g) => g.capHeight > 50));
    expect((gap?.gap ?? 0) / (gap?.capHeight ?? 1)).toBeLessThanOrEqual(
      (all?.gap ?? 0) / (all?.capHeight ?? 1) + 1e-9,
    );
  });

  it('hold together as a stencil, small ones too', () => {
    const made = stencilSet(
      lettered('No 8 and Co', one(1, 1, 0.5, 'top')),
      stencilOptions({ bridgeWidth: 3 }),
      [],
    );
    expect(made.set.layers.map((layer) => layer.stencil.loose)).toEqual([0]);
    // o, 8 twice, a, d, o.
    expect(made.set.layers[0]?.stencil.islands.length).toBe(6);
  });

  it('are told by name where bridges eat a small one, and only then (twin: the plain share of ink left)', () => {
    const seen = new Set<string>();
    for (const [text, font] of [
      ['No 8', 'lato'],
      ['OoO8', 'bebas-neue'],
    ] as const) {
      for (const size of [0.1, 0.2, 0.4]) {
        for (const bridgeWidth of [1.5, 4, 12]) {
          const made = lettered(text, one(1, 1, size, 'top'), { capHeight: 80, tracking: -0.03 }, font);
          const { set, checks } = stencilSet(made, stencilOptions({ bridgeWidth }), []);
          const cut = set.layers[0]?.stencil.cut ?? [];
          const lost = made.glyphs.filter((g) => areaOf(intersect(g.region, cut)) < areaOf(g.region) / 2);
          const told = checks
            .filter((c) => c.code === 'stencil.letter-lost')
            .map((c) => c.figures.characters);
          expect(told).toEqual(lost.length > 0 ? [lost.map((g) => g.character).join(' ')] : []);
          for (const letters of told) seen.add(String(letters));
        }
      }
    }
    // The small o alone: large letters beside it keep their shape.
    expect([...seen]).toEqual(['o']);
  });
});
