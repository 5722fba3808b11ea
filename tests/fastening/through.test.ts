import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Bed } from '../../src/bed/bed.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { inches } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import { runs } from '../runs.ts';
import { bradded } from './laidAs.ts';

/*
 * A brad never comes out: over random beds and random stacks of panels and strips, every brad is held
 * against the wood there really is under it, found here by another way: all solid stretches over the point,
 * the bed's own boards among them, joined where they touch.
 */
const whole = (min: number, max: number) => fc.integer({ min, max });

const scene = fc.record({
  skin: fc.boolean(),
  platform: whole(4, 25),
  cleat: whole(10, 60),
  short: whole(0, 6),
  bite: whole(2, 12),
  fromEdge: whole(3, 15),
  lengths: fc.uniqueArray(whole(8, 65), { minLength: 1, maxLength: 6 }),
  blocks: fc.array(
    fc.record({
      x: whole(0, 900),
      y: whole(0, 1800),
      w: whole(15, 500),
      h: whole(15, 700),
      t: whole(3, 40),
      on: whole(0, 30),
      strip: fc.boolean(),
    }),
    { minLength: 1, maxLength: 7 },
  ),
});

interface Stretch {
  readonly low: number;
  readonly high: number;
}

/** The bed's boards over a point: rebuilt from the measures, not from the code under test. */
function bedStretches(bed: Bed, size: { w: number; h: number }, p: Point): Stretch[] {
  const skin = bed.skin?.thickness ?? 0;
  const fromEdge = Math.min(p.x, p.y, size.w - p.x, size.h - p.y);
  if (fromEdge < 0) return [];
  const found: Stretch[] = bed.skin ? [{ low: -skin, high: 0 }] : [];
  const frame = { low: -skin - bed.frame.depth, high: -skin };
  const field = frame.low + bed.cleats.below;
  if (fromEdge < bed.frame.thickness) return [...found, frame];
  found.push({ low: field - bed.platform.thickness, high: field });
  if (fromEdge < bed.frame.thickness + bed.cleats.width) {
    found.push({ low: field, high: field + bed.cleats.depth });
  }
  return found;
}

/** Lower end of the unbroken wood that reaches up to `top`. */
function farSide(stretches: readonly Stretch[], top: number): number {
  let low = top;
  for (let moved = true; moved; ) {
    moved = false;
    for (const s of stretches) {
      if (s.high >= low - 1e-6 && s.low < low - 1e-6) {
        low = s.low;
        moved = true;
      }
    }
  }
  return low;
}

const inside = (box: Box, p: Point) =>
  p.x >= box.x && p.x <= box.x + box.w && p.y >= box.y && p.y <= box.y + box.h;

/** How many solids bear a part. */
function supportsOf(solid: Solid, solids: readonly Solid[], boxes: ReadonlyMap<string, Box>): number {
  const box = boxes.get(solid.part) as Box;
  return solids.filter((o) => {
    const other = boxes.get(o.part) as Box;
    const across = Math.min(box.x + box.w, other.x + other.w) - Math.max(box.x, other.x);
    const up = Math.min(box.y + box.h, other.y + other.h) - Math.max(box.y, other.y);
    return o !== solid && Math.abs(o.z1 - solid.z0) < 1e-6 && across > 0 && up > 0;
  }).length;
}

describe('never through', () => {
  it('over random stacks every brad stops short of the far side and bites', () => {
    let brads = 0;
    fc.assert(
      fc.property(scene, (s) => {
        const base = sampleBed({ skin: s.skin ? { thickness: 6, material: 'plywood' } : null });
        const bed: Bed = {
          ...base,
          platform: { ...base.platform, thickness: s.platform },
          cleats: { ...base.cleats, depth: s.cleat },
        };
        const { face } = faceOf(bed);
        const tops = face.levels.map((l) => l.z);
        const boxes = new Map<string, Box>();
        const solids: Solid[] = [];
        for (const [i, b] of s.blocks.entries()) {
          const z0 = tops[b.on % tops.length] ?? 0;
          const box = { x: b.x, y: b.y, w: b.w, h: b.h };
          boxes.set(`b${i}`, box);
          solids.push({
            part: `b${i}`,
            kind: b.strip ? 'strip' : 'panel',
            region: regionOfBox(box),
            z0,
            z1: z0 + b.t,
            stock: null,
            finish: null,
            on: 'face',
          });
          tops.push(z0 + b.t);
        }
        const brad = { id: 'b', name: '', diameter: 1.2, lengths: [], price: 0, count: 1, source: '' };
        const plan = bradded(solids, { bed, face }, brad, {
          lengths: s.lengths,
          spacing: inches(6),
          fromEdge: s.fromEdge,
          shortOfFar: s.short,
          bite: s.bite,
        });
        for (const f of plan.parts) {
          const solid = solids.find((o) => o.part === f.part);
          if (!solid || f.length === null) continue;
          for (const at of f.at) {
            brads++;
            const stretches = [
              ...bedStretches(bed, { w: face.width, h: face.height }, at),
              // Only what lies below: what is fixed on top later is not there yet.
              ...solids
                .filter(
                  (o) => (o === solid || o.z1 <= solid.z0 + 1e-6) && inside(boxes.get(o.part) as Box, at),
                )
                .map((o) => ({ low: o.z0, high: o.z1 })),
            ];
            const tip = solid.z1 - f.length;
            expect(tip - farSide(stretches, solid.z1)).toBeGreaterThanOrEqual(s.short - 1e-5);
            expect(solid.z0 - tip).toBeGreaterThanOrEqual(s.bite - 1e-5);
            const box = boxes.get(solid.part) as Box;
            const clear = Math.min(at.x - box.x, box.x + box.w - at.x, at.y - box.y, box.y + box.h - at.y);
            const edge = Math.min(s.fromEdge, 0.4 * Math.min(box.w, box.h));
            // A sheet too small for two, and a strip beside a seam, may have no more room than three diameters.
            const tight = solid.kind === 'panel' || supportsOf(solid, solids, boxes) > 1;
            const least = tight ? 3 * brad.diameter : edge;
            expect(clear).toBeGreaterThan(Math.min(edge, least) - 0.01);
          }
          // The longest that could have been: the next longer one would come out somewhere.
          const longer = s.lengths.filter((l) => l > (f.length ?? 0));
          for (const l of longer) expect(l).toBeGreaterThan(f.depth - s.short);
        }
      }),
      { numRuns: runs(200), seed: 42 },
    );
    expect(brads).toBeGreaterThan(2 * runs(200));
  });
});
