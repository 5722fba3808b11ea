import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Lettering } from '../../src/design/schema.ts';
import { intersect, subtract, union } from '../../src/geometry/clip.ts';
import { clustersOf } from '../../src/geometry/cluster.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { areaOf, boxOf, regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { FLATNESS } from '../../src/geometry/tolerance.ts';
import { arcTracks, openingOf } from '../../src/lettering/arc.ts';
import { letterByLetter } from '../../src/lettering/cluster.ts';
import { cutOuts } from '../../src/lettering/cut-out.ts';
import { letter } from '../../src/lettering/letter.ts';
import { standsOf } from '../../src/lettering/placed.ts';
import { setText } from '../../src/lettering/setting.ts';
import { runs } from '../runs.ts';
import { fontOf } from './fonts.ts';
import { lettering } from './lettering.ts';

const lato = fontOf('lato');
const bebas = fontOf('bebas-neue');
const sign = { id: 'board', w: 900, h: 300 };
const letterWith = (...args: Parameters<typeof lettering>) =>
  letter({ lettering: lettering(...args), font: lato, sign });

const square = (x: number, y: number, size: number): Region => [
  {
    outer: [
      { x, y },
      { x: x + size, y },
      { x: x + size, y: y + size },
      { x, y: y + size },
    ],
    holes: [],
  },
];

describe('setting', () => {
  it('makes the H as tall as the cap height', () => {
    const { lettered } = letterWith('H', { capHeight: 101.6 });
    expect(lettered.box.h).toBeCloseTo(101.6, 9);
    expect(lettered.capHeight).toBe(101.6);
  });

  it('adds tracking between letters and word space at spaces, as shares of the cap height', () => {
    const widthOf = (changes: Parameters<typeof lettering>[1]) => letterWith('HI NO', changes).lettered.width;
    const plain = widthOf({});
    expect(widthOf({ tracking: 0.1 }) - plain).toBeCloseTo(4 * 10, 9);
    expect(widthOf({ wordSpace: 0.5 }) - plain).toBeCloseTo(50, 9);
  });

  it('kerns only when asked', () => {
    const scale = 100 / 1433;
    const plain = letterWith('AVA', { kerning: false }).lettered.width;
    const kerned = letterWith('AVA').lettered.width;
    expect(plain).toBeCloseTo(4080 * scale, 9);
    expect(kerned).toBeCloseTo(3808 * scale, 9);
  });

  it('sets baselines apart by the lower cap height and the white of both', () => {
    const equal = setText(lettering(['ONE', 'TWO']), () => lato, 1);
    expect(equal.lines[1]?.baseline).toBeCloseTo(-150, 9);
    const mixed = setText(
      { ...lettering('ONE'), lines: [{ text: 'ONE' }, { text: 'TWO', capHeight: 50 }] },
      () => lato,
      1,
    );
    expect(mixed.lines[1]?.baseline).toBeCloseTo(-(50 + 0.5 * 75), 9);
  });

  it('aligns by the ink', () => {
    for (const align of ['left', 'center', 'right'] as const) {
      const { lines } = setText(lettering(['HARBOR', 'TEA', 'WVJ'], { align }), () => lato, 1);
      const held = lines.map(({ left, right }) =>
        align === 'left' ? left : align === 'right' ? right : left + right,
      );
      for (const place of held) expect(place).toBeCloseTo(held[0] ?? Number.NaN, 9);
      expect(
        Math.max(...lines.map((line) => line.right)) + Math.min(...lines.map((line) => line.left)),
      ).toBeCloseTo(0, 9);
    }
  });

  it('composes letters and marks, drops control characters, takes any white for a space', () => {
    const text = setText(lettering('Cafe\u0301\tO\u200bK'), () => lato, 1).slots.map(
      (slot) => slot.character,
    );
    expect(text).toEqual(['C', 'a', 'f', 'é', ' ', 'O', 'K']);
  });

  it('names missing glyphs once each and keeps going', () => {
    const { lettered, checks } = letterWith('A漢B字漢');
    expect(lettered.missing).toEqual(['漢', '字']);
    expect(lettered.glyphs.map((glyph) => glyph.character)).toEqual(['A', 'B']);
    expect(checks).toEqual([
      {
        code: 'lettering.missing-glyph',
        severity: 'error',
        parts: ['board'],
        figures: { sign: 'board', characters: '漢 字' },
      },
    ]);
  });

  it('stands empty text without ink in the middle of the sign', () => {
    const { lettered, checks } = letterWith('   ', { fit: 'both' });
    expect(lettered.glyphs).toEqual([]);
    expect(lettered.ink_mm2).toBe(0);
    expect(checks).toEqual([]);
  });
});

