import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import type { Part } from '../../../src/design/schema.ts';
import { areaOf, boxOf } from '../../../src/geometry/region.ts';
import type { Laid, LaidKind, Layout } from '../../../src/layout/laid.ts';
import { at, codes, design, fitting, lay, panel, recessedFace, run, STOCKS, strip } from '../sample.ts';

function laidAs<K extends LaidKind>(layout: Layout, id: string, kind: K): Laid<K> {
  const found = layout.parts.find((part) => part.id === id);
  if (found?.kind !== kind) throw new Error(`${id} is not laid as ${kind}`);
  return found as Laid<K>;
}

const areaOfPart = (layout: Layout, id: string): number =>
  areaOf(layout.parts.find((part) => part.id === id)?.region ?? []);

describe('heights', () => {
  const face = recessedFace();

  it('lies on the level under the largest share of it, on a named level, on a part', () => {
    const parts: Part[] = [
      { ...fitting('knob', at(200, 200, 20, 20)), on: 'board' },
      strip('board', at(150, 150, 90, 900), 'up', 'board'),
      panel('over', at(50, 1850, 300, 100)),
      { ...panel('told', at(300, 300, 100, 100)), on: 'rim' },
    ];
    const layout = lay(design(parts), { face });
    const heights = Object.fromEntries(layout.parts.map((p) => [p.id, [p.on, p.z0, p.z1]]));
    expect(heights).toEqual({
      board: ['field', -30, -11],
      knob: ['board', -11, 14],
      // 300 x 50 over the rim at the top, 250 x 50 over the field, the rest over the rim at the left.
      over: ['rim', 0, 12],
      told: ['rim', 0, 12],
    });
    const order = layout.parts.map((p) => p.id);
    expect(order.indexOf('board')).toBeLessThan(order.indexOf('knob'));
  });

  it('lies on an array by its highest member and on a single member', () => {
    const array: Part = {
      ...newPart('array', { id: 'm', name: 'M', box: at(0, 0, 1000, 500), stock: 'lath' }),
      overrides: { '1,0': { stock: 'board' }, '2,0': { omit: true } },
    };
    const parts: Part[] = [
      array,
      { ...fitting('a', at(0, 0, 10, 10)), on: 'm' },
      { ...fitting('b', at(0, 0, 10, 10)), on: 'm[0,0]' },
      { ...fitting('c', at(0, 0, 10, 10)), on: 'm[2,0]' },
    ];
    const layout = lay(design(parts));
    expect(laidAs(layout, 'a', 'fitting').z0).toBe(19);
    expect(laidAs(layout, 'b', 'fitting').z0).toBe(6);
    expect(
      layout.checks.filter((c) => c.code === 'part.unknown-support').map((c) => [c.parts, c.figures]),
    ).toEqual([[['c'], { on: 'm[2,0]' }]]);
  });

  it('names rings of parts that lie on each other, from the least id, once', () => {
    const parts: Part[] = [
      { ...fitting('top', at(0, 0, 10, 10)), on: 'c' },
      { ...fitting('c', at(0, 0, 10, 10)), on: 'b' },
      { ...fitting('b', at(0, 0, 10, 10)), on: 'c' },
      { ...fitting('self', at(50, 0, 10, 10)), on: 'self' },
    ];
    const layout = lay(design(parts));
    expect(layout.checks.filter((c) => c.code === 'part.support-cycle').map((c) => c.parts)).toEqual([
      ['b', 'c'],
      ['self'],
    ]);
    expect(layout.parts).toHaveLength(4);
    expect(codes(layout)).not.toContain('part.unknown-support');
  });
});

