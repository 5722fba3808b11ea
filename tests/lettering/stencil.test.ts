import fc from 'fast-check';
import { type Geom, xor } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { Lettering } from '../../src/design/schema.ts';
import { connectedParts, intersect, subtract, union } from '../../src/geometry/clip.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { areaOf, boxOf, regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import { signedArea } from '../../src/geometry/ring.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { runs } from '../runs.ts';
import { fontOf, SHIPPED } from './fonts.ts';
import { faultsOf } from './held.ts';
import { lettering, stencilOptions } from './lettering.ts';

const disk = (x: number, y: number, r: number): Region =>
  regionOfRing(ellipseRing({ x: x - r, y: y - r, w: 2 * r, h: 2 * r }));
/** Larger than any sheet here: every hole lies on it. */
const BOARD = regionOfBox({ x: -1000, y: -1000, w: 4000, h: 4000 });
const box = (x: number, y: number, w: number, h: number): Region => regionOfBox({ x, y, w, h });
const ring = (x: number, y: number, r: number, stroke: number): Region =>
  subtract(disk(x, y, r), disk(x, y, r - stroke));

function make(letters: Region, changes: Partial<Lettering['stencil']> = {}) {
  const options = stencilOptions(changes);
  const sheet = sheetAround(boxOf(letters) as Box, options);
  const made = stencil({ sign: 'board', letters, sheet, options });
  return { ...made, sheet, faults: faultsOf(made.stencil, sheet, letters, options.bridgeWidth) };
}

/** Of a line, whichever way it runs: 0 to 180. */
const lineAngle = (angle: number) => ((Math.round(angle) % 180) + 180) % 180;