describe('place', () => {
  it('centers the ink across and the caps up, and moves by the shift', () => {
    const { lettered } = letterWith('QUAY', { shift: { x: 7, y: -3 } });
    expect(lettered.box.x + lettered.box.w / 2).toBeCloseTo(450 + 7, 6);
    const u = lettered.glyphs.find((glyph) => glyph.character === 'A');
    const box = boxOf(u?.region ?? []);
    expect((box?.y ?? 0) + (box?.h ?? 0) / 2).toBeCloseTo(150 - 3, 6);
  });

  it('says how far lettering runs off the sign', () => {
    const { checks, lettered } = letterWith('HARBOR TICKETS', { capHeight: 150 });
    expect(checks.map((check) => check.code)).toEqual(['lettering.off-sign']);
    expect(checks[0]?.figures.over_mm).toBeCloseTo((lettered.box.w - 900) / 2, 3);
  });
});

describe('what is in sight of a sign', () => {
  const board = regionOfBox({ x: 0, y: 0, w: 900, h: 300 });
  const hole = regionOfBox({ x: 440, y: 120, w: 20, h: 60 });
  const framed = regionOfBox({ x: 30, y: 60, w: 840, h: 210 });
  const sighted = (text: string, changes: Partial<Lettering>, sight: { board?: Region; room?: Region }) =>
    letter({
      lettering: lettering(text, changes),
      font: lato,
      sign: { id: 'board', w: 900, h: 300 },
      ...sight,
    });

  it('is what text is fitted to and centered on: the box inside a frame molding, less the margin', () => {
    const { lettered, checks } = sighted('HI', { fit: 'height' }, { board, room: framed });
    expect(lettered.box.y).toBeCloseTo(70, 6);
    expect(lettered.box.h).toBeCloseTo(190, 6);
    expect(lettered.box.x + lettered.box.w / 2).toBeCloseTo(450, 6);
    expect(checks).toEqual([]);
  });

  it('warns of ink under what lies on the sign, by how far it runs under', () => {
    const { lettered, checks } = sighted('HHHHHHHHHH', { capHeight: 85.4 }, { board, room: framed });
    expect(lettered.box.x).toBeGreaterThan(0);
    expect(checks).toMatchObject([
      { code: 'lettering.off-sign', severity: 'warning', figures: { by: 'cover' } },
    ]);
    expect(checks[0]?.figures.over_mm).toBeCloseTo(30 - lettered.box.x, 3);
  });

  it('takes ink over an opening, or past the curve of a round board, for an error', () => {
    const open = sighted('HI', { capHeight: 200 }, { board: subtract(board, hole) });
    const through = intersect(
      open.lettered.glyphs.flatMap((g) => g.region),
      hole,
    );
    expect(areaOf(through) > 1).toBe(open.checks.length === 1);
    const round = regionOfRing(ellipseRing({ x: 0, y: 0, w: 900, h: 300 }));
    const { checks } = sighted('HOTEL', { fit: 'both', margin: 0 }, { board: round });
    expect(checks).toMatchObject([
      { code: 'lettering.off-sign', severity: 'error', figures: { by: 'edge' } },
    ]);
    expect(sighted('HOTEL', { capHeight: 60 }, { board: round }).checks).toEqual([]);
  });

  it('sees an opening that a letter spans, though every corner of it is on its rim', () => {
    const bar = regionOfBox({ x: 445, y: 145, w: 6, h: 10 });
    const { checks } = sighted('I', { capHeight: 290 }, { board: subtract(board, bar) });
    expect(checks[0]?.figures.over_mm).toBeCloseTo(3, 1);
  });

  it('says so when the margins leave a fit nothing to fill', () => {
    for (const fit of ['width', 'height', 'both'] as const) {
      const margin = fit === 'width' ? 460 : 155;
      const { checks } = sighted('HI', { fit, margin }, {});
      expect(checks).toEqual([
        {
          code: 'lettering.no-room',
          severity: 'error',
          parts: ['board'],
          figures: { lack_mm: fit === 'width' ? 20 : 10, margin_mm: margin },
        },
      ]);
    }
    expect(sighted('HI', { fit: 'none', margin: 460 }, {}).checks).toEqual([]);
  });
});

