import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { FinishInput } from '../../src/finish/input.ts';
import { planFinish } from '../../src/finish/planFinish.ts';
import { subtract, union } from '../../src/geometry/clip.ts';
import { ellipseRing } from '../../src/geometry/figures.ts';
import { rotate } from '../../src/geometry/point.ts';
import {
  areaOf,
  boxOf,
  containsPointInRegion,
  regionOfRing,
  transformRegion,
} from '../../src/geometry/region.ts';
import type { Region } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { regionOfShape } from '../../src/layout/place/shape.ts';
import type { Material, ShapedStock, SheetStock } from '../../src/materials/types.ts';
import { box, finish, input, LEVEL, NO_WASTE, type ShortLettering, solid } from './build.ts';

const use = (given: FinishInput, id = 'red') => {
  const found = planFinish(given).uses.find((u) => u.finish === id);
  if (!found) throw new Error(`${id} is not used`);
  return found;
};
/** Square millimeters. */
const face = (given: FinishInput, id = 'red') => use(given, id).face * 1e6;
const edge = (given: FinishInput, id = 'red') => use(given, id).edge * 1e6;

describe('faces', () => {
  it('takes away what lies above', () => {
    const given = input([
      solid('panel', box(100, 100, 400, 600), 0, 12),
      solid('rail', box(100, 100, 400, 60), 12, 30, { finish: 'blue', on: 'panel' }),
    ]);
    expect(face(given)).toBeCloseTo(400 * 540, 6);
    expect(face(given, 'blue')).toBeCloseTo(400 * 60, 6);
  });

  it('counts a framed panel by closed forms: frame around, panel within', () => {
    const frame = subtract(box(0, 0, 600, 800), box(50, 50, 500, 700));
    const given = input([
      solid('panel', box(0, 0, 600, 800), 0, 6),
      solid('frame', frame, 6, 25, { finish: 'blue', on: 'panel' }),
    ]);
    expect(face(given)).toBeCloseTo(500 * 700, 6);
    expect(face(given, 'blue')).toBeCloseTo(600 * 800 - 500 * 700, 6);
    // Outside border and the opening's, at the frame's own height; below it the panel's edge goes on.
    expect(edge(given, 'blue')).toBeCloseTo((2 * 1400 + 2 * 1200) * 19, 3);
    expect(edge(given)).toBeCloseTo(2 * 1400 * 6, 3);
  });

  it('counts an annulus: pi (R2 - r2), and both its walls', () => {
    const disk = (r: number) => regionOfRing(ellipseRing({ x: 500 - r, y: 500 - r, w: 2 * r, h: 2 * r }));
    const given = input([solid('ring', subtract(disk(300), disk(200)), 0, 18)]);
    // Of the circles themselves, and not of the chords that stand for them.
    expect(face(given) / (Math.PI * (300 ** 2 - 200 ** 2))).toBeCloseTo(1, 9);
    expect(edge(given) / (2 * Math.PI * 500 * 18)).toBeCloseTo(1, 9);
  });

  it('counts what a rail leaves of a disk by the segment formula', () => {
    const disk = regionOfRing(ellipseRing({ x: 200, y: 200, w: 600, h: 600 }));
    const given = input([
      solid('disk', disk, 0, 18),
      solid('rail', box(100, 440, 800, 120), 18, 30, { finish: 'blue', on: 'disk' }),
    ]);
    // Two segments that rise 240 on a circle of 300: (R2 / 2) (a - sin a), cos(a / 2) = 60 / 300.
    const a = 2 * Math.acos(60 / 300);
    const left = 300 ** 2 * (a - Math.sin(a));
    // The grid of the clipper along both sides of the rail.
    expect(Math.abs(face(given) - left)).toBeLessThan(2 * 600 * 2e-4);
  });

  it('counts sawn letters by closed forms: their faces, and perimeter times thickness all around', () => {
    // A ring of a letter, 100 by 140 with a counter of 60 by 80, and a bar of 30 by 140, on a sign.
    const ring = subtract(box(200, 300, 100, 140), box(220, 330, 60, 80));
    const bar = box(340, 300, 30, 140);
    const board = solid('sign', box(100, 200, 400, 400), 0, 12, { kind: 'sign', finish: 'blue' });
    const letter = (region: Region) =>
      solid('sign', region, 12, 21, { kind: 'sign', on: 'sign', stock: 'mdf' });
    const layers = (more: ShortLettering['layers'] = []) => [
      {
        sign: 'sign',
        at: { x: 100, y: 200 },
        layers: [{ role: 'fill', finish: 'red', region: box(100, 100, 100, 140) }, ...more] as const,
      },
    ];
    const given = input([board], { sawn: [letter(ring), letter(bar)], lettering: layers() });
    const face1 = 100 * 140 - 60 * 80 + 30 * 140;
    const walls = (2 * 240 + 2 * 140 + 2 * 170) * 9;
    expect(face(given)).toBeCloseTo(face1, 6);
    expect(edge(given)).toBeCloseTo(walls, 3);
    // The sign under them is not seen; its own edges are.
    expect(face(given, 'blue')).toBeCloseTo(400 * 400 - face1, 6);
    expect(edge(given, 'blue')).toBeCloseTo(4 * 400 * 12, 3);

    // A line inside the letter lies on its front; wood that is sawn is primed, under the line too.
    const thirsty: Material = {
      id: 'mdf',
      name: 'MDF',
      density: 750,
      edgeThirst: 2,
      color: '#c0a080',
      hardness: 'board',
      source: '',
    };
    const sheet: SheetStock = {
      id: 'mdf',
      name: 'MDF 9',
      form: 'sheet',
      material: 'mdf',
      thickness: 9,
      sizes: [],
      grain: false,
    };
    const line = { role: 'inline', finish: 'blue', region: box(250, 110, 10, 120) } as const;
    const primer = { rate_m2_l: 10, coats: 1 };
    const lined = input([board], {
      sawn: [letter(bar)],
      lettering: layers([line]),
      finishes: [finish('red', { primer }), finish('blue')],
      stocks: new Map([['mdf', sheet]]),
      materials: new Map([['mdf', thirsty]]),
    });
    expect(face(lined)).toBeCloseTo(30 * 140 - 10 * 120, 6);
    expect(edge(lined)).toBeCloseTo(340 * 9, 3);
    expect(face(lined, 'blue')).toBeCloseTo(400 * 400 - 30 * 140 + 10 * 120, 6);
    expect(use(lined).primer).toBeCloseTo((30 * 140 + 2 * 340 * 9) / 1e6 / 10, 9);
  });

  it('leaves out edges of sawn letters that stand against a higher part', () => {
    const board = solid('sign', box(100, 200, 400, 400), 0, 12, { kind: 'sign', finish: 'blue' });
    const rail = solid('rail', box(100, 440, 400, 60), 12, 17, { on: 'sign', finish: 'blue' });
    const bar = solid('sign', box(340, 300, 30, 140), 12, 21, { kind: 'sign', on: 'sign' });
    const lettering = [
      { sign: 'sign', at: { x: 0, y: 0 }, layers: [{ role: 'fill', finish: 'red', region: [] }] as const },
    ];
    expect(edge(input([board, rail], { sawn: [bar], lettering }))).toBeCloseTo(340 * 9 - 30 * 5, 3);
  });

  it('paints over paint: later shapes over earlier ones, letters over their sign', () => {
    const given = input(
      [
        solid('sign', box(0, 0, 500, 200), 0, 12, { kind: 'sign' }),
        solid('band', box(0, 0, 500, 50), 12, 12, { kind: 'painted', finish: 'blue', on: 'sign' }),
        solid('dot', box(0, 0, 100, 100), 12, 12, { kind: 'painted', finish: 'green', on: 'sign' }),
      ],
      {
        finishes: [finish('red'), finish('blue'), finish('green'), finish('white', { color: '#ffffff' })],
        lettering: [
          {
            sign: 'sign',
            at: { x: 200, y: 80 },
            layers: [{ role: 'fill', finish: 'white', region: box(0, 0, 100, 100) }],
          },
        ],
      },
    );
    expect(face(given, 'green')).toBeCloseTo(100 * 100, 6);
    expect(face(given, 'blue')).toBeCloseTo(400 * 50, 6);
    expect(face(given, 'white')).toBeCloseTo(100 * 100, 6);
    expect(face(given)).toBeCloseTo(500 * 200 - 100 * 100 - 400 * 50 - 100 * 100, 6);
  });

  it('paints a shape only where there is wood at its height', () => {
    const given = input([
      solid('panel', box(0, 0, 100, 100), 0, 10),
      solid('stripe', box(-50, 40, 200, 20), 10, 10, { kind: 'painted', finish: 'blue', on: 'panel' }),
    ]);
    expect(face(given, 'blue')).toBeCloseTo(100 * 20, 6);
  });

  it('reports bare wood of the bed without a finish', () => {
    const { shown } = planFinish(input([solid('panel', box(0, 0, 1000, 500), 0, 10)]));
    const bare = shown.find((area) => area.part === 'skin');
    expect(bare?.finish).toBeNull();
    expect(areaOf(bare?.region ?? [])).toBeCloseTo(1000 * 1500, 6);
  });

  it('shows the face once: what is shown adds up to the outline of everything', () => {
    fc.assert(
      fc.property(layouts, (solids) => {
        const { shown } = planFinish(input(solids));
        const sum = shown.reduce((all, { region }) => all + areaOf(region), 0);
        const whole = areaOf(union([LEVEL.region, ...solids.map((s) => s.region)]));
        expect(Math.abs(sum - whole)).toBeLessThan(5);
      }),
      { numRuns: 60 },
    );
  });

  it('agrees with counting pixels on random layouts', () => {
    fc.assert(
      fc.property(layouts, (solids) => {
        const plan = planFinish(input(solids));
        const boxes = solids.map((s) => boxOf(s.region));
        const step = 8;
        const counts = new Map<string, number>();
        for (let y = step / 2; y < 2000; y += step) {
          for (let x = step / 2; x < 1000; x += step) {
            let top: Solid | undefined;
            for (const [i, s] of solids.entries()) {
              const b = boxes[i];
              if (!b || x < b.x || y < b.y || x > b.x + b.w || y > b.y + b.h) continue;
              if ((!top || s.z1 > top.z1) && containsPointInRegion(s.region, { x, y })) top = s;
            }
            if (top?.finish) counts.set(top.finish, (counts.get(top.finish) ?? 0) + step * step);
          }
        }
        for (const { finish: id, face: area } of plan.uses) {
          // A pixel more or less along borders of some meters.
          expect(Math.abs(area - (counts.get(id) ?? 0) * 1e-6)).toBeLessThan(0.02);
        }
      }),
      { numRuns: 10 },
    );
  });
});