describe('strips', () => {
  it('takes its width from the stock about its center line, and stands on edge', () => {
    const parts = [strip('a', at(100, 0, 60, 500)), { ...strip('b', at(300, 0, 6, 500)), onEdge: true }];
    const layout = lay(design(parts));
    expect(laidAs(layout, 'a', 'strip').box).toEqual(at(110, 0, 40, 500));
    expect(laidAs(layout, 'a', 'strip').leg).toEqual({
      start: { x: 130, y: 0 },
      end: { x: 130, y: 500 },
      width: 40,
      thickness: 6,
      angle: 90,
    });
    expect(laidAs(layout, 'b', 'strip').box.w).toBe(6);
    expect(laidAs(layout, 'b', 'strip').z1).toBe(40);
  });

  it('a brace is the band of its stock clipped by its box, to a point in each corner', () => {
    for (const lie of ['rising', 'falling'] as const) {
      const layout = lay(design([{ ...strip('a', at(100, 100, 300, 400)), lie }]));
      const { region, leg } = laidAs(layout, 'a', 'strip');
      expect(boxOf(region)).toEqual(at(100, 100, 300, 400));
      expect(leg.angle).toBeCloseTo((lie === 'rising' ? 1 : -1) * 53.13010235415598, 9);
      // Band less four corner triangles: hypotenuse 500 x 40, each end loses the two right triangles of height
      // 20 with legs 20 * 4/3 and 20 * 3/4 along the diagonal, and gains nothing beyond the corner.
      const lost = 2 * (0.5 * 20 * ((20 * 4) / 3 + (20 * 3) / 4));
      expect(areaOf(region)).toBeCloseTo(500 * 40 - lost, 2);
      expect(region[0]?.outer).toHaveLength(6);
    }
  });

  it('a turned strip lies about the center of a box that its length and angle decide', () => {
    const layout = lay(
      design([{ ...strip('a', at(200, 200, 0, 0)), lie: 'turned', angle: 30, length: 200 }]),
    );
    const { box, leg, region } = laidAs(layout, 'a', 'strip');
    const cos = Math.sqrt(3) / 2;
    expect(box.w).toBeCloseTo(200 * cos + 40 * 0.5, 9);
    expect(box.h).toBeCloseTo(200 * 0.5 + 40 * cos, 9);
    expect(box.x + box.w / 2).toBeCloseTo(200, 9);
    expect(leg.start.x).toBeCloseTo(200 - 100 * cos, 9);
    expect(areaOf(region)).toBeCloseTo(8000, 6);
    expect(boxOf(region)?.w).toBeCloseTo(box.w, 6);
  });
});

describe('runs', () => {
  it('a frame lies inside or outside of its box; its legs meet at the miters', () => {
    const inside = laidAs(lay(design([run('a', at(0, 0, 300, 200))])), 'a', 'run');
    expect(areaOf(inside.region)).toBeCloseTo(300 * 200 - 220 * 120, 6);
    expect(inside.legs.map((l) => [l.start, l.angle])).toEqual([
      [{ x: 20, y: 20 }, 0],
      [{ x: 280, y: 20 }, 90],
      [{ x: 280, y: 180 }, 180],
      [{ x: 20, y: 180 }, -90],
    ]);
    const outside = laidAs(
      lay(design([{ ...run('a', at(100, 100, 300, 200)), side: 'outside' }])),
      'a',
      'run',
    );
    expect(areaOf(outside.region)).toBeCloseTo(380 * 280 - 300 * 200, 6);
    expect(boxOf(outside.region)).toEqual(at(60, 60, 380, 280));
  });

  it('an arched frame has its corners on the circle through springing points and crown', () => {
    const part: Part = { ...run('a', at(0, 0, 400, 600)), path: { form: 'arched', rise: 100, segments: 8 } };
    const { legs, region } = laidAs(lay(design([part])), 'a', 'run');
    expect(legs).toHaveLength(3 + 8);
    // Radius (200^2 + 100^2)/(2 * 100) = 250; the crown is corner 4 of the 8 segments.
    const bounds = boxOf(region);
    expect(bounds?.y).toBeCloseTo(0, 9);
    expect((bounds?.y ?? 0) + (bounds?.h ?? 0)).toBeCloseTo(600, 6);
    const corners = region[0]?.outer.filter((p) => p.y > 500 - 1e-6) ?? [];
    expect(corners).toHaveLength(9);
    for (const p of corners) expect(Math.hypot(p.x - 200, p.y - 350)).toBeCloseTo(250, 6);
  });

  it('an open path keeps its stock on the left or on the right of travel', () => {
    const corner = {
      form: 'points',
      closed: false,
      points: [
        { u: 0, v: 0 },
        { u: 1, v: 0 },
        { u: 1, v: 1 },
      ],
    } as const;
    const left = laidAs(lay(design([{ ...run('a', at(0, 0, 300, 200)), path: corner }])), 'a', 'run');
    expect(left.closed).toBe(false);
    expect(left.legs).toHaveLength(2);
    expect(areaOf(left.region)).toBeCloseTo(300 * 40 + 160 * 40, 3);
    const right = laidAs(
      lay(design([{ ...run('a', at(0, 0, 300, 200)), side: 'outside', path: corner }])),
      'a',
      'run',
    );
    expect(areaOf(right.region)).toBeCloseTo(340 * 40 + 200 * 40, 3);
  });

  it('a closed path of points runs counterclockwise, whichever way it was drawn', () => {
    const square = [
      { u: 0, v: 0 },
      { u: 0, v: 1 },
      { u: 1, v: 1 },
      { u: 1, v: 0 },
    ];
    const part: Part = {
      ...run('a', at(0, 0, 300, 200)),
      path: { form: 'points', closed: true, points: square },
    };
    const { legs, region } = laidAs(lay(design([part])), 'a', 'run');
    expect(areaOf(region)).toBeCloseTo(300 * 200 - 220 * 120, 3);
    expect(legs.map((l) => l.angle).sort((a, b) => a - b)).toEqual([-90, 0, 90, 180]);
  });

  it('a path that turns back on itself stays within reach of its corner', () => {
    const points = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 0, v: 1 },
    ];
    // A hundredth of a millimeter high over 300: mitered, the corner would run out 2 * 40 * 300 / 0.01 mm.
    const part: Part = {
      ...run('a', at(0, 0, 300, 0.01)),
      path: { form: 'points', closed: false, points },
    };
    const { box } = laidAs(lay(design([part])), 'a', 'run');
    expect(box.w).toBeLessThan(300 + 100 * 40);
  });

  it('stock wider than the frame has room for covers it', () => {
    const layout = lay(design([{ ...run('a', at(0, 0, 300, 60)) }]));
    expect(boxOf(laidAs(layout, 'a', 'run').region)?.w).toBeGreaterThanOrEqual(300 - 1e-6);
  });
});