describe('islands', () => {
  it('of a ring: bridged above and below, upright to the stroke, as long as the stroke is thick', () => {
    const { stencil: made, faults, checks } = make(ring(0, 0, 50, 10));
    expect(faults).toEqual([]);
    expect(checks).toEqual([]);
    expect(made.islands).toHaveLength(1);
    expect(made.bridges.map(({ angle }) => lineAngle(angle))).toEqual([90, 90]);
    for (const bridge of made.bridges) {
      expect(bridge.length).toBeCloseTo(10, 0);
      expect(Math.abs(bridge.at.x)).toBeLessThan(1);
      expect(Math.abs(bridge.at.y)).toBeCloseTo(45, 0);
    }
  });

  it('as asked: across, up, more of them', () => {
    const angles = (changes: Partial<Lettering['stencil']>) =>
      make(ring(0, 0, 50, 10), changes).stencil.bridges.map(({ angle }) => lineAngle(angle));
    expect(angles({ direction: 'across' })).toEqual([0, 0]);
    expect(angles({ direction: 'up' })).toEqual([90, 90]);
    for (const count of [3, 4, 6]) {
      const { stencil: made, faults } = make(ring(0, 0, 50, 10), { bridges: count });
      expect(made.bridges).toHaveLength(count);
      expect(faults).toEqual([]);
    }
    expect(angles({ bridges: 1 })).toHaveLength(1);
  });

  it('are bridged at the thinnest stroke', () => {
    // A ring whose hole sits left of its middle: thin at the left.
    const letters = subtract(disk(0, 0, 50), disk(-16, 0, 30));
    const { stencil: made, faults } = make(letters);
    expect(faults).toEqual([]);
    const left = made.bridges.filter((bridge) => bridge.at.x < -20);
    expect(left.length).toBeGreaterThanOrEqual(1);
    // The stroke is 4 mm thick at the left, 17 above and below, and 36 at the right.
    expect(Math.max(...made.bridges.map((bridge) => bridge.length))).toBeLessThan(12);
  });

  it('stand in each other: every one reaches the frame', () => {
    const letters = union([ring(0, 0, 80, 10), ring(0, 0, 55, 10), ring(0, 0, 30, 10)]);
    const { stencil: made, faults } = make(letters);
    expect(made.islands).toHaveLength(3);
    expect(faults).toEqual([]);
  });

  it('side by side in one letter hold each other and the frame (an 8)', () => {
    const letters = subtract(box(0, 0, 40, 90), union([box(10, 10, 20, 30), box(10, 50, 20, 30)]));
    const { stencil: made, faults } = make(letters);
    expect(faults).toEqual([]);
    expect(made.islands).toHaveLength(2);
    // Above, between and below.
    expect(made.bridges.map((bridge) => Math.round(bridge.at.y)).sort((a, b) => a - b)).toEqual([5, 45, 85]);
  });

  it('between letters that touch', () => {
    const letters = union([ring(0, 0, 40, 10), ring(70, 0, 40, 10), ring(35, 60, 40, 10)]);
    const { stencil: made, faults } = make(letters);
    // Three counters, the pieces where rings overlap, and the space between all three.
    expect(made.islands.length).toBeGreaterThanOrEqual(4);
    expect(faults).toEqual([]);
  });

  it('smaller than a bridge are held by it all the same', () => {
    const { stencil: made, faults } = make(ring(0, 0, 11, 10), { bridgeWidth: 6 });
    expect(faults).toEqual([]);
    expect(made.islands).toHaveLength(1);
    expect(made.bridges.length).toBeGreaterThanOrEqual(1);
  });

  it('that touch the outside in a point hang on nothing: they are bridged too', () => {
    // Two squares corner to corner twice over: the space between them opens only in points.
    const letters = union([box(0, 0, 30, 10), box(0, 30, 30, 10), box(-10, 10, 10, 20), box(30, 10, 10, 20)]);
    const { stencil: made, faults } = make(letters);
    expect(made.islands).toHaveLength(1);
    expect(faults).toEqual([]);
    expect(made.bridges.length).toBeGreaterThanOrEqual(1);
  });

  it('are counted from the left and take bridges set by hand', () => {
    const letters = union([ring(0, 0, 40, 10), ring(120, 0, 40, 10)]);
    const { stencil: made, faults } = make(letters, {
      placed: [{ island: 1, angles: [45, 200] }],
    });
    expect(faults).toEqual([]);
    expect(made.islands[0]?.at.x).toBeCloseTo(0, 1);
    expect(made.islands[1]?.at.x).toBeCloseTo(120, 1);
    const angles = made.bridges
      .filter((bridge) => bridge.island === 1)
      .map(({ at }) => (Math.atan2(at.y, at.x - 120) * 180) / Math.PI)
      .sort((a, b) => a - b);
    expect(angles[0]).toBeGreaterThan(-165);
    expect(angles[0]).toBeLessThan(-155);
    expect(angles[1]).toBeGreaterThan(40);
    expect(angles[1]).toBeLessThan(50);
  });

  it('with one bridge by hand are told', () => {
    const { stencil: made, checks } = make(ring(0, 0, 40, 10), { placed: [{ island: 0, angles: [0] }] });
    expect([made.bridges.length, made.single, made.loose]).toEqual([1, 1, 0]);
    expect(checks.map((check) => [check.code, check.severity, check.figures.count])).toEqual([
      ['stencil.one-bridge', 'warning', 1],
    ]);
  });

  it('whose last bridge was taken away are told loose, and held again by one put back', () => {
    const bare = make(ring(0, 0, 40, 10), { placed: [{ island: 0, angles: [] }] });
    expect([bare.stencil.bridges.length, bare.stencil.single, bare.stencil.loose]).toEqual([0, 0, 1]);
    expect(bare.checks.map((check) => [check.code, check.severity, check.figures.count])).toEqual([
      ['stencil.loose-island', 'error', 1],
    ]);
    const held = make(ring(0, 0, 40, 10), { placed: [{ island: 0, angles: [90] }] });
    expect([held.stencil.bridges.length, held.stencil.loose]).toEqual([1, 0]);
  });

  it('of their neighbors are held all the same when one has no bridge by hand', () => {
    const letters = [...ring(0, 0, 40, 10), ...ring(120, 0, 40, 10), ...ring(240, 0, 40, 10)];
    const { stencil: made } = make(letters, { placed: [{ island: 0, angles: [] }] });
    expect(made.loose).toBe(1);
    expect([0, 1, 2].map((i) => made.bridges.filter((b) => b.island === i).length)).toEqual([0, 2, 2]);
  });

  it('get as many bars as were set by hand, clear of each other even where two are asked for in one place', () => {
    for (const angles of [
      [0, 120, -120],
      [90, 90],
      [0, 5, 10, 180],
      [0, 45, 90, 135, 180, -135, -90, -45],
    ]) {
      const { stencil: made, faults } = make(ring(0, 0, 40, 10), { placed: [{ island: 0, angles }] });
      expect(made.bridges).toHaveLength(angles.length);
      expect(faults).toEqual([]);
      made.bridges.forEach((a, i) => {
        for (const b of made.bridges.slice(i + 1)) {
          expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y)).toBeGreaterThan(a.width);
        }
      });
    }
  });

  it('that nothing can reach are told loose, never claimed', () => {
    // The frame would have to be cut: the letter runs over the whole sheet's edge.
    const letters = subtract(box(0, 0, 100, 100), box(40, 40, 20, 20));
    const options = stencilOptions();
    const made = stencil({ sign: 'board', letters, sheet: { x: 0, y: 0, w: 100, h: 100 }, options });
    expect(made.stencil.loose).toBeGreaterThan(0);
    expect(made.checks.map((check) => check.code)).toContain('stencil.loose-island');
  });
});