/** Parts anywhere on the face, at heights all different, so that what lies on top is plain. */
const layouts = fc
  .array(
    fc.record({
      x: fc.integer({ min: 100, max: 700 }),
      y: fc.integer({ min: 100, max: 1500 }),
      w: fc.integer({ min: 10, max: 200 }),
      h: fc.integer({ min: 10, max: 400 }),
      angle: fc.constantFrom(0, 0, 30, -7.5),
      finish: fc.constantFrom('red', 'blue', null),
    }),
    { minLength: 1, maxLength: 14 },
  )
  .map((parts) =>
    parts.map(({ x, y, w, h, angle, finish: color }, i) => {
      const region = transformRegion(box(x, y, w, h), (p) =>
        rotate(p, angle, { x: x + w / 2, y: y + h / 2 }),
      );
      return solid(`p${i}`, region, 0, 5 + ((i * 7) % 15) + i / 100, { finish: color });
    }),
  );

describe('edges', () => {
  it('counts all around a lone part, insides of openings too', () => {
    const door = subtract(box(100, 100, 300, 500), box(150, 150, 100, 100));
    expect(edge(input([solid('door', door, 0, 12)]))).toBeCloseTo((2 * 800 + 400) * 12, 3);
  });

  it('counts a step once: against a taller neighbor nothing, over a lower one the difference', () => {
    const given = input([
      solid('low', box(100, 100, 100, 300), 0, 10),
      solid('high', box(200, 100, 100, 300), 0, 25, { finish: 'blue' }),
    ]);
    expect(edge(given)).toBeCloseTo((100 + 100 + 300) * 10, 3);
    expect(edge(given, 'blue')).toBeCloseTo((100 + 100 + 300) * 25 + 300 * 15, 3);
  });

  it('counts a staircase of equal parts by its risers', () => {
    const steps = [1, 2, 3, 4].map((n) => solid(`s${n}`, box(100 * n, 0, 100, 50), 0, 10 * n));
    // Ends 50 x 10 and 50 x 40, risers 3 x 50 x 10; fronts and backs 2 x 100 x (10 + 20 + 30 + 40).
    expect(edge(input(steps))).toBeCloseTo(50 * 10 + 50 * 40 + 3 * 50 * 10 + 2 * 100 * 100, 3);
  });

  it('hides only the stretch that a short neighbor stands against', () => {
    const given = input([
      solid('rail', box(0, 0, 400, 50), 0, 20),
      solid('post', box(100, 50, 60, 500), 0, 20, { finish: 'blue' }),
    ]);
    expect(edge(given)).toBeCloseTo((2 * 450 - 60) * 20, 3);
  });

  it('in a recess counts what rises over the rim only', () => {
    const field = { ...LEVEL, id: 'field', z: -8, region: box(100, 100, 800, 1800) } as const;
    const rim = { ...LEVEL, id: 'rim', region: subtract(LEVEL.region, field.region) } as const;
    const given = input([solid('panel', field.region, -8, 4, { on: 'field' })], {
      face: { levels: [rim, field] },
    });
    expect(edge(given)).toBeCloseTo(2 * (800 + 1800) * 4, 3);
    const flush = input([solid('panel', field.region, -8, 0, { on: 'field' })], {
      face: { levels: [rim, field] },
    });
    expect(edge(flush)).toBe(0);
  });

  it('leaves a gap open and closes what rounding leaves', () => {
    const pair = (gap: number) =>
      input([solid('a', box(0, 0, 100, 100), 0, 10), solid('b', box(100 + gap, 0, 100, 100), 0, 10)]);
    expect(edge(pair(1e-5))).toBeCloseTo(6 * 100 * 10, 3);
    expect(edge(pair(0.5))).toBeCloseTo(8 * 100 * 10, 3);
  });

  it('does not count paint as wood that stands against an edge', () => {
    const given = input([
      solid('panel', box(0, 0, 100, 100), 0, 10),
      solid('floor', box(100, 0, 100, 100), 0, 0, { kind: 'painted', finish: 'blue' }),
    ]);
    expect(edge(given)).toBeCloseTo(400 * 10, 3);
  });
});

