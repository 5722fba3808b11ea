import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import type { Design, Part, Rule, Strip } from '../../../src/design/schema.ts';
import { designSchema } from '../../../src/design/schema.ts';
import { subtractedArea } from '../../../src/geometry/clip.ts';
import { areaOf, transformRegion } from '../../../src/geometry/region.ts';
import { align } from '../../../src/layout/arrange/align.ts';
import type { Arranged, Arranging } from '../../../src/layout/arrange/arranged.ts';
import { copyByRule } from '../../../src/layout/arrange/copy.ts';
import { distribute } from '../../../src/layout/arrange/distribute.ts';
import { type DivideRequest, divide } from '../../../src/layout/arrange/divide.ts';
import { mirrorCopy } from '../../../src/layout/arrange/mirror.ts';
import { boundsOf } from '../../../src/layout/bounds.ts';
import { edgesAt } from '../../../src/layout/edgeAt.ts';
import { layOut } from '../../../src/layout/layout.ts';
import { at, boxOfPart, design, fitting, panel, plainFace, run, STOCKS, strip } from '../sample.ts';

function arranging(parts: readonly Part[], rules: readonly Rule[] = [], face = plainFace()): Arranging {
  const input = { design: design(parts, rules), face, keepClears: [], stocks: STOCKS };
  return { input, layout: layOut(input) };
}

/** The design with the arrangement in it; it is one that can be saved. */
function carriedOut({ input }: Arranging, { add, change, rules, joints }: Arranged): Design {
  const changed = new Map(change.map((part) => [part.id, part]));
  const d: Design = {
    ...input.design,
    parts: [...input.design.parts.map((part) => changed.get(part.id) ?? part), ...add],
    rules: [...input.design.rules, ...rules],
    joints: [...input.design.joints, ...joints],
  };
  expect(designSchema.safeParse(d).success).toBe(true);
  return d;
}

const layoutOf = (d: Design, face = plainFace()) =>
  layOut({ design: d, face, keepClears: [], stocks: STOCKS });

describe('align and distribute', () => {
  const parts = [
    panel('a', at(100, 0, 50, 50)),
    panel('b', at(300, 100, 90, 50)),
    panel('c', at(620, 200, 70, 50)),
    panel('d', at(900, 300, 40, 50)),
  ];

  it('moves once, or holds by rules', () => {
    const on = arranging(parts);
    const once = align(on, ['a', 'b', 'c'], { axis: 'x', side: 'high', hold: false });
    expect(once.rules).toEqual([]);
    expect(once.change.map((p) => [p.id, p.box.x])).toEqual([
      ['b', 60],
      ['c', 80],
    ]);
    const held = carriedOut(
      on,
      align(on, ['a', 'b'], { axis: 'x', side: 'mid', to: { of: 'face', side: 'mid' }, hold: true }),
    );
    const layout = layoutOf(held, plainFace(800));
    expect([boxOfPart(layout, 'a').x, boxOfPart(layout, 'b').x]).toEqual([375, 355]);
    expect(align(on, [], { axis: 'x', side: 'low', hold: true }).rules).toEqual([]);
    expect(
      align(on, ['a'], { axis: 'x', side: 'low', to: { of: 'gone', side: 'low' }, hold: true }).rules,
    ).toEqual([]);
  });

  it('equal gaps between the outermost two, which stay', () => {
    const on = arranging(parts);
    const once = distribute(on, ['d', 'b', 'a', 'c'], { axis: 'x', hold: false });
    // 150 to 900 less 160: three gaps of 590/3.
    const gap = (900 - 150 - 160) / 3;
    expect(once.change.map((p) => p.id)).toEqual(['b', 'c']);
    expect(once.change[0]?.box.x).toBeCloseTo(150 + gap, 9);
    expect(once.change[1]?.box.x).toBeCloseTo(150 + 2 * gap + 90, 9);
    const held = layoutOf(carriedOut(on, distribute(on, ['a', 'b', 'c', 'd'], { axis: 'x', hold: true })));
    expect(held.rules).toMatchObject([{ holds: true, result: expect.closeTo(gap, 9) }]);
    expect(distribute(on, ['a', 'b'], { axis: 'x', hold: true }).rules).toEqual([]);
  });
});