describe('thin sheet', () => {
  it('a counter on a neck thinner than the limit is bridged as a tongue', () => {
    // A counter of 30 by 30 that opens to the right through a slot of 1 mm.
    const letters = subtract(box(0, 0, 60, 60), union([box(15, 15, 30, 30), box(40, 29.5, 30, 1)]));
    const weak = make(letters, { tongue: 2 });
    expect(weak.stencil.islands.map((island) => island.kind)).toEqual(['tongue']);
    expect(weak.stencil.bridges).toHaveLength(1);
    expect(weak.faults).toEqual([]);
    expect(make(letters, { tongue: 0.5 }).stencil.bridges).toEqual([]);
  });

  it('a long thin finger is held at its free end', () => {
    // A slot of 1.5 mm that runs 50 mm into a block from below, 10 mm from its left edge.
    const letters = subtract(box(0, 0, 60, 60), box(10, -1, 1.5, 51));
    const { stencil: made, faults } = make(letters, { tongue: 2 });
    expect(faults).toEqual([]);
    expect(made.bridges.map((bridge) => bridge.kind)).toEqual(['tongue']);
    expect(made.bridges[0]?.at.y).toBeGreaterThan(25);
    expect(made.bridges[0]?.length).toBeCloseTo(10, 0);
    expect(make(letters, { tongue: 1 }).stencil.bridges).toEqual([]);
  });

  it('a finger that no bar can hold is told, with its width', () => {
    // In the middle of a block: a bar to its edge would be 200 mm long.
    const letters = subtract(box(0, 0, 400, 400), box(199.5, -1, 1, 200));
    const { checks, stencil: made } = make(letters, { tongue: 2, bridgeWidth: 4 });
    const told = checks.filter((check) => check.code === 'stencil.thin-tongue');
    expect(made.bridges).toEqual([]);
    expect(told).toHaveLength(1);
    expect(told[0]?.figures.width_mm).toBeCloseTo(1, 1);
  });

  it('short notches are left alone', () => {
    const notched = subtract(
      box(0, 0, 60, 60),
      regionOfRing([
        { x: 25, y: 60.5 },
        { x: 30, y: 30 },
        { x: 35, y: 60.5 },
      ]),
    );
    const { stencil: made, checks } = make(notched, { tongue: 2 });
    expect(made.bridges).toEqual([]);
    expect(checks).toEqual([]);
  });
});

