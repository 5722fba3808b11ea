import { describe, expect, it } from 'vitest';
import { readSupplies, readTables } from '../../src/command/supplies.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import { canTurn, hardwareNear, hardwareOf } from '../../src/design/hardware.ts';
import type { Design, Fitting, Part } from '../../src/design/schema.ts';
import { distance } from '../../src/geometry/point.ts';
import { containsPointInRegion } from '../../src/geometry/region.ts';
import type { Point } from '../../src/geometry/shape.ts';
import { reflectPart } from '../../src/layout/arrange/reflect.ts';
import { holesOf, type LaidHardware } from '../../src/layout/laid.ts';
import { regionOfShape } from '../../src/layout/place/shape.ts';
import type { Hardware } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';
import { plan } from '../../src/plan/plan.ts';
import { chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';

const { hardware, screws } = readTables();
const entry = (id: string): Hardware => {
  const found = hardware.find((one) => one.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};
const screwOf = (id: string) => {
  const found = screws.find((one) => one.id === id);
  if (!found) throw new Error(`no ${id}`);
  return found;
};

const fitting = (id: string, of: Hardware, { x, y }: Point, isTurned = false): Part => {
  const own = hardwareOf(of, isTurned);
  const { w, h } = own.sold;
  // Drawn a little too large: it is as large as it is sold, in the middle of that.
  return { ...newPart('fitting', { id, name: id, box: { x: x - 2, y: y - 1, w: w + 4, h: h + 2 } }), ...own };
};

const holed = (part: Part, box: Part['box']) => holesOf({ box, spec: part as Fitting });

const planned = (design: Design) => plan(design, readSupplies(design), { effort: { nodes: 200 } });

describe('the table of hardware', () => {
  it.each(hardware.map((one) => [one.id, one] as const))('%s has its screws within its outline', (_, one) => {
    for (const isTurned of canTurn(one) ? [false, true] : [false]) {
      const part = fitting('a', one, { x: 0, y: 0 }, isTurned);
      const own = hardwareOf(one, isTurned);
      const box = { x: 0, y: 0, w: own.sold.w, h: own.sold.h };
      const radius = Math.max(...one.ways.map(({ screw }) => screwOf(screw).diameter)) / 2;
      for (const { x, y } of holed(part, box)) {
        for (const angle of [0, 1, 2, 3, 4, 5, 6, 7].map((n) => (n * Math.PI) / 4)) {
          const rim = { x: x + radius * Math.cos(angle), y: y + radius * Math.sin(angle) };
          expect(containsPointInRegion(regionOfShape(own.shape, box), rim)).toBe(true);
        }
      }
    }
  });

  it.each([
    // Holes of cabinets are 32 mm apart, and pulls three and four of these; 3 in. Common practice, no source.
    ['pull-bar-96', 3 * 32],
    ['pull-bar-128', 4 * 32],
    ['pull-bar-3in', inches(3)],
    ['pull-cup', inches(3)],
  ])('%s: %d mm between its screws', (id, apart) => {
    const [a, b] = holed(fitting('a', entry(id), { x: 0, y: 0 }), {
      ...{ x: 0, y: 0, w: entry(id).width, h: entry(id).height },
    });
    expect(a && b && distance(a, b)).toBeCloseTo(apart, 5);
  });

  it('has screws of their sizes', () => {
    // Unified threads: 0.060 in and 0.013 in for each number (ASME B1.1, as quoted by tables of fasteners).
    expect(screwOf('machine-8-32').diameter).toBeCloseTo(inches(0.06 + 8 * 0.013), 9);
    // Metric threads are called by their diameter.
    expect(screwOf('machine-m4').diameter).toBe(4);
  });

  it('has letter slots for the openings and number plates for the numerals that are asked for', () => {
    // Door slots: at least 1 1/2 by 7 in (United States postal service, as quoted); EN 13724:2002, as quoted: 230 to
    // 280 mm by 30 to 35 mm. The International Building Code, 501.2: numerals of 4 in.
    for (const [id, w, h] of [
      ['letter-slot-10in', inches(7), inches(1.5)],
      ['letter-slot-340', 230, 30],
      ['number-6x7in', 0, inches(4)],
      ['number-oval', 0, inches(4)],
    ] as const) {
      const { width, height } = entry(id);
      expect(width).toBeGreaterThan(w);
      expect(height).toBeGreaterThan(h);
    }
  });

  it('drawn as a box is what is nearest to that in size, in its middle, upright only where it may be', () => {
    const chance = chanceOf(5);
    for (let n = 0; n < 200; n++) {
      const box = { x: 10, y: 20, w: 10 + 300 * chance(), h: 10 + 200 * chance() };
      const { sold, box: own } = hardwareNear(hardware, box);
      const of = entry(sold.entry);
      expect([own.x + own.w / 2, own.y + own.h / 2]).toEqual([
        expect.closeTo(box.x + box.w / 2, 6),
        expect.closeTo(box.y + box.h / 2, 6),
      ]);
      expect([own.w, own.h]).toEqual([sold.w, sold.h]);
      if (sold.w !== of.width) expect(canTurn(of)).toBe(true);
      const off = (w: number, h: number) => Math.abs(w - box.w) + Math.abs(h - box.h);
      for (const other of hardware) {
        expect(off(other.width, other.height)).toBeGreaterThanOrEqual(off(own.w, own.h) - 1e-9);
        if (canTurn(other))
          expect(off(other.height, other.width)).toBeGreaterThanOrEqual(off(own.w, own.h) - 1e-9);
      }
    }
  });

  it('is turned and mirrored with its screws', () => {
    const part = fitting('a', entry('strap-8in'), { x: 0, y: 0 });
    const mirrored = reflectPart(part, 'x');
    const box = { x: 0, y: 0, w: entry('strap-8in').width, h: entry('strap-8in').height };
    const xs = (of: Part) => holed(of, box).map(({ x }) => x);
    expect(xs(mirrored)).toEqual(xs(part).map((x) => expect.closeTo(box.w - x, 6)));
    const [up] = holed(fitting('a', entry('strap-8in'), { x: 0, y: 0 }, true), {
      ...box,
      w: box.h,
      h: box.w,
    });
    expect(up?.y).toBeCloseTo(xs(part)[0] ?? Number.NaN, 6);
  });
});

/** Wood at a place of the test's faces: what was put there, over the platform or the frame. */
const SHEET = { 'mdf-quarter': inches(1 / 4), 'mdf-half': inches(1 / 2), 'mdf-three-quarter': inches(3 / 4) };

describe('hardware on a face', () => {
  const base = newDesign(DEFAULT_BED);
  const { shortOfFar, bite } = base.fastening;

  it('is screwed so that each screw holds and none comes out, as it is sold', () => {
    for (let seed = 0; seed < runs(2); seed++) {
      const chance = chanceOf(seed);
      const stock = pick(Object.keys(SHEET) as (keyof typeof SHEET)[], chance);
      const sheet = newPart('panel', {
        id: 'sheet',
        name: 'sheet',
        box: { x: 90, y: 90, w: 800, h: 1730 },
        stock,
      });
      const all = hardware.map((one, i) => {
        const at = { x: 120 + 380 * (i % 2) + 20 * chance(), y: 100 + 135 * Math.floor(i / 2) };
        return { ...fitting(one.id, one, at), on: 'sheet' };
      });
      const { fastening, layout, marks, load, shopping } = planned({ ...base, parts: [sheet, ...all] });
      // The platform is 1/2 in thick.
      const wood = SHEET[stock] + inches(1 / 2);
      const own = fastening.parts.filter(({ part }) => part !== 'sheet');
      for (const one of hardware) {
        const laid = layout.parts.find(({ id }) => id === one.id) as LaidHardware;
        expect([laid.box.w, laid.box.h, laid.z1 - laid.z0]).toEqual(
          [one.width, one.height, one.depth].map((mm) => expect.closeTo(mm, 6)),
        );
        const found = own.filter(({ part }) => part === one.id);
        expect(found.flatMap(({ at }) => at).length, `${one.id} on ${stock}`).toBe(one.holes.length);
        for (const { fastener, length, from } of found) {
          const way = one.ways.find(({ screw }) => screw === fastener);
          const held = (length ?? 0) - (from === 'front' ? (way?.into ?? 0) : wood);
          if (from === 'front') {
            expect(held).toBeLessThanOrEqual(wood - shortOfFar + 1e-6);
            expect(held).toBeGreaterThanOrEqual(bite - 1e-6);
          } else {
            expect(held).toBeLessThanOrEqual((way?.into ?? 0) + 1e-6);
            expect(held).toBeGreaterThanOrEqual(screwOf(fastener ?? '').diameter - 1e-6);
          }
        }
        for (const axis of ['x', 'y'] as const) {
          const told = marks.marks.filter((m) => m.part === one.id && m.edge === 'hole' && m.axis === axis);
          for (const hole of holesOf(laid))
            expect(told.some(({ at }) => Math.abs(at - hole[axis]) < 0.02)).toBe(true);
        }
        expect(shopping.find(({ item }) => item === one.id)?.name).toBe(one.name);
        expect(load.byPart.find(({ part }) => part === one.id)?.mass).toBe(one.mass_kg);
      }
      // Brads of the sheet keep away from the screws: five diameters (EN 1995-1-1, table 8.2).
      const brads = fastening.parts.filter(({ part }) => part === 'sheet').flatMap(({ at }) => at);
      for (const { at, fastener } of own)
        for (const p of at)
          for (const q of brads)
            expect(distance(p, q)).toBeGreaterThan(5 * screwOf(fastener ?? '').diameter - 0.01);
      expect(marks.steps.find(({ act }) => act === 'fit-hardware')?.parts.length).toBe(hardware.length);
      expect(fastening.checks.filter(({ parts }) => parts[0] !== 'sheet')).toEqual([]);
    }
  });

  it('goes into the frame by hanger bolts from the front, where nothing reaches from behind', () => {
    // The frame is 5 1/2 in deep and 1 1/2 in wide.
    const { fastening } = planned({ ...base, parts: [fitting('a', entry('knob-1in'), { x: 6, y: 800 })] });
    expect(fastening.parts).toMatchObject([{ fastener: 'hanger-8', from: 'front', at: [{}] }]);
    expect(fastening.checks).toEqual([]);
  });

  it('says where a screw of it finds no wood, or is not known', () => {
    // A strap hinge that leaves its board.
    const board = newPart('panel', {
      id: 'b',
      name: 'b',
      box: { x: 300, y: 800, w: 60, h: 60 },
      stock: 'mdf-half',
    });
    const off = { ...fitting('a', entry('strap-12in'), { x: 300, y: 803 }), on: 'b' };
    expect(planned({ ...base, parts: [board, off] }).fastening.checks).toContainEqual(
      expect.objectContaining({ code: 'fastening.nothing-solid', parts: ['a'] }),
    );
    const part = fitting('a', entry('knob-1in'), { x: 300, y: 800 });
    const sold = {
      ...hardwareOf(entry('knob-1in'), false).sold,
      ways: [{ screw: 'none', from: 'front', into: 1 }],
    };
    expect(planned({ ...base, parts: [{ ...part, sold } as Part] }).fastening.checks).toContainEqual(
      expect.objectContaining({ code: 'fastening.unknown', severity: 'error' }),
    );
  });

  it('stands as far into the swing as it projects', () => {
    const far = { ...fitting('a', entry('lamp-wall'), { x: 300, y: 1500 }), depth: 400 } as Part;
    const near = fitting('a', entry('escutcheon-round'), { x: 300, y: 1500 });
    const of = (part: Part) => planned({ ...base, parts: [part] }).fold;
    expect(of(far).hits.length).toBeGreaterThan(0);
    expect(of(near).hits.length).toBe(0);
  });
});