describe('mirror copy', () => {
  it('covers just the mirror image, for every kind of part and both ways', () => {
    const polygon = [
      { u: 0, v: 0 },
      { u: 1, v: 0.2 },
      { u: 0.3, v: 1 },
    ];
    const opening = {
      id: 'o',
      shape: { form: 'polygon', points: polygon },
      margin: { left: 5, right: 20, bottom: 10, top: 30 },
    } as const;
    const array = {
      ...newPart('array', { id: 'm', name: 'M', box: at(100, 1200, 200, 80), stock: 'lath' }),
      across: { mode: 'flush', count: 3 } as const,
      overrides: { '0,0': { omit: true } },
    };
    const parts: Part[] = [
      strip('s', at(100, 100, 40, 200)),
      { ...strip('r', at(200, 100, 80, 200)), lie: 'rising' },
      { ...strip('t', at(320, 150, 10, 10)), lie: 'turned', angle: 25, length: 90 },
      { ...panel('p', at(100, 400, 100, 100)), shape: { form: 'polygon', points: polygon } },
      { ...panel('q', at(100, 550, 100, 100)), openings: [opening] },
      { ...fitting('f', at(110, 410, 20, 20)), on: 'p' },
      {
        ...run('o', at(100, 700, 200, 100)),
        path: {
          form: 'points',
          closed: false,
          points: [
            { u: 0, v: 0 },
            { u: 1, v: 0 },
            { u: 1, v: 1 },
          ],
        },
      },
      { ...run('c', at(100, 900, 200, 150)), path: { form: 'points', closed: true, points: polygon } },
      array,
    ];
    const on = arranging(parts);
    for (const axis of ['x', 'y'] as const) {
      const found = mirrorCopy(
        on,
        parts.map((p) => p.id),
        { axis, about: { of: 'face', side: 'mid' } },
      );
      const layout = layoutOf(carriedOut(on, found));
      expect(layout.rules.every((r) => r.holds)).toBe(true);
      const flip = ({ x, y }: { x: number; y: number }) =>
        axis === 'x' ? { x: 1000 - x, y } : { x, y: 2000 - y };
      for (const part of parts) {
        const twinId = found.rules.flatMap((r) =>
          r.kind === 'mirror' && r.part === part.id ? [r.twin] : [],
        )[0];
        const own = layout.parts.filter((l) => l.part === part.id).flatMap((l) => l.region);
        const twin = layout.parts.filter((l) => l.part === twinId).flatMap((l) => l.region);
        const image = transformRegion(own, flip);
        expect(areaOf(twin)).toBeCloseTo(areaOf(own), 1);
        // Wound the right way again, the image and the twin cover each other.
        const wound = image.map(({ outer, holes }) => ({
          outer: [...outer].reverse(),
          holes: holes.map((h) => [...h].reverse()),
        }));
        const signed = areaOf(image) < 0 ? wound : image;
        expect(subtractedArea(twin, signed)).toBeLessThan(1);
      }
      const lamp = found.add.find((p) => p.kind === 'fitting');
      expect(lamp?.on).toBe(found.add[3]?.id);
    }
  });

  it('turns the saw cuts about', () => {
    const ends = { start: { cut: 'miter', angle: 30 }, end: { cut: 'square' } } as const;
    const on = arranging([
      { ...strip('a', at(0, 0, 200, 40), 'across'), ends },
      { ...strip('u', at(300, 0, 40, 200)), ends },
    ]);
    const endsOf = (axis: 'x' | 'y') =>
      mirrorCopy(on, ['a', 'u'], { axis, about: { of: 'face', side: 'mid' } }).add.map(
        (p) => (p as Strip).ends,
      );
    expect(endsOf('x')).toEqual([
      { start: { cut: 'square' }, end: { cut: 'miter', angle: 30 } },
      { start: { cut: 'miter', angle: -30 }, end: { cut: 'square' } },
    ]);
    expect(endsOf('y')).toEqual([
      { start: { cut: 'miter', angle: -30 }, end: { cut: 'square' } },
      { start: { cut: 'square' }, end: { cut: 'miter', angle: 30 } },
    ]);
  });
});