describe('scripts', () => {
  it.each(['שלום', 'مرحبا', 'नमस्ते', 'สวัสดี'])(
    'refuses %s where nothing is there that sets letters together',
    (text) => {
      const codes = letterWith(text).checks.map((c) => `${c.severity} ${c.code}`);
      expect(codes).toContain('error lettering.script');
    },
  );

  it('keeps quiet about scripts that are written letter by letter', () => {
    for (const text of ['Crème brûlée, 3 €', 'Ελλάδα', 'ПРИВЕТ', '日本語', '1٢3']) {
      expect(letterWith(text).checks.map((c) => c.code)).not.toContain('lettering.script');
    }
  });
});

describe('fit', () => {
  const room = { w: 900 - 20, h: 300 - 20 };
  it.each([
    ['width', {}],
    ['height', {}],
    ['both', {}],
    ['width', { arcRise: 90 }],
    ['both', { arcRise: 90 }],
    ['both', { arcRise: -60, outline: { width: 6, finish: 'red' } }],
    ['both', { shade: { kind: 'block', angle: -40, distance: 25, finish: 'red' } }],
  ] as const)('%s %j fills the room between the margins', (fit, changes) => {
    const { lettered } = letterWith(['HARBOR', 'Tickets'], { fit, ...changes });
    const all = boxOf(lettered.layers.flatMap((layer) => layer.whole)) ?? lettered.box;
    const spare = { across: room.w - all.w, up: room.h - all.h };
    const tight =
      fit === 'width' ? spare.across : fit === 'height' ? spare.up : Math.min(spare.across, spare.up);
    expect(Math.abs(tight)).toBeLessThan(0.15);
    if (fit === 'both') expect(Math.max(-spare.across, -spare.up)).toBeLessThan(0.01);
  });

  it('keeps every layer on the sign when it fits both ways', () => {
    fc.assert(
      fc.property(
        fc.constantFrom('HARBOR', 'Quay & Co.', 'VAN "W"', 'jgpq', 'ÅÖ 8'),
        fc.record({
          margin: fc.constantFrom(0, 10),
          arcRise: fc.integer({ min: -120, max: 120 }),
          tracking: fc.double({ min: -0.05, max: 0.4, noNaN: true }),
          outline: fc.option(
            fc.record({ width: fc.integer({ min: 1, max: 12 }), finish: fc.constant('red') }),
          ),
          shade: fc.option(
            fc.record({
              kind: fc.constantFrom('drop' as const, 'block' as const),
              angle: fc.integer({ min: -180, max: 180 }),
              distance: fc.integer({ min: 1, max: 30 }),
              finish: fc.constant('gray'),
            }),
          ),
        }),
        (text, changes) => {
          const { lettered, checks } = letterWith(text, { fit: 'both', ...changes });
          expect(checks).toEqual([]);
          const all = boxOf(lettered.layers.flatMap((layer) => layer.whole));
          if (!all) throw new Error('ink expected');
          expect(Math.min(all.x, all.y)).toBeGreaterThan(changes.margin - FLATNESS);
          expect(Math.max(all.x + all.w - 900, all.y + all.h - 300)).toBeLessThan(FLATNESS - changes.margin);
        },
      ),
      { numRuns: runs(10) },
    );
  });
});

describe('arc', () => {
  it('opens by the angle whose arc rises as asked (half circle: rise = length / pi)', () => {
    expect(openingOf(Math.PI, 1)).toBeCloseTo(Math.PI, 9);
    for (const angle of [0.001, 0.3, 1, 2, 4]) {
      const [length, rise] = [100 * angle, 100 * (1 - Math.cos(angle / 2))];
      expect(openingOf(length, rise)).toBeCloseTo(angle, 6);
      // Spaced on a circle of 60 inside one of 100.
      expect(openingOf(60 * angle, rise, 40)).toBeCloseTo(angle, 6);
    }
  });

  it('puts the middles of letters on circles, turned along them', () => {
    const setting = setText(lettering(['HARBOR', 'QUAY']), () => lato, 1);
    for (const rise of [80, -80]) {
      const stands = standsOf(setting, arcTracks(setting.lines, rise));
      const up = Math.sign(rise);
      // The normal of every letter runs through one center.
      const [first, last] = [stands[0], stands[5]];
      if (!first || !last) throw new Error('six letters expected');
      const centerY = first.y - (up * Math.abs(first.x)) / Math.tan((Math.abs(first.turn) * Math.PI) / 180);
      stands.forEach((stand, i) => {
        const radius = Math.hypot(stand.x, stand.y - centerY);
        expect(stand.turn).toBeCloseTo((-up * Math.asin(stand.x / radius) * 180) / Math.PI, 6);
        const same = stands[setting.slots[i]?.line === 0 ? 0 : 6];
        expect(radius).toBeCloseTo(Math.hypot(same?.x ?? 0, (same?.y ?? 0) - centerY), 6);
      });
    }
  });

  it('spaces letters where they come closest: on the baseline arching up, at the cap tops hanging', () => {
    const setting = setText(lettering('HHHHHHHH', { kerning: false }), () => lato, 1);
    const straight = (setting.slots[1]?.x ?? 0) - (setting.slots[0]?.x ?? 0);
    for (const [rise, height] of [
      [70, 0],
      [-70, 100],
    ] as const) {
      const [a, b] = standsOf(setting, arcTracks(setting.lines, rise)).map(({ x, y, turn }) => ({
        x: x - height * Math.sin((turn * Math.PI) / 180),
        y: y + height * Math.cos((turn * Math.PI) / 180),
        turn,
      }));
      if (!a || !b) throw new Error('letters expected');
      const half = ((Math.abs(a.turn - b.turn) / 2) * Math.PI) / 180;
      // Chord and arc of the same angle.
      expect((Math.hypot(a.x - b.x, a.y - b.y) * half) / Math.sin(half)).toBeCloseTo(straight, 6);
    }
  });

  it('keeps letters rigid: same area bent or straight', () => {
    const straight = letterWith('HARBOR');
    const bent = letterWith('HARBOR', { arcRise: 60 });
    bent.lettered.glyphs.forEach((glyph, i) => {
      expect(areaOf(glyph.region)).toBeCloseTo(areaOf(straight.lettered.glyphs[i]?.region ?? []), 0);
    });
  });
});