describe('texts', () => {
  const fonts = ['lobster', 'bebas-neue', 'rye', 'abril-fatface'].map(fontOf);

  it('lead a group of islands to the frame, not to each other', () => {
    // Three counters side by side in each ring of this sign, and bars that are asked to lie level.
    const { lettered } = letter({
      lettering: lettering('%', { capHeight: 80, arcRise: -3 }),
      font: fontOf('rye'),
      sign: { id: 's', w: 800, h: 300 },
    });
    const { stencil: made, faults } = make(lettered.layers[0]?.whole ?? [], {
      bridgeWidth: 7.73,
      bridges: 2,
      direction: 'across',
      tongue: 0,
      frame: 0,
    });
    expect(faults).toEqual([]);
    expect(made.bridges.length).toBeLessThan(15);
  });

  it('of any kind hold together, with bridges as wide as asked', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...fonts),
        fc.stringMatching(/^[A-Za-z0-9&@%#]{1,7}$/),
        fc.record({
          bridgeWidth: fc.double({ min: 1.5, max: 9, noNaN: true }),
          bridges: fc.integer({ min: 1, max: 4 }),
          direction: fc.constantFrom('thinnest' as const, 'up' as const, 'across' as const),
          tongue: fc.double({ min: 0, max: 3, noNaN: true }),
          frame: fc.double({ min: 0, max: 30, noNaN: true }),
        }),
        fc.double({ min: -0.15, max: 0.2, noNaN: true }),
        fc.integer({ min: -60, max: 60 }),
        (font, text, changes, tracking, arcRise) => {
          const { lettered } = letter({
            lettering: lettering(text, { capHeight: 80, tracking, arcRise }),
            font,
            sign: { id: 's', w: 800, h: 300 },
          });
          const { faults, checks } = make(lettered.layers[0]?.whole ?? [], changes);
          expect(faults).toEqual([]);
          expect(checks.filter((check) => check.severity === 'error')).toEqual([]);
        },
      ),
      { numRuns: runs(10) },
    );
  });

  it('give the same stencil twice', () => {
    const { lettered } = letter({
      lettering: lettering('ROBOT'),
      font: fontOf('lato'),
      sign: { id: 's', w: 800, h: 300 },
    });
    const letters = lettered.layers[0]?.whole ?? [];
    expect(JSON.stringify(make(letters).stencil)).toBe(JSON.stringify(make(letters).stencil));
  });

  it('get a sheet for every color, all alike, with shared registration holes', () => {
    const text = lettering('ROPE 8', {
      outline: { width: 5, finish: 'red' },
      shade: { kind: 'block', angle: -45, distance: 14, finish: 'gray' },
    });
    const { lettered } = letter({
      lettering: text,
      font: fontOf('bebas-neue'),
      sign: { id: 's', w: 800, h: 300 },
    });
    const { set, checks } = stencilSet(lettered, text.stencil, BOARD);
    expect(checks).toEqual([]);
    expect(set.layers.map((layer) => layer.role)).toEqual(['shade', 'outline', 'fill']);
    expect(set.holes).toHaveLength(4);
    for (const { stencil: made } of set.layers) {
      expect(made.loose).toBe(0);
      expect(areaOf(made.sheet) + areaOf(made.cut) + areaOf(set.holes)).toBeCloseTo(
        set.sheet.w * set.sheet.h,
        1,
      );
      // Painted or not, the corners carry the same four holes.
      expect(areaOf(union([made.sheet, set.holes])) - areaOf(made.sheet)).toBeCloseTo(areaOf(set.holes), 2);
    }
    // The counters of P and R, closed up to slits by a wide outline, are not worth a bar in it.
    const closed = letter({
      lettering: { ...text, outline: { width: 7, finish: 'red' }, shade: null },
      font: fontOf('bebas-neue'),
      sign: { id: 's', w: 800, h: 300 },
    });
    const [outlined] = stencilSet(closed.lettered, text.stencil, BOARD).set.layers;
    const holes = (closed.lettered.layers[0]?.whole ?? []).flatMap((polygon) => [...polygon.holes]);
    const small = holes.filter((hole) => -signedArea(hole) < 16);
    expect(small.length).toBeGreaterThan(0);
    expect(outlined?.stencil.islands).toHaveLength(holes.length - small.length);
    // One color needs nothing to line up with.
    const plain = letter({
      lettering: lettering('ROPE'),
      font: fontOf('lato'),
      sign: { id: 's', w: 800, h: 300 },
    });
    expect(stencilSet(plain.lettered, text.stencil, BOARD).set.holes).toEqual([]);
  });
});

