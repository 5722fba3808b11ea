import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bed } from '../../src/bed/bed.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { regionOfBox, regionOfRing } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import type { Laid } from '../../src/layout/laid.ts';
import { planLoad } from '../../src/load/planLoad.ts';
import type { Material, Stock } from '../../src/materials/types.ts';
import { GRAVITY, inches } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import { blockInInches } from '../bed/solids.ts';

const material = (id: string, density: number): Material => ({
  id,
  name: id,
  density,
  color: '#e4cfa4',
  edgeThirst: 1,
  hardness: 'soft',
  source: 'test',
});
const sheet = (id: string, of: string, thickness: number): Stock => ({
  form: 'sheet',
  id,
  name: id,
  material: of,
  thickness,
  grain: false,
  sizes: [],
});
const materials = [
  material('mdf700', 700),
  material('mdf750', 750),
  material('pine', 480),
  material('plywood', 500),
];
const stocks = [
  sheet('mdf-half', 'mdf700', inches(0.5)),
  sheet('mdf-3-4', 'mdf750', inches(0.75)),
  sheet('heavy', 'mdf750', 20),
];
const limits = { warnAdded_kg: 1000, warnLift_n: 5000 };
const load = (solids: readonly Solid[], bed: Bed = sampleBed(), more: object = {}) =>
  planLoad({
    bed,
    face: faceOf(bed).face,
    solids,
    parts: [],
    stocks,
    materials,
    coatings: [],
    limits,
    ...more,
  });

describe('mass (densities of check-values section 7)', () => {
  it('a 4 x 8 ft sheet of 1/2 in MDF at 700 kg/m3 weighs 26.43 kg', () => {
    const { added } = load([blockInInches('s', [0, 0, 48, 96], [0, 0.5], { stock: 'mdf-half' })]);
    expect(added).toBeCloseTo(26.43, 2);
  });

  it('a 4 x 8 ft sheet of 3/4 in MDF at 750 kg/m3 weighs 42.48 kg', () => {
    const { added } = load([blockInInches('s', [0, 0, 48, 96], [0, 0.75], { stock: 'mdf-3-4' })]);
    expect(added).toBeCloseTo(42.48, 2);
  });

  it('a foot of 1x4 at 35 lb/ft3 weighs 0.64 lb', () => {
    const kgPerM3 = (35 * 0.45359237) / 0.028316846592;
    const board: Stock = {
      form: 'flat',
      id: '1x4',
      name: '1x4',
      material: 'm35',
      width: inches(3.5),
      thickness: inches(0.75),
      lengths: [],
    };
    const { added } = load([blockInInches('b', [0, 0, 12, 3.5], [0, 0.75], { stock: '1x4' })], sampleBed(), {
      stocks: [board],
      materials: [material('m35', kgPerM3)],
    });
    expect(added / 0.45359237).toBeCloseTo(0.64, 2);
  });

  it('an opening weighs nothing', () => {
    const whole = blockInInches('s', [0, 0, 48, 96], [0, 0.5], { stock: 'mdf-half' });
    const [polygon] = whole.region;
    const [hole] = regionOfBox({ x: inches(12), y: inches(24), w: inches(24), h: inches(24) });
    if (!polygon || !hole) throw new Error('no region');
    const region = [{ outer: polygon.outer, holes: [[...hole.outer].reverse()] }];
    const share = load([{ ...whole, region }]).added / load([whole]).added;
    expect(share).toBeCloseTo(1 - (24 * 24) / (48 * 96), 12);
  });

  it('a round sheet weighs pi r2 of its thickness, not the chords that stand for it', () => {
    const whole = blockInInches('s', [0, 0, 48, 96], [0, 0.5], { stock: 'mdf-half' });
    const disk = regionOfRing(ellipseRing({ x: 0, y: 0, w: inches(48), h: inches(96) }));
    const share = load([{ ...whole, region: disk }]).added / load([whole]).added;
    expect(share / (Math.PI / 4)).toBeCloseTo(1, 9);
  });

  it('half round weighs by its section, and its center lies 4r/3π over its back', () => {
    const r = 10;
    const n = 2000;
    const section = Array.from({ length: n + 1 }, (_, i) => ({
      x: r + r * Math.cos((Math.PI * i) / n),
      y: r * Math.sin((Math.PI * i) / n),
    }));
    const stock: Stock = {
      form: 'shaped',
      id: 'half-round',
      name: '',
      material: 'pine',
      width: 2 * r,
      thickness: r,
      girth: 0,
      section,
      lengths: [],
    };
    const region = regionOfBox({ x: 0, y: 0, w: 2 * r, h: 1000 });
    const solid: Solid = {
      ...blockInInches('h', [0, 0, 1, 1], [0, 1], { stock: 'half-round' }),
      region,
      lengths: [{ start: { x: r, y: 0 }, along: { x: 0, y: 1 }, right: r, onEdge: false, region }],
      z0: 5,
      z1: 15,
    };
    const plan = load([solid], sampleBed(), { stocks: [stock] });
    expect(plan.added).toBeCloseTo((480 * (Math.PI * r * r) * 1000) / 2 / 1e9, 6);
    expect(plan.center.z).toBeCloseTo(5 + (4 * r) / (3 * Math.PI), 4);
  });

  it('a fitting weighs what its label says; what is only painted weighs nothing', () => {
    const fitting = {
      id: 'lamp',
      kind: 'fitting',
      box: { x: 100, y: 200, w: 50, h: 50 },
      z0: 0,
      z1: 80,
      spec: { mass_kg: 2.5 },
    } as unknown as Laid<'fitting'>;
    const solids = [
      blockInInches('lamp', [4, 8, 2, 2], [0, 3], { kind: 'fitting' }),
      blockInInches('pane', [4, 8, 2, 2], [0, 0], { kind: 'painted' }),
    ];
    const plan = load(solids, sampleBed(), { parts: [fitting] });
    expect(plan.byPart).toEqual([{ part: 'lamp', mass: 2.5 }]);
    expect(plan.center).toEqual({ x: 125, y: 225, z: 40 });
    expect(plan.checks).toEqual([]);
  });

  it('paint is weighed where it lies', () => {
    const solids = [blockInInches('s', [0, 0, 48, 96], [0, 0.5], { stock: 'mdf-half' })];
    const plain = load(solids);
    const painted = load(solids, sampleBed(), { coatings: [{ part: 's', liters: 2 }] });
    expect(painted.added - plain.added).toBeCloseTo(1.5, 9);
    expect(painted.byPart).toHaveLength(1);
    expect(painted.center.z).toBeGreaterThan(plain.center.z);
  });

  it('names a stock without a density, once, with its parts', () => {
    const solids = ['a', 'b'].map((id) => blockInInches(id, [0, 0, 1, 1], [0, 1], { stock: 'mystery' }));
    const { checks } = load(solids);
    expect(checks.map((c) => [c.code, c.severity, c.parts, c.figures.stock])).toEqual([
      ['load.no-density', 'warning', ['a', 'b'], 'mystery'],
    ]);
  });
});

