import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type OutlineCorner, type PanelShape, panelShapeSchema } from '../../../src/design/schema.ts';
import { radiusOfBow, withArcs } from '../../../src/geometry/arcs.ts';
import { areaOfLoop, boxOfLoop, lengthOfLoop } from '../../../src/geometry/loop.ts';
import { distance } from '../../../src/geometry/point.ts';
import { boxOf } from '../../../src/geometry/region.ts';
import { trueAreaOf } from '../../../src/geometry/trueArea.ts';
import { cornersOut, frameOfDrawn, freed, loopOfDrawn } from '../../../src/layout/place/drawn.ts';
import {
  loopsOfNamed,
  type NamedShape,
  OUTLINES,
  outlineOf,
  upsideDown,
} from '../../../src/layout/place/outlines.ts';
import { regionOfShape } from '../../../src/layout/place/shape.ts';
import { runs } from '../../runs.ts';

const p = (x: number, y: number) => ({ x, y });
const size = fc.double({ min: 200, max: 2500, noNaN: true });
const boxes = fc.record({ x: fc.constant(31), y: fc.constant(-17), w: size, h: size });

const side = fc.oneof(
  fc.constant(undefined),
  fc.record({ as: fc.constant('rise' as const), rise: fc.double({ min: -30, max: 60, noNaN: true }) }),
  fc.record({ as: fc.constant('radius' as const), radius: fc.double({ min: 200, max: 3000, noNaN: true }) }),
  fc.constant({ as: 'smooth' as const }),
);
const cut = fc.option(
  fc.record({
    how: fc.constantFrom('rounded' as const, 'coved' as const, 'clipped' as const, 'stepped' as const),
    size: fc.double({ min: 1, max: 50, noNaN: true }),
  }),
  { nil: undefined },
);
/** Around the middle, so that no outline crosses itself much; the first four reach to the sides of their box. */
const points = fc
  .array(fc.record({ far: fc.double({ min: 0.35, max: 0.5, noNaN: true }), side, cut }), {
    minLength: 4,
    maxLength: 8,
  })
  .map((all) =>
    all.map(({ far, ...rest }, i): OutlineCorner => {
      const a = (2 * Math.PI * i) / all.length;
      const at = { u: 0.5 + far * Math.cos(a), v: 0.5 + far * Math.sin(a) };
      return { ...at, ...(rest.side ? { side: rest.side } : {}), ...(rest.cut ? { cut: rest.cut } : {}) };
    }),
  );

describe('an outline that is drawn', () => {
  it('fills its box, whatever its sides and corners are', () => {
    fc.assert(
      fc.property(boxes, points, (box, drawn) => {
        expect(panelShapeSchema.safeParse({ form: 'polygon', points: drawn }).success).toBe(true);
        const own = boxOfLoop(loopOfDrawn(drawn, box));
        for (const of of ['x', 'y', 'w', 'h'] as const) expect(own[of]).toBeCloseTo(box[of], 6);
      }),
      { numRuns: runs(40) },
    );
  });

  it('keeps the rise that it is told while its box is sized', () => {
    const arched = (rise: number): OutlineCorner[] => [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1, side: { as: 'rise', rise } },
      { u: 0, v: 1 },
    ];
    fc.assert(
      fc.property(boxes, fc.double({ min: 0.02, max: 0.4, noNaN: true }), (box, share) => {
        const rise = Math.min(box.w / 2, box.h) * share;
        const drawn = loopOfDrawn(arched(rise), box);
        const named = OUTLINES.arched.loops(box, { form: 'arched', rise })[0] ?? [];
        // The ready outline is told by its rise too.
        expect(areaOfLoop(drawn) / areaOfLoop(named)).toBeCloseTo(1, 9);
        expect(lengthOfLoop(drawn) / lengthOfLoop(named)).toBeCloseTo(1, 9);
      }),
      { numRuns: runs(60) },
    );
  });

  it('keeps its arcs as arcs for what is written of its polygon', () => {
    const measures = fc.record({
      rise: fc.double({ min: 20, max: 140, noNaN: true }),
      size: fc.double({ min: 12, max: 60, noNaN: true }),
    });
    fc.assert(
      fc.property(measures, ({ rise, size }) => {
        const points: OutlineCorner[] = [
          { u: 0, v: 0, cut: { how: 'coved', size } },
          { u: 1, v: 0, cut: { how: 'rounded', size } },
          { u: 1, v: 1, side: { as: 'rise', rise } },
          { u: 0, v: 1 },
        ];
        const ring =
          regionOfShape({ form: 'polygon', points }, { x: 5, y: 9, w: 480, h: 700 })[0]?.outer ?? [];
        const bowed = withArcs(ring, true);
        const arcs = bowed.flatMap((p, i) =>
          p.bulge === 0
            ? []
            : [{ bulge: p.bulge, radius: radiusOfBow(p, bowed[(i + 1) % bowed.length] ?? p, p.bulge) }],
        );
        // A bulge is the tangent of a quarter of the turn (DXF reference): of a corner of 90 degrees, and 2 rise / chord.
        const asked = [
          { bulge: -Math.tan(Math.PI / 8), radius: size },
          { bulge: Math.tan(Math.PI / 8), radius: size },
          { bulge: (2 * rise) / 480, radius: (480 ** 2 + 4 * rise ** 2) / (8 * rise) },
        ];
        expect(arcs).toHaveLength(3);
        for (const { bulge, radius } of asked) {
          const found = arcs.find((arc) => Math.abs(arc.bulge - bulge) < 1e-4);
          expect(Math.abs((found?.radius ?? 0) / radius - 1)).toBeLessThan(1e-3);
        }
      }),
      { numRuns: runs(40) },
    );
  });

  it('keeps a bow that is drawn on corners nearly in a line', () => {
    for (const wide of [0, 0.5, 1, 3, 10]) {
      const side = { as: 'rise', rise: 60 } as const;
      const corners = [{ at: p(0, 0), side }, { at: p(0, 200) }, { at: p(-wide, 100) }];
      // The half lens of 60 by 200 beside its corners: the box that it is drawn in.
      const { frame, points } = frameOfDrawn(cornersOut(corners), { x: -wide, y: 0, w: wide + 60, h: 200 });
      expect(points[0]?.side).toEqual(side);
      if (wide > 0) expect(frame.w).toBeCloseTo(wide, 6);
    }
  });

  it('brings measures down that its box has no room for', () => {
    const points: OutlineCorner[] = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 1, side: { as: 'rise', rise: 900 } },
      { u: 0, v: 1, cut: { how: 'rounded', size: 700 } },
    ];
    const box = { x: 0, y: 0, w: 300, h: 200 };
    const own = boxOfLoop(loopOfDrawn(points, box));
    for (const of of ['x', 'y', 'w', 'h'] as const) expect(own[of]).toBeCloseTo(box[of], 6);
    expect(frameOfDrawn(points, box).frame.h).toBeGreaterThan(0);
  });

  it('is written within what a file may have, however far a handle or a center is', () => {
    // Corners in a strip of 1 mm: a handle 60 mm off is 60 times their box away.
    const points = cornersOut([
      { at: { x: 0, y: 0 }, side: { as: 'smooth', handles: [p(60, 20), p(-90, 8000)] } },
      { at: { x: 0, y: 100 }, side: { as: 'radius', radius: 2000 ** 2 } },
      { at: { x: -1, y: 50 }, side: { as: 'rise', rise: -30_000 } },
    ]);
    expect(panelShapeSchema.safeParse({ form: 'polygon', points }).success).toBe(true);
  });

  it('is as it was where it is only straight', () => {
    const house = [
      { u: 0, v: 0 },
      { u: 1, v: 0 },
      { u: 1, v: 0.7 },
      { u: 0.5, v: 1 },
      { u: 0, v: 0.7 },
    ];
    const shape: PanelShape = { form: 'polygon', points: house };
    expect(panelShapeSchema.parse(shape)).toEqual(shape);
    const ring = regionOfShape(shape, { x: 5, y: 6, w: 100, h: 200 })[0]?.outer;
    expect(new Set(ring)).toEqual(new Set(house.map(({ u, v }) => ({ x: 5 + u * 100, y: 6 + v * 200 }))));
  });
});