describe('copy by rule', () => {
  it('makes a row that follows the first, with what lies on each', () => {
    const on = arranging([
      panel('a', at(100, 100, 80, 60)),
      { ...fitting('f', at(110, 110, 10, 10)), on: 'a' },
    ]);
    const d = carriedOut(on, copyByRule(on, ['a', 'f'], { axis: 'x', gap: 20, count: 3 }));
    const moved = {
      ...d,
      parts: d.parts.map((p) => (p.id === 'a' ? { ...p, box: at(130, 140, 90, 60) } : p)),
    };
    const layout = layoutOf(moved);
    expect(layout.rules.every((r) => r.holds)).toBe(true);
    expect(['a-1', 'a-2', 'a-3'].map((id) => boxOfPart(layout, id))).toEqual([
      at(240, 140, 90, 60),
      at(350, 140, 90, 60),
      at(460, 140, 90, 60),
    ]);
    expect(d.parts.find((p) => p.id === 'f-2')?.on).toBe('a-2');
  });

  it('goes down and left with a negative gap', () => {
    const on = arranging([strip('a', at(100, 500, 40, 200))]);
    const found = copyByRule(on, ['a'], { axis: 'y', gap: -10, count: 2 });
    const layout = layoutOf(carriedOut(on, found));
    expect(found.add.map((p) => boxOfPart(layout, p.id).y)).toEqual([290, 80]);
    // The stock decides the width; only lengths are tied.
    expect(found.rules.filter((r) => r.kind === 'same')).toHaveLength(1);
  });
});