describe('moment and lift, by hand', () => {
  // Pivot on the face plane at its lower edge: the leaf of the textbook.
  const pivot = { height: 400, fromFace: 0, fromWall: 300, aboveEdge: 0 };
  const bed = sampleBed({ pivot });
  const { height, width } = faceOf(bed).face;
  const thin = (y: number, h: number, part = 'leaf'): Solid => ({
    ...blockInInches(part, [0, 0, 1, 1], [0, 1], { stock: 'heavy' }),
    region: regionOfBox({ x: 0, y, w: width, h }),
    z0: -10,
    z1: 10,
  });

  it('an even leaf: m g (h/2) sin a (check-values section 11)', () => {
    const plan = load([thin(0, height)], bed);
    for (const { angle, added } of plan.curve) {
      const closed = plan.added * GRAVITY * (height / 2000) * Math.sin((angle * Math.PI) / 180);
      expect(added).toBeCloseTo(closed, 9);
    }
    expect(plan.curve.map((c) => c.angle).slice(0, 3)).toEqual([0, 5, 10]);
    expect(plan.curve.at(-1)?.angle).toBe(90);
    expect(plan.moment).toBeCloseTo(plan.added * GRAVITY * (height / 2000), 9);
  });

  it('an even leaf is lifted at its far edge by half its weight', () => {
    const plan = load([thin(0, height)], bed);
    expect(plan.liftAdded).toBeCloseTo((plan.added * GRAVITY) / 2, 9);
  });

  it('two strips: 10 kg at 1/4 and 6 kg at 3/4 of a leaf', () => {
    const strip = (y: number, mass: number, part: string): Solid => {
      // 750 kg/m3, 20 mm thick, across the whole face.
      const h = (mass * 1e9) / (750 * 20 * width);
      return thin(y - h / 2, h, part);
    };
    const plan = load([strip(height / 4, 10, 'a'), strip((3 * height) / 4, 6, 'b')], bed);
    expect(plan.added).toBeCloseTo(16, 9);
    expect(plan.center.y).toBeCloseTo(((10 * 0.25 + 6 * 0.75) / 16) * height, 9);
    expect(plan.moment).toBeCloseTo((GRAVITY * (10 * 0.25 + 6 * 0.75) * height) / 1000, 9);
    expect(plan.liftAdded).toBeCloseTo(GRAVITY * 7, 9);
  });

  it('what stands out of the face pulls even when stowed', () => {
    const forward: Solid = { ...thin(0, height), z0: 90, z1: 110 };
    const plan = load([forward], bed);
    expect(plan.curve[0]?.added).toBeCloseTo(plan.added * GRAVITY * 0.1, 9);
    // Lowered, depth has no lever.
    expect(plan.moment).toBeCloseTo(plan.added * GRAVITY * (height / 2000), 9);
  });

  it('below the pivot it helps to lift', () => {
    const plan = load([thin(-200, 200)], bed);
    expect(plan.moment).toBeCloseTo(-plan.added * GRAVITY * 0.1, 9);
  });

  it('is the sum of its parts', () => {
    const block = fc
      .record({
        y: fc.integer({ min: 0, max: 1500 }),
        h: fc.integer({ min: 10, max: 400 }),
        z: fc.integer({ min: -50, max: 50 }),
      })
      .map(({ y, h, z }): Solid => ({ ...thin(y, h), z0: z, z1: z + 20 }));
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 6 }), (blocks) => {
        const solids = blocks.map((b, i) => ({ ...b, part: `p${i}` }));
        const whole = load(solids, bed);
        const apart = solids.map((s) => load([s], bed));
        const sum = (of: (p: (typeof apart)[number]) => number) => apart.reduce((a, p) => a + of(p), 0);
        expect(whole.added).toBeCloseTo(
          sum((p) => p.added),
          8,
        );
        expect(whole.moment).toBeCloseTo(
          sum((p) => p.moment),
          8,
        );
        for (const [i, c] of whole.curve.entries()) {
          const apartNow = sum((p) => p.curve[i]?.added ?? Number.NaN);
          expect(c.added).toBeCloseTo(apartNow, 8);
        }
      }),
    );
  });
});

