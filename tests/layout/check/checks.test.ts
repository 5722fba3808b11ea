import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../../src/design/defaults.ts';
import type { KeepClear, Part } from '../../../src/design/schema.ts';
import { neighborsOf } from '../../../src/geometry/meeting.ts';
import { neighborsAfter, neighborsIn } from '../../../src/layout/check/neighbors.ts';
import type { Placing } from '../../../src/layout/place/place.ts';
import { at, design, fitting, lay, panel, recessedFace, run, strip } from '../sample.ts';

const found = (parts: readonly Part[], more = {}) =>
  lay(design(parts), more).checks.map((c) => [c.code, c.severity, c.parts, c.figures]);

describe('off the face', () => {
  it('a cornice over the edge is a note, much is a warning, wholly off an error', () => {
    expect(found([panel('a', at(-50, 0, 500, 100))])).toEqual([
      ['part.off-face', 'note', ['a'], { over_mm: 50 }],
    ]);
    expect(found([panel('a', at(700, 0, 500, 100))])).toEqual([
      ['part.off-face', 'warning', ['a'], { over_mm: 200 }],
    ]);
    expect(found([panel('a', at(0, 2000, 50, 50))]).map((c) => [c[0], c[1]])).toContainEqual([
      'part.off-face',
      'error',
    ]);
    expect(found([panel('a', at(0, 0, 1000, 2000))])).toEqual([]);
  });
});

describe('unsupported', () => {
  const face = recessedFace();

  it('a board that bridges the recess lies on enough of the rim, a panel over the recess does not', () => {
    // Rim 100 at both ends of 1000: a share of 0.2, and of 0.4 on a face of 500.
    const bridge = { ...strip('a', at(0, 500, 1000, 40), 'across'), on: 'rim' };
    expect(found([bridge], { face })).toEqual([
      ['part.unsupported', 'warning', ['a'], { share: expect.closeTo(0.2, 9), need: 0.25 }],
    ]);
    expect(found([{ ...bridge, box: at(0, 500, 500, 40) }], { face: recessedFace(500) })).toEqual([]);
  });

  it('a part lies on whatever is just as high: levels and parts together', () => {
    const packer = (id: string, y: number) => ({ ...panel(id, at(100, y, 800, 200)), stock: 'thick' });
    const thick = {
      form: 'sheet',
      id: 'thick',
      name: '',
      material: 'mdf',
      thickness: 30,
      grain: false,
      sizes: [],
    } as const;
    const sheet = { ...thick, id: 'sheet', thickness: 12 };
    const stocks = new Map([
      ['thick', thick],
      ['sheet', sheet],
    ]);
    const cover = { ...panel('z', at(0, 500, 1000, 400)), on: 'rim' };
    expect(found([packer('a', 500), packer('b', 700), cover], { face, stocks })).toEqual([]);
    // One packer less: rim 0.2 and packer 0.4 of it still are enough; none is not.
    expect(found([packer('a', 500), cover], { face, stocks })).toEqual([]);
    expect(found([cover], { face, stocks }).map((c) => c[0])).toEqual(['part.unsupported']);
  });

  it('paint carries nothing', () => {
    const paint = newPart('painted', { id: 'p', name: 'P', box: at(100, 100, 100, 100) });
    const floating = { ...fitting('f', at(2500, 100, 50, 50)), on: 'p' };
    expect(found([paint, floating]).map((c) => c[0])).toContain('part.unsupported');
  });
});