describe('panels', () => {
  it('rectangle, arched, round and polygon, less their openings', () => {
    const opening = {
      id: 'o',
      shape: { form: 'rectangle' },
      margin: { left: 10, right: 20, bottom: 30, top: 40 },
    } as const;
    const parts: Part[] = [
      { ...panel('a', at(0, 0, 300, 200)), openings: [opening] },
      { ...panel('b', at(0, 300, 300, 200)), shape: { form: 'round' } },
      { ...panel('c', at(0, 600, 300, 200)), shape: { form: 'arched', rise: 150 } },
      {
        ...panel('d', at(0, 900, 300, 200)),
        shape: {
          form: 'polygon',
          points: [
            { u: 0, v: 0 },
            { u: 0.5, v: 1 },
            { u: 1, v: 0 },
          ],
        },
      },
    ];
    const layout = lay(design(parts));
    expect(areaOfPart(layout, 'a')).toBeCloseTo(300 * 200 - 270 * 130, 3);
    // Chords of at most 0.05 mm sagitta: a little under the true area.
    expect(Math.abs(areaOfPart(layout, 'b') / (Math.PI * 150 * 100) - 1)).toBeLessThan(2e-3);
    expect(Math.abs(areaOfPart(layout, 'c') / (300 * 50 + (Math.PI * 150 * 150) / 2) - 1)).toBeLessThan(2e-3);
    expect(areaOfPart(layout, 'd')).toBeCloseTo(30_000, 3);
  });

  it('a sign is sized from outside', () => {
    const sign = newPart('sign', { id: 's', name: 'S', box: at(100, 100, 300, 100), stock: 'sheet' });
    const layout = lay(design([sign]), { sizes: new Map([['s', { w: 500 }]]) });
    expect(laidAs(layout, 's', 'sign').box).toEqual(at(0, 100, 500, 100));
    expect(laidAs(layout, 's', 'sign').lettering).toBe(sign.lettering);
  });
});