describe('layers', () => {
  it('stand from the back to the front, cover each other once, and fill the ink area', () => {
    const { lettered } = letterWith('ROPE', {
      outline: { width: 5, finish: 'red' },
      inline: { inset: 2, width: 2, finish: 'gold' },
      shade: { kind: 'drop', angle: -45, distance: 12, finish: 'gray' },
    });
    expect(lettered.layers.map((layer) => layer.role)).toEqual(['shade', 'outline', 'fill', 'inline']);
    const regions = lettered.layers.map((layer) => layer.region);
    const seen = regions.reduce((sum, region) => sum + areaOf(region), 0);
    expect(areaOf(union(regions))).toBeCloseTo(seen, 2);
    expect(areaOf(union(lettered.layers.map((layer) => layer.whole)))).toBeCloseTo(seen, 2);
    const fill = lettered.layers[2];
    expect(lettered.ink_mm2).toBeCloseTo(areaOf(union(lettered.glyphs.map((glyph) => glyph.region))), 6);
    expect(areaOf(fill?.region ?? []) + areaOf(regions[3] ?? [])).toBeCloseTo(lettered.ink_mm2, 2);
  });

  it('merge letters that overlap', () => {
    const apart = letterWith('OO').lettered;
    const over = letterWith('OO', { tracking: -0.3 }).lettered;
    const single = areaOf(apart.glyphs[0]?.region ?? []);
    expect(apart.ink_mm2).toBeCloseTo(2 * single, 6);
    expect(over.ink_mm2).toBeLessThan(2 * single - 1);
    expect(over.layers[0]?.whole).toHaveLength(1);
  });
});

describe('work letter by letter', () => {
  it('groups what is near and gives what the whole would (twin: all at once)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.integer({ min: 0, max: 200 }), fc.integer({ min: 0, max: 60 })), {
          minLength: 1,
          maxLength: 14,
        }),
        (places) => {
          const squares = places.flatMap(([x, y]) => square(x, y, 10));
          const together = union([squares]);
          const apart = letterByLetter(squares, (near) => union([near]));
          expect(apart).toHaveLength(together.length);
          expect(areaOf(apart)).toBeCloseTo(areaOf(together), 6);
          const clusters = clustersOf(squares, 3);
          clusters.forEach((a, i) => {
            for (const b of clusters.slice(i + 1)) expect(intersect(a, b)).toEqual([]);
          });
        },
      ),
    );
  });
});

describe('cut-out letters', () => {
  it('are parts in reading order, holes and all, labeled by their letters', () => {
    const parts = cutOuts(letterWith(['Bi!', 'O8']).lettered);
    expect(parts.map((part) => part.label)).toEqual(['B', 'i', 'i', '!', '!', 'O', '8']);
    expect(parts.map((part) => part.region[0]?.holes.length)).toEqual([2, 0, 0, 0, 0, 1, 2]);
    expect(parts.every((part) => part.region.length === 1)).toBe(true);
  });

  it('are one part where letters touch', () => {
    const { lettered } = letter({ lettering: lettering('NOO', { tracking: -0.2 }), font: bebas, sign });
    expect(cutOuts(lettered).map((part) => part.label)).toEqual(['NOO']);
  });
});
