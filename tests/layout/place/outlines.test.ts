import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { panelShapeSchema } from '../../../src/design/schema.ts';
import { union } from '../../../src/geometry/clip.ts';
import { areaOfLoop } from '../../../src/geometry/loop.ts';
import { areaOf, boxOf, perimeterOf, regionOfRing, transformRegion } from '../../../src/geometry/region.ts';
import { perimeter, signedArea } from '../../../src/geometry/ring.ts';
import type { Box } from '../../../src/geometry/shape.ts';
import {
  type Measure,
  type NamedShape,
  OUTLINES,
  outlineOf,
  ringsOfNamed,
  upsideDown,
} from '../../../src/layout/place/outlines.ts';
import { regionOfShape } from '../../../src/layout/place/shape.ts';

const forms = Object.keys(OUTLINES) as NamedShape['form'][];
const size = fc.double({ min: 20, max: 2500, noNaN: true });
const boxes = fc.record({ x: fc.constant(12), y: fc.constant(-7), w: size, h: size });

/** Any measures that a file may hold, far from what the box has room for too. */
const measured = (form: NamedShape['form'], box: Box) =>
  fc
    .record(
      Object.fromEntries(
        Object.entries<Measure>(outlineOf(form).measures).map(([name, m]) => {
          if (m.kind === 'length') return [name, fc.double({ min: 0.5, max: 3000, noNaN: true })];
          if (m.kind === 'count') return [name, fc.integer({ min: m.min, max: m.max })];
          if (m.kind === 'share') return [name, fc.double({ min: m.min, max: m.max, noNaN: true })];
          return [name, fc.constantFrom(...m.among)];
        }),
      ),
    )
    .map((asked) => ({ ...outlineOf(form).first(box), ...asked }) as NamedShape);

describe.each(forms)('the outline “%s”', (form) => {
  it('fills its box, never crosses itself, and is turned down by a mirror', () => {
    const inputs = boxes.chain((box) => measured(form, box).map((shape) => ({ box, shape })));
    fc.assert(
      fc.property(inputs, ({ box, shape }) => {
        expect(panelShapeSchema.safeParse(shape).success).toBe(true);
        const rings = ringsOfNamed(shape, box);
        for (const ring of rings) {
          const region = regionOfRing(ring);
          expect(signedArea(ring)).toBeGreaterThan(0);
          // A ring that crosses itself covers another area than it walks around.
          expect(Math.abs(areaOf(union([region])) - signedArea(ring))).toBeLessThan(2e-4 * perimeter(ring));
        }
        const region = regionOfShape(shape, box);
        const own = boxOf(region);
        for (const side of ['x', 'y', 'w', 'h'] as const) {
          // Its polygon too: the crown of an arc is one of its corners.
          expect(Math.abs((own?.[side] ?? 0) - box[side])).toBeLessThan(1e-6);
        }
        const over = regionOfShape(upsideDown(shape), box);
        const mirrored = transformRegion(region, ({ x, y }) => ({ x, y: 2 * box.y + box.h - y }));
        if (outlineOf(form).looks) {
          const off = areaOf(over) - Math.abs(areaOf(mirrored));
          expect(Math.abs(off)).toBeLessThan(2e-4 * perimeterOf(region));
        }
        expect(regionOfShape(upsideDown(upsideDown(shape)), box)).toEqual(region);
      }),
      { numRuns: Number(process.env.SHOWFACE_RUNS ?? 25) },
    );
  });
});

it('figures have the areas of the handbooks', () => {
  const box = { x: 0, y: 0, w: 200, h: 200 };
  const of = (shape: NamedShape) => areaOf(regionOfShape(shape, box));
  // A regular octagon of width s: 2 (sqrt 2 - 1) s2; of sides over flats, from memory, as in any table of polygons.
  expect(of({ form: 'regular', sides: 8 })).toBeCloseTo(2 * (Math.SQRT2 - 1) * 200 * 200, 3);
  // Equilateral points: each end two sectors of 60 degrees less the triangle that both have, h2 (pi / 3 - sqrt 3 / 4); from memory.
  const board = { x: 0, y: 0, w: 600, h: 200 };
  const [shield = []] = OUTLINES.shield.loops(board, { form: 'shield', point: 100 * Math.sqrt(3) });
  const points = 2 * 200 * 200 * (Math.PI / 3 - Math.sqrt(3) / 4);
  expect(areaOfLoop(shield)).toBeCloseTo((600 - 200 * Math.sqrt(3)) * 200 + points, 5);
  // Corners: a square of the size less its quarter circle is left over (or taken off).
  expect(of({ form: 'corners', cut: 'clipped', size: 20 })).toBeCloseTo(200 * 200 - 2 * 20 * 20, 6);
  expect(of({ form: 'corners', cut: 'stepped', size: 20 })).toBeCloseTo(200 * 200 - 4 * 20 * 20, 6);
  expect(
    Math.abs(of({ form: 'corners', cut: 'rounded', size: 20 }) - (200 * 200 - (4 - Math.PI) * 400)),
  ).toBeLessThan(8);
  expect(
    Math.abs(of({ form: 'corners', cut: 'coved', size: 20 }) - (200 * 200 - Math.PI * 400)),
  ).toBeLessThan(8);
});