const molding: ShapedStock = {
  form: 'shaped',
  id: 'bead',
  name: 'Bead',
  material: 'pine',
  width: 20,
  thickness: 10,
  girth: 31,
  section: [],
  lengths: [],
};
const sheet: SheetStock = {
  form: 'sheet',
  id: 'mdf',
  name: 'MDF',
  material: 'mdf',
  thickness: 12,
  grain: false,
  sizes: [],
};
const mdf: Material = {
  id: 'mdf',
  name: 'MDF',
  density: 750,
  color: '#b79a74',
  edgeThirst: 2.5,
  hardness: 'board',
  source: '',
};

describe('girth, backs and primer', () => {
  it('paints a molding by its girth: 1 m of 20 wide with girth 31 is 0.031 m2', () => {
    const strip = solid('strip', box(0, 0, 1000, 20), 0, 10, { stock: 'bead', kind: 'strip' });
    const given = input([strip], { stocks: new Map([['bead', molding]]) });
    expect(use(given).face + use(given).edge).toBeCloseTo(0.031, 9);
    const onEdge = input([solid('strip', box(0, 0, 1000, 10), 0, 20, { stock: 'bead', kind: 'strip' })], {
      stocks: new Map([['bead', molding]]),
    });
    expect(use(onEdge).face + use(onEdge).edge).toBeCloseTo(0.031, 9);
  });

  it('leaves covered wood alone, and with back-priming seals the underside but where it is glued', () => {
    const back = (more: Partial<FinishInput>) =>
      use(input(solids, { ...more, lettering: [] })).painted.back * 1e6;
    const solids = [
      solid('panel', box(0, 0, 500, 400), 0, 10),
      solid('block', box(0, 0, 100, 100), 10, 20, { finish: null, on: 'panel' }),
    ];
    expect(back({})).toBe(0);
    const paint = { ...NO_WASTE, backPriming: true };
    expect(back({ paint })).toBeCloseTo(500 * 400, 6);
    expect(back({ paint, glued: new Set(['panel']) })).toBe(0);
  });

  it('lets cut edges of MDF drink 2.5 times their primer, and paint over paint none', () => {
    const primer = { coats: 1, rate_m2_l: 8 };
    const given = input(
      [
        solid('panel', box(0, 0, 500, 400), 0, 12, { stock: 'mdf' }),
        solid('dot', box(0, 0, 100, 100), 12, 12, { kind: 'painted', finish: 'blue', on: 'panel' }),
        solid('line', box(600, 0, 100, 100), 0, 0, { kind: 'painted', finish: 'green', on: 'skin' }),
      ],
      {
        finishes: ['red', 'blue', 'green'].map((id) => finish(id, { primer })),
        stocks: new Map([['mdf', sheet]]),
        materials: new Map([['mdf', mdf]]),
      },
    );
    const edges = 2 * 900 * 12;
    expect(use(given).primer).toBeCloseTo(((500 * 400 + 2.5 * edges) * 1e-6) / 8, 9);
    expect(use(given, 'blue').primer).toBe(0);
    expect(use(given, 'green').primer).toBeCloseTo((100 * 100 * 1e-6) / 8, 9);
  });
});