describe('arrays', () => {
  it('expands a grid with its own finish, stock and gaps in it', () => {
    const array: Part = {
      ...newPart('array', { id: 'm', name: 'Panes', box: at(0, 0, 400, 300) }),
      member: {
        kind: 'panel',
        finish: 'trim',
        stock: 'sheet',
        shape: { form: 'rectangle' },
        openings: [],
        grain: 'any',
      },
      memberSize: { w: 100, h: 50 },
      across: { mode: 'gaps', count: 3 },
      up: { mode: 'flush', count: 2 },
      overrides: { '1,0': { omit: true }, '2,1': { finish: 'ground' } },
    };
    const layout = lay(design([array]));
    expect(layout.parts.map((p) => p.id)).toEqual(['m[0,0]', 'm[2,0]', 'm[0,1]', 'm[1,1]', 'm[2,1]']);
    expect(laidAs(layout, 'm[1,1]', 'panel').box).toEqual(at(150, 250, 100, 50));
    expect(laidAs(layout, 'm[1,1]', 'panel').member).toEqual({ column: 1, row: 1 });
    expect(layout.parts.map((p) => p.finish)).toEqual(['trim', 'trim', 'trim', 'trim', 'ground']);
    expect(laidAs(layout, 'm[2,1]', 'panel').name).toBe('Panes 3/2');
    expect(layout.checks).toEqual([]);
  });

  it('stretches in a direction without spacing; a member of wider stock keeps its center line', () => {
    const array: Part = {
      ...newPart('array', { id: 'm', name: 'M', box: at(0, 100, 1000, 500), stock: 'lath' }),
      across: { mode: 'flush', count: 3 },
      overrides: { '1,0': { stock: 'board' } },
    };
    const layout = lay(design([array]));
    expect(layout.parts.map((p) => p.box)).toEqual([
      at(0, 100, 40, 500),
      at(455, 100, 90, 500),
      at(960, 100, 40, 500),
    ]);
  });

  it('members that do not fit are told', () => {
    const array: Part = {
      ...newPart('array', { id: 'm', name: 'M', box: at(0, 0, 100, 500), stock: 'lath' }),
      across: { mode: 'gaps', count: 3 },
    };
    expect(lay(design([array])).checks.map((c) => [c.code, c.figures])).toEqual([
      ['array.count', { count: 3, room_mm: 100 }],
      ['part.off-face', { over_mm: 5 }],
    ]);
  });
});

describe('more than can be laid', () => {
  it('an array beyond two thousand parts in all is left out and named; the rest stays', () => {
    const huge: Part = {
      ...newPart('array', { id: 'm', name: 'M', box: at(0, 0, 1000, 500), stock: 'lath' }),
      member: {
        kind: 'painted',
        finish: null,
        shape: { form: 'rectangle' },
      },
      memberSize: { w: 1, h: 1 },
      across: { mode: 'gaps', count: 400 },
      up: { mode: 'gaps', count: 400 },
    };
    const layout = lay(design([huge, panel('a', at(0, 0, 10, 10))]));
    expect(layout.parts.map(({ id }) => id)).toEqual(['a']);
    expect(layout.checks.filter((c) => c.code === 'limit.parts')).toEqual([
      { code: 'limit.parts', severity: 'error', parts: ['m'], figures: { count: 160_001, most: 2000 } },
    ]);
  });
});

describe('what is not in the tables', () => {
  it('unknown stock, stock of the wrong kind, unknown finish, no size', () => {
    const parts: Part[] = [
      { ...panel('a', at(0, 0, 10, 10)), stock: 'gone' },
      { ...panel('b', at(50, 0, 10, 10)), stock: 'lath' },
      { ...strip('c', at(100, 0, 40, 100)), stock: 'sheet' },
      { ...run('d', at(200, 0, 100, 100)), stock: 'gone' },
      { ...panel('e', at(350, 0, 10, 10)), finish: 'gone' },
      panel('f', at(400, 0, 0, 10)),
    ];
    const layout = lay(design(parts), { stocks: STOCKS });
    expect(layout.checks.map((c) => [c.code, c.parts[0], Object.values(c.figures)[0]])).toEqual([
      ['part.no-size', 'f', 0],
      ['part.unknown-finish', 'e', 'gone'],
      ['part.unknown-stock', 'a', 'gone'],
      ['part.unknown-stock', 'b', 'lath'],
      ['part.unknown-stock', 'c', 'sheet'],
      ['part.unknown-stock', 'd', 'gone'],
    ]);
    expect(layout.parts.find((p) => p.id === 'a')?.stock).toBeNull();
    expect(layout.parts.find((p) => p.id === 'e')?.finish).toBeNull();
    expect(layout.parts.some((p) => p.id === 'f')).toBe(false);
  });
});