describe('the bare bed', () => {
  it('by hand: boards, platform and mattress of the sample', () => {
    const cubic = 25.4 ** 3 / 1e9;
    const rails = 2 * (78 + 38.5) * 7.25 * 1.5 * 480;
    const cleats = 2 * (75 + 35.5) * 1.5 * 1.5 * 480;
    const platform = 38.5 * 75 * 0.5 * 500;
    const mattress = 38 * 75 * 5 * 40;
    expect(load([]).bare).toBeCloseTo((rails + cleats + platform + mattress) * cubic, 6);
  });

  it('is as even as a leaf: lifted by its weight times the middle over the far edge', () => {
    const plan = load([]);
    // Middle 39 and far edge 78 above the lower edge, pivot 4 above it.
    expect(plan.liftBare).toBeCloseTo((plan.bare * GRAVITY * 35) / 74, 6);
    expect(plan.added).toBe(0);
    expect(plan.liftAdded).toBe(0);
  });

  it('a skin adds its own mass', () => {
    const skin = { thickness: inches(0.25), material: 'plywood' };
    const more = load([], sampleBed({ skin })).bare - load([]).bare;
    expect(more).toBeCloseTo((41.5 * 78 * 0.25 * 500 * 25.4 ** 3) / 1e9, 6);
  });
});

describe('warning levels', () => {
  const solids = [
    blockInInches('light', [0, 0, 10, 10], [0, 0.5], { stock: 'mdf-half' }),
    blockInInches('heavy', [0, 60, 40, 18], [0, 0.75], { stock: 'mdf-3-4' }),
  ];

  it('come above the person’s own levels, heaviest part first', () => {
    const { checks, added, liftAdded } = load(solids, sampleBed(), {
      limits: { warnAdded_kg: 5, warnLift_n: 50 },
    });
    expect(checks.map((c) => [c.code, c.severity, c.parts])).toEqual([
      ['load.heavy', 'warning', ['heavy', 'light']],
      ['load.lift', 'warning', ['heavy', 'light']],
    ]);
    expect(checks.map((c) => c.figures)).toEqual([
      { added_kg: added, limit_kg: 5 },
      { lift_n: liftAdded, limit_n: 50 },
    ]);
  });

  it('do not come at the level itself', () => {
    const { added, liftAdded } = load(solids);
    const { checks } = load(solids, sampleBed(), { limits: { warnAdded_kg: added, warnLift_n: liftAdded } });
    expect(checks).toEqual([]);
  });
});