describe('are bridged as a person would cut them: common practice, no source', () => {
  const cutOf = (text: string, font: string) => {
    const { lettered } = letter({
      lettering: lettering(text, { capHeight: 80, tracking: 0.2 }),
      font: fontOf(font),
      sign: { id: 's', w: 1500, h: 300 },
    });
    const letters = lettered.layers[0]?.whole ?? [];
    return { letters, ...make(letters, { bridgeWidth: 4.8 }) };
  };
  const geom = (region: Region, turn = (x: number) => x): Geom =>
    region.map(({ outer, holes }) =>
      [outer, ...holes].map((one) => one.map(({ x, y }): [number, number] => [turn(x), y])),
    );

  it.each(['lato', 'bebas-neue', 'graduate'])(
    'letters that are even stay so, seen by a second library: %s',
    (font) => {
      for (const character of 'AO80') {
        const { letters, stencil: made } = cutOf(character, font);
        const around = boxOf(letters) as Box;
        const uneven = (region: Region) =>
          xor(
            geom(region),
            geom(region, (x) => 2 * around.x + around.w - x),
          )
            .flat()
            .reduce((sum, one) => sum + Math.abs(signedArea(one.map(([x, y]) => ({ x, y })))), 0);
        // Bars of 4.8 mm over strokes of 8 to 15: one that has no twin is more than twice this.
        expect(uneven(made.cut) - uneven(letters), character).toBeLessThan(15);
      }
    },
  );

  it.each(['lato', 'bebas-neue', 'alfa-slab-one', 'graduate'])('bars are level or plumb: %s', (font) => {
    const { stencil: made, faults } = cutOf('ABR8ODP0', font);
    expect(faults).toEqual([]);
    expect(made.bridges.filter(({ angle }) => lineAngle(angle) % 90 !== 0)).toEqual([]);
  });

  it.each(SHIPPED.map(({ id }) => id))('no sliver is left beside a bar: %s', (font) => {
    const { letters, stencil: made, faults } = cutOf('ABR8ODPQ0694ge', font);
    expect(faults).toEqual([]);
    expect(made.loose).toBe(0);
    const slivers = (region: Region) =>
      connectedParts(region).filter((part) => areaOf(part) < (4.8 * 4.8) / 2);
    expect(slivers(made.cut)).toHaveLength(slivers(letters).length);
  });
});