describe('overlap', () => {
  it('a panel in the place of another, of a frame or of a strip is told once, with what they share', () => {
    const parts = [panel('b', at(100, 100, 200, 200)), panel('a', at(250, 250, 200, 200))];
    const { checks } = lay(design(parts));
    expect(checks).toEqual([
      {
        code: 'part.overlap',
        severity: 'error',
        parts: ['a', 'b'],
        at: { x: 275, y: 275 },
        figures: { area_m2: 0.0025 },
      },
    ]);
    expect(found([run('f', at(0, 0, 300, 300)), panel('p', at(30, 40, 220, 220))]).map((c) => c[0])).toEqual([
      'part.overlap',
    ]);
    expect(found([strip('s', at(0, 0, 40, 500)), panel('p', at(20, 40, 220, 220))]).map((c) => c[0])).toEqual(
      ['part.overlap'],
    );
  });

  it('touching, one above the other, paint beneath, and stock that meets stock are not', () => {
    expect(found([panel('a', at(0, 0, 100, 100)), panel('b', at(100, 0, 100, 100))])).toEqual([]);
    expect(found([panel('a', at(0, 0, 300, 300)), { ...panel('b', at(50, 50, 100, 100)), on: 'a' }])).toEqual(
      [],
    );
    expect(
      found([
        newPart('painted', { id: 'p', name: 'P', box: at(0, 0, 99, 99) }),
        panel('b', at(50, 50, 100, 100)),
      ]),
    ).toEqual([]);
    expect(found([strip('a', at(0, 0, 40, 500)), strip('b', at(0, 200, 500, 40), 'across')])).toEqual([]);
    expect(found([run('f', at(0, 0, 300, 300)), panel('p', at(40, 40, 220, 220))])).toEqual([]);
  });

  it('paint inside of a body is', () => {
    const step = panel('a', at(0, 0, 100, 100));
    const paint = { ...newPart('painted', { id: 'p', name: 'P', box: at(0, 0, 50, 50) }), on: 'a' };
    const around = fitting('f', at(0, 0, 60, 60));
    expect(
      found([step, paint, around])
        .filter((c) => c[0] === 'part.overlap')
        .map((c) => c[2]),
    ).toEqual([
      ['a', 'f'],
      ['f', 'p'],
    ]);
  });
});

describe('keep-clear', () => {
  const clear: KeepClear = {
    id: 'k',
    name: 'Left hinge',
    why: 'hinge',
    box: at(100, 100, 60, 80),
    height: 15,
  };

  it('a part over it is told with how far, one that passes above is not', () => {
    expect(found([panel('a', at(150, 0, 300, 300))], { keepClears: [clear] })).toEqual([
      ['part.keep-clear', 'error', ['a'], { keep_clear: 'k', reason: 'hinge', over_mm: 10 }],
    ]);
    expect(found([panel('a', at(160, 0, 300, 300))], { keepClears: [clear] })).toEqual([]);
    const step = { ...fitting('s', at(300, 100, 200, 80)), depth: 15 };
    const above = { ...panel('a', at(100, 100, 400, 80)), on: 's' };
    expect(found([step, above], { keepClears: [clear] })).toEqual([]);
  });

  it('a flat one keeps everything off but paint', () => {
    const flat = { ...clear, height: 0 };
    expect(found([panel('a', at(150, 0, 300, 300))], { keepClears: [flat] }).map((c) => c[0])).toEqual([
      'part.keep-clear',
    ]);
    expect(
      found([newPart('painted', { id: 'a', name: 'A', box: at(0, 0, 300, 300) })], { keepClears: [flat] }),
    ).toEqual([]);
  });
});

it('neighbors after some moved equal those of a sweep over all', () => {
  const box = fc.record({
    x: fc.integer({ min: 0, max: 60 }),
    y: fc.integer({ min: 0, max: 60 }),
    w: fc.integer({ min: 0, max: 25 }),
    h: fc.integer({ min: 0, max: 25 }),
  });
  fc.assert(
    fc.property(
      fc.array(box, { minLength: 1, maxLength: 40 }),
      fc.array(fc.tuple(fc.nat(39), box), { maxLength: 6 }),
      (boxes, moves) => {
        // Every other one is a piece of the same fill, on its boards or on what lies on them.
        const laid = boxes.map((_, i) => ({
          kind: i % 2 ? 'fill' : 'strip',
          part: i % 2 ? 'f' : `p${i}`,
          z0: i % 3,
        }));
        const placings = boxes.map((bounds, i) => ({ bounds, laid: laid[i] }) as unknown as Placing);
        const before = neighborsIn(placings);
        const moved = new Map(moves.map(([i, bounds]) => [i % boxes.length, bounds] as const));
        const after = placings.map((one, i) => ({ ...one, bounds: moved.get(i) ?? one.bounds }));
        const now = neighborsIn(after);
        expect(neighborsAfter(after, before, [...moved.keys()])).toEqual(now);
        // All that meet, but pieces of one fill at one height.
        const beside = (i: number) => laid.flatMap((b, j) => (i % 2 && j % 2 && i % 3 === b.z0 ? [j] : []));
        expect(
          neighborsOf(after.map(({ bounds }) => bounds)).map((all, i) =>
            all.filter((j) => !beside(i).includes(j)),
          ),
        ).toEqual(now);
      },
    ),
  );
});