describe('divide', () => {
  const request = (more: Partial<DivideRequest> = {}): DivideRequest => ({
    left: { of: 'face', side: 'low' },
    right: { of: 'face', side: 'high' },
    bottom: { of: 'face', side: 'low' },
    top: { of: 'face', side: 'high' },
    columns: 3,
    rows: 2,
    framed: true,
    through: 'up',
    upright: 'lath',
    across: 'board',
    names: { upright: 'Stile', across: 'Rail' },
    like: {
      on: 'face',
      finish: null,
      fixing: { how: 'brads', glue: true },
      onEdge: false,
      ends: { start: { cut: 'square' }, end: { cut: 'square' } },
      fit: false,
      locked: false,
    },
    ...more,
  });

  it('stiles run through, rails are fitted between them: 3 bays by 2', () => {
    const on = arranging([]);
    const found = divide(on, request());
    expect(found.add.filter((p) => (p as Strip).lie === 'up')).toHaveLength(4);
    expect(found.add.filter((p) => (p as Strip).lie === 'across')).toHaveLength(3 * 3);
    const d = carriedOut(on, found);
    const layout = layoutOf(d);
    // Laid out as they were made: nothing moves.
    for (const part of found.add) {
      const box = boxOfPart(layout, part.id);
      expect([box.x, box.y, box.w, box.h].map((v) => Math.round(v * 1e6))).toEqual(
        [part.box.x, part.box.y, part.box.w, part.box.h].map((v) => Math.round(v * 1e6)),
      );
    }
    const bay = (1000 - 4 * 40) / 3;
    expect(boxOfPart(layout, 'rail-1').x).toBe(40);
    expect(boxOfPart(layout, 'rail-1').w).toBeCloseTo(bay, 9);
    expect(boxOfPart(layout, 'rail-4').y).toBeCloseTo((2000 - 3 * 90) / 2 + 90, 9);
    expect(layout.checks).toEqual([]);
  });

  it('every way to divide fills the space without overlap and follows it when it changes', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 4 }),
        fc.boolean(),
        fc.constantFrom('up' as const, 'across' as const),
        fc.integer({ min: 600, max: 1400 }),
        (columns, rows, framed, through, width) => {
          const on = arranging([]);
          const found = divide(on, request({ columns, rows, framed, through }));
          const d = carriedOut(on, found);
          const face = plainFace(width);
          const layout = layoutOf(d, face);
          expect(layout.rules.every((r) => r.holds)).toBe(true);
          const uprights = framed ? columns + 1 : columns - 1;
          const rails = framed ? rows + 1 : rows - 1;
          const covered = uprights * 40 * 2000 + rails * 90 * width - uprights * rails * 40 * 90;
          expect(layout.parts.reduce((sum, p) => sum + areaOf(p.region), 0)).toBeCloseTo(covered, 3);
          expect(layout.checks).toEqual([]);
        },
      ),
      { numRuns: 40 },
    );
  });

  it('half laps where both run through; a space between parts; nothing without stock', () => {
    const on = arranging([panel('a', at(0, 0, 200, 2000)), panel('b', at(900, 0, 100, 2000))]);
    const between = {
      left: { of: 'a', side: 'high' },
      right: { of: 'b', side: 'low' },
      framed: false,
    } as const;
    const found = divide(on, request({ ...between, through: 'lap' }));
    expect(found.joints.map((j) => [j.parts, j.kind])).toEqual([
      [['upright-1', 'rail-1'], 'half-lap'],
      [['upright-2', 'rail-1'], 'half-lap'],
    ]);
    const layout = layoutOf(carriedOut(on, found));
    expect(boxOfPart(layout, 'upright-1').x).toBeCloseTo(200 + (700 - 80) / 3, 9);
    expect(boxOfPart(layout, 'rail-1')).toMatchObject({ x: 200, w: 700 });
    expect(divide(on, request({ upright: 'gone' })).add).toEqual([]);
    expect(divide(on, request({ left: { of: 'gone', side: 'low' } })).add).toEqual([]);
  });
});

it('tells the bounds that edges are of', () => {
  const outside: Part = { ...run('o', at(100, 500, 300, 200)), side: 'outside' };
  const on = arranging([
    run('f', at(100, 100, 300, 200)),
    outside,
    run('t', at(100, 900, 300, 60)),
    panel('a', at(0, 0, 30, 30)),
  ]);
  const found = boundsOf(on.input, on.layout);
  expect(found).toEqual([
    { id: 'f', box: at(100, 100, 300, 200), inner: at(140, 140, 220, 120) },
    { id: 'o', box: at(60, 460, 380, 280), inner: at(100, 500, 300, 200) },
    { id: 't', box: at(100, 900, 300, 60) },
    { id: 'a', box: at(0, 0, 30, 30) },
  ]);
  const edgeAt = edgesAt(on.input, on.layout, 'x');
  for (const { id, box } of found) expect(edgeAt({ of: id, side: 'low' })).toBe(box.x);
});

it('tells where edges are', () => {
  const on = arranging([run('f', at(100, 100, 500, 300)), panel('a', at(0, 0, 30, 30))]);
  const edgeAt = edgesAt(on.input, on.layout, 'x');
  expect(edgeAt({ of: 'f', side: 'low', inner: true })).toBe(140);
  expect(edgeAt({ of: 'f', side: 'high' })).toBe(600);
  expect(edgeAt({ of: 'a', side: 'mid' })).toBe(15);
  expect(edgeAt({ of: 'face', side: 'high' })).toBe(1000);
  expect(edgeAt({ of: 'level:skin', side: 'low' })).toBe(0);
  expect(edgeAt({ of: 'gone', side: 'low' })).toBeNull();
});
