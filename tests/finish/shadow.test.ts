import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { planFinish } from '../../src/finish/planFinish.ts';
import { castShadows, shadowOf } from '../../src/finish/shadow.ts';

import { subtract } from '../../src/geometry/clip.ts';
import { areaOf, boxOf, containsPointInRegion, transformRegion } from '../../src/geometry/region.ts';
import { sweep } from '../../src/geometry/sweep.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { box, input, LEVEL, solid } from './build.ts';

/** From the right, 45 degrees high: shadows fall to the left, as long as the caster is high. */
const FROM_RIGHT = { azimuth: 0, altitude: 45 };
const cast = (solids: readonly Solid[], light = FROM_RIGHT) =>
  castShadows(solids, [LEVEL], planFinish(input(solids)).shown, light);

describe('castShadows', () => {
  it('falls away from the light by height over the tangent of its altitude', () => {
    expect(shadowOf(FROM_RIGHT).x).toBeCloseTo(-1, 12);
    expect(shadowOf({ azimuth: 90, altitude: 30 }).y).toBeCloseTo(-Math.sqrt(3), 12);
  });

  it('of a block on the face is a band as wide as the block is high', () => {
    const [shadow, ...rest] = cast([solid('block', box(400, 400, 100, 200), 0, 25)]);
    expect(rest).toEqual([]);
    expect(shadow?.z).toBe(0);
    expect(boxOf(shadow?.region ?? [])).toEqual({ x: 375, y: 400, w: 25, h: 200 });
    expect(areaOf(shadow?.region ?? [])).toBeCloseTo(25 * 200, 6);
  });

  it('falls less far on a higher neighbor, and not on a higher one than its caster', () => {
    const shadows = cast([
      solid('tall', box(400, 400, 100, 200), 0, 40),
      solid('low', box(380, 400, 20, 200), 0, 30),
      solid('taller', box(100, 100, 50, 50), 0, 60),
    ]);
    const at = (z: number) => areaOf(shadows.find((s) => s.z === z)?.region ?? []);
    // On the low one 10 wide; on the face the low one's own shadow of 30 reaches past the tall one's.
    expect(at(30)).toBeCloseTo(10 * 200, 6);
    expect(at(0)).toBeCloseTo(30 * 200 + 60 * 50, 6);
    expect(at(60)).toBe(0);
  });

  it('lets light pass under a part that stands off', () => {
    const [shadow] = cast([solid('bridge', box(400, 400, 100, 200), 150, 160)]);
    const found = boxOf(shadow?.region ?? []);
    expect(found?.x).toBeCloseTo(240, 9);
    expect(found?.w).toBeCloseTo(110, 9);
  });

  it('is cast by the rim into the recess', () => {
    const field = { ...LEVEL, id: 'field', z: -20, region: box(100, 100, 800, 1800) } as const;
    const rim = { ...LEVEL, id: 'rim', region: subtract(LEVEL.region, field.region) } as const;
    const { shown } = planFinish(input([], { face: { levels: [rim, field] } }));
    const shadows = castShadows([], [rim, field], shown, FROM_RIGHT);
    expect(shadows.map((s) => [s.z, areaOf(s.region)])).toEqual([[-20, 20 * 1800]]);
  });

  it('is not cast by paint', () => {
    expect(cast([solid('dot', box(400, 400, 100, 200), 0, 0, { kind: 'painted' })])).toEqual([]);
  });

  it('is a band where the light falls along two sides, whichever way that is', () => {
    const [wide, high, top, altitude] = [60, 40, 30, 45];
    const wrong: string[] = [];
    for (let azimuth = -180; azimuth <= 180; azimuth++) {
      const [c, s] = [Math.cos((azimuth * Math.PI) / 180), Math.sin((azimuth * Math.PI) / 180)];
      const region = transformRegion(box(0, 0, wide, high), ({ x, y }) => ({
        x: 500 + x * c - y * s,
        y: 1000 + x * s + y * c,
      }));
      const [shadow] = cast([solid('turned', region, 0, top)], { azimuth, altitude });
      // As wide as the block across the light, as long as it is high: at 45 degrees a shadow is as long as its caster.
      const area = areaOf(shadow?.region ?? []);
      if (Math.abs(area - high * top) > 0.01) wrong.push(`${azimuth}: ${area}`);
    }
    expect(wrong).toEqual([]);
  });

  it('agrees with following the light from every point', () => {
    const blocks = fc.array(
      fc.record({
        x: fc.integer({ min: 100, max: 800 }),
        y: fc.integer({ min: 100, max: 1700 }),
        w: fc.integer({ min: 20, max: 150 }),
        h: fc.integer({ min: 20, max: 200 }),
        z1: fc.integer({ min: 5, max: 90 }),
      }),
      { minLength: 1, maxLength: 6 },
    );
    const lights = fc.record({
      azimuth: fc.integer({ min: -180, max: 180 }),
      altitude: fc.integer({ min: 20, max: 80 }),
    });
    fc.assert(
      fc.property(blocks, lights, (list, light) => {
        const solids = list.map(({ x, y, w, h, z1 }, i) => solid(`b${i}`, box(x, y, w, h), 0, z1 + i / 100));
        const shadow = cast(solids, light).find((s) => s.z === 0)?.region ?? [];
        const fall = shadowOf(light);
        for (let k = 0; k < 200; k++) {
          const p = { x: 3.7 + ((k * 373.31) % 990), y: 2.9 + ((k * 811.57) % 1990) };
          if (solids.some((s) => containsPointInRegion(s.region, p))) continue;
          let dark = false;
          let close = false;
          for (const s of solids) {
            for (let h = 0; h <= s.z1; h += 0.5) {
              const q = { x: p.x - fall.x * h, y: p.y - fall.y * h };
              if (containsPointInRegion(s.region, q)) dark = true;
            }
            // Points within a step of the shadow's border may go either way.
            const far = sweep(s.region, { x: 0, y: 0 }, { x: fall.x * s.z1, y: fall.y * s.z1 });
            const b = boxOf(far);
            if (b)
              close ||= [b.x - p.x, b.x + b.w - p.x, b.y - p.y, b.y + b.h - p.y].some((d) => Math.abs(d) < 2);
            const inside = containsPointInRegion(far, p);
            for (const [dx, dy] of [
              [2, 0],
              [-2, 0],
              [0, 2],
              [0, -2],
            ] as const) {
              if (containsPointInRegion(far, { x: p.x + dx, y: p.y + dy }) !== inside) close = true;
            }
          }
          if (!close) expect(containsPointInRegion(shadow, p)).toBe(dark);
        }
      }),
      { numRuns: 15 },
    );
  });
});