describe('tape', () => {
  it('follows the border of a painted shape with another color', () => {
    const given = input([
      solid('panel', box(0, 0, 500, 400), 0, 12),
      solid('dot', box(100, 100, 50, 80), 12, 12, { kind: 'painted', finish: 'blue', on: 'panel' }),
      solid('same', box(300, 100, 50, 80), 12, 12, { kind: 'painted', on: 'panel' }),
    ]);
    expect(use(given, 'blue').tape).toBeCloseTo(260, 3);
    expect(use(given).tape).toBe(0);
  });

  it('goes around a circle by its circumference: 2 pi r', () => {
    const round = regionOfShape({ form: 'round' }, { x: 100, y: 100, w: 200, h: 200 });
    const given = input([
      solid('panel', box(0, 0, 500, 400), 0, 12),
      solid('dot', round, 12, 12, { kind: 'painted', finish: 'blue', on: 'panel' }),
    ]);
    expect(use(given, 'blue').tape).toBeCloseTo(2 * Math.PI * 100, 2);
  });

  it('is not put where the shape ends with its part, and once between two shapes', () => {
    const given = input(
      [
        solid('panel', box(0, 0, 500, 400), 0, 12),
        solid('low', box(0, 0, 500, 100), 12, 12, { kind: 'painted', finish: 'blue', on: 'panel' }),
        solid('next', box(0, 100, 500, 100), 12, 12, { kind: 'painted', finish: 'green', on: 'panel' }),
      ],
      { finishes: [finish('red'), finish('blue'), finish('green')] },
    );
    expect(use(given, 'blue').tape).toBe(0);
    expect(use(given, 'green').tape).toBeCloseTo(1000, 3);
  });
});

describe('before and after fixing', () => {
  it('paints signs and other colors on the bench, the color of the support in place', () => {
    const { before, after } = planFinish(
      input([
        solid('panel', box(0, 0, 500, 400), 0, 12),
        solid('rail', box(0, 0, 500, 50), 12, 20, { on: 'panel' }),
        solid('trim', box(0, 100, 500, 50), 12, 20, { on: 'panel', finish: 'blue' }),
        solid('sign', box(0, 200, 500, 50), 12, 20, { on: 'panel', kind: 'sign' }),
        solid('dot', box(0, 300, 10, 10), 12, 12, { on: 'panel', kind: 'painted', finish: 'blue' }),
        solid('line', box(600, 0, 10, 10), 0, 0, { kind: 'painted', finish: 'blue' }),
        solid('bare', box(700, 0, 50, 50), 0, 12, { finish: null }),
      ]),
    );
    expect(before).toEqual(['panel', 'trim', 'sign', 'dot']);
    expect(after).toEqual(['rail', 'line']);
  });
});