describe('a ready outline made free', () => {
  const box = { x: 12, y: 34, w: 620, h: 410 };
  const forms = Object.keys(OUTLINES) as NamedShape['form'][];
  // Ellipses are told by cubics, which stray from them by 0.028% of the radius at most (4/3 tan 22.5 degrees).
  const bent = new Set(['round', 'elliptical', 'quatrefoil']);
  it.each(forms.filter((form) => form !== 'ring'))('“%s” is the same outline', (form) => {
    for (const shape of [outlineOf(form).first(box)]) {
      const free = freed(shape, box);
      if (!free) throw new Error('it can be drawn');
      expect(panelShapeSchema.safeParse(free).success).toBe(true);
      const [was, is] = [regionOfShape(shape, box), regionOfShape(free, box)];
      const off = Math.abs(trueAreaOf(is) / trueAreaOf(was) - 1);
      expect(off).toBeLessThan(bent.has(form) ? 3e-4 : 1e-9);
      expect(distance(boxOf(is) ?? box, box)).toBeLessThan(1e-6);
    }
  });

  it('is the same in any box: circles, half circles and heads that look down too', () => {
    const boxes = [
      { x: 12, y: 34, w: 400, h: 400 },
      { x: 0, y: 0, w: 600, h: 300 },
      { x: 0, y: 0, w: 900, h: 100 },
      { x: 7, y: 9, w: 300, h: 900 },
    ];
    for (const box of boxes) {
      for (const form of forms.filter((form) => form !== 'ring')) {
        const { first, looks } = outlineOf(form);
        const up = first(box);
        for (const shape of looks ? [up, upsideDown(up)] : [up]) {
          const told = `${JSON.stringify(shape)} in ${box.w} x ${box.h}`;
          const free = freed(shape, box);
          if (free?.form !== 'polygon') throw new Error(`not drawn: ${told}`);
          const [outer = 0, inner = 0] = loopsOfNamed(shape as typeof up, box).map(areaOfLoop);
          const is = areaOfLoop(loopOfDrawn(free.points, box));
          expect(Math.abs(is / (outer - inner) - 1), told).toBeLessThan(3e-4);
        }
      }
    }
  });

  it('keeps corners as corners, and cannot be drawn where it has a hole', () => {
    const free = freed({ form: 'corners', cut: 'coved', size: 40 }, box);
    expect(free).toMatchObject({ points: Array(4).fill({ cut: { how: 'coved', size: 40 } }) });
    expect(freed(OUTLINES.ring.first(box), box)).toBeNull();
  });
});