describe('bridges set by hand on the stencils of other colors', () => {
  const setOf = (placed: Lettering['stencil']['placed'], font = 'lato') => {
    const written = lettering('OO', {
      capHeight: 120,
      tracking: 0.5,
      outline: { width: 6, finish: 'gold' },
      inline: { inset: 3, width: 5, finish: 'white' },
      shade: { kind: 'block', angle: -45, distance: 12, finish: 'dark' },
      stencil: stencilOptions({ placed }),
    });
    const sign = { id: 's', w: 900, h: 300 };
    const { lettered } = letter({ lettering: written, font: fontOf(font), sign });
    return stencilSet(lettered, written.stencil, BOARD);
  };
  /** The innermost island of a color: a counter. */
  const innermost = ({ set }: ReturnType<typeof setOf>, role: string): number => {
    const islands = set.layers.find((layer) => layer.role === role)?.stencil.islands ?? [];
    return islands.reduce((best, one, i) => (one.box.w < (islands[best]?.box.w ?? 0) ? i : best), 0);
  };
  /** Directions in which the bridges of that counter leave it. */
  const anglesOf = (of: ReturnType<typeof setOf>, role: string) => {
    const made = of.set.layers.find((layer) => layer.role === role)?.stencil;
    const island = innermost(of, role);
    const at = made?.islands[island]?.at ?? { x: 0, y: 0 };
    return (made?.bridges ?? [])
      .filter((b) => b.island === island)
      .map((b) => Math.round((Math.atan2(b.at.y - at.y, b.at.x - at.x) * 180) / Math.PI))
      .sort((a, b) => a - b);
  };
  const ROLES = ['shade', 'outline', 'fill', 'inline'] as const;

  it.each(ROLES)('stand where they were put on the %s, and nowhere else', (role) => {
    // A line inside of strokes takes heavy ones.
    const font = role === 'inline' ? 'alfa-slab-one' : 'lato';
    const plain = setOf([], font);
    const island = innermost(plain, role);
    const layer = role === 'fill' ? {} : { layer: role };
    const moved = setOf([{ ...layer, island, angles: [45, -160] }], font);
    // The middle of a bar across a heavy stroke lies off the direction in which it leaves a narrow counter.
    const [low, high] = anglesOf(moved, role);
    expect(Math.abs((low ?? 0) + 160)).toBeLessThan(role === 'inline' ? 25 : 12);
    expect(Math.abs((high ?? 0) - 45)).toBeLessThan(role === 'inline' ? 25 : 12);
    expect(anglesOf(plain, role)).not.toEqual([low, high]);
    for (const other of ROLES.filter((one) => one !== role)) {
      expect(anglesOf(moved, other)).toEqual(anglesOf(plain, other));
    }
    expect(moved.set.layers.map((made) => made.stencil.loose)).toEqual([0, 0, 0, 0]);
  });

  it('are told where the color has no such island any more', () => {
    const { checks } = setOf([{ layer: 'shade', island: 40, angles: [0] }]);
    expect(checks.filter((c) => c.code === 'stencil.placed-lost').map((c) => c.figures)).toEqual([
      { count: 1 },
    ]);
  });
});

describe('what a stencil loses', () => {
  const setOf = (text: string, changes: Partial<Lettering['stencil']>, capHeight = 60) => {
    const written = lettering(text, { capHeight, stencil: stencilOptions(changes) });
    const { lettered } = letter({
      lettering: written,
      font: fontOf('lato'),
      sign: { id: 's', w: 900, h: 300 },
    });
    return { lettered, ...stencilSet(lettered, written.stencil, BOARD) };
  };
  const told = (checks: readonly { code: string; severity: string; figures: object }[]) =>
    checks.filter((c) => c.code === 'stencil.letter-lost' || c.code === 'stencil.placed-lost');

  it('names letters that bridges cover by more than half, each once, and no others', () => {
    expect(told(setOf('HOBOI', {}).checks)).toEqual([]);
    // Bars so wide leave crumbs of an O as well, which stay sheet.
    expect(told(setOf('HIBIB', { bridgeWidth: 30 }).checks)).toEqual([
      {
        code: 'stencil.letter-lost',
        severity: 'warning',
        parts: ['s'],
        figures: { characters: 'B' },
      },
    ]);
  });

  it('agrees with the plain reckoning of every letter (twin)', () => {
    for (const bridgeWidth of [4, 8, 14, 20, 26, 34]) {
      const { lettered, set, checks } = setOf('AROBEQ48&', { bridgeWidth });
      const cut = set.layers[0]?.stencil.cut ?? [];
      const lost = lettered.glyphs.filter(
        ({ region }) => areaOf(intersect(region, cut)) < areaOf(region) / 2,
      );
      const found = told(checks).flatMap((c) => Object.values(c.figures));
      expect(found).toEqual(lost.length > 0 ? [lost.map((g) => g.character).join(' ')] : []);
    }
  });

  it('passes over bridges set by hand on islands that are gone, and says so', () => {
    const placed = [{ island: 1, angles: [90, -90] }];
    const gone = setOf('COT', { placed });
    expect(told(gone.checks)).toEqual([
      { code: 'stencil.placed-lost', severity: 'note', parts: ['s'], figures: { count: 1 } },
    ]);
    expect(gone.set).toEqual(setOf('COT', {}).set);
    expect(told(setOf('COOT', { placed }).checks)).toEqual([]);
  });
});
