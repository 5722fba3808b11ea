import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Fill } from '../../src/design/schema.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import type { Laid } from '../../src/layout/laid.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { SUPPLIES } from './starters.ts';

/** A fill by itself on a face with a skin that takes brads anywhere. */
function planned(more: Partial<Fill>): Plan {
  const design = newDesign();
  const box = { x: 100, y: 300, w: 520, h: 700 };
  const part: Fill = {
    ...newPart('fill', { id: 'fill', name: 'Fill', box, stock: 'lath-quarter' }),
    ...more,
  };
  const bed = { ...design.bed, skin: { thickness: 18, material: 'plywood' } };
  return plan({ ...design, bed, parts: [part] }, SUPPLIES, { effort: { nodes: 50 } });
}

/** Whether a point lies within a convex region, by its sides; none of the tool's own code. */
const inConvex = (region: Region, p: Point): boolean =>
  region.every(({ outer }) =>
    outer.every((a, i) => {
      const b = outer[(i + 1) % outer.length] as Point;
      return (b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x) > 0;
    }),
  );

/** Brads of the pieces of one layer, with the piece. */
const bradsOf = ({ layout, fastening }: Plan, over: boolean) => {
  const foot = Math.min(...layout.parts.map(({ z0 }) => z0));
  return layout.parts
    .filter((laid): laid is Laid<'fill'> => laid.kind === 'fill' && laid.z0 > foot === over)
    .map((laid) => ({ laid, at: fastening.parts.flatMap(({ part, at }) => (part === laid.id ? at : [])) }));
};

/** Whether the crossing of two laths, 38.1 mm wide, lies whole in both. */
function crossWhole(a: Laid<'fill'>, b: Laid<'fill'>): boolean {
  const [u, v] = [a, b].map(({ leg }) => ({ x: leg.end.x - leg.start.x, y: leg.end.y - leg.start.y })) as [
    Point,
    Point,
  ];
  const [p, q] = [a.leg.start, b.leg.start];
  const s = ((q.x - p.x) * v.y - (q.y - p.y) * v.x) / (u.x * v.y - u.y * v.x);
  const middle = { x: p.x + s * u.x, y: p.y + s * u.y };
  const half = 19 / Math.hypot(u.x, u.y);
  // Laths of the two layers cross square.
  return [-half, half].every((m) =>
    [-half, half].every((n) => {
      const corner = { x: middle.x + m * u.x - n * u.y, y: middle.y + m * u.y + n * u.x };
      return inConvex(a.region, corner) && inConvex(b.region, corner);
    }),
  );
}

describe('brads of pieces that lie over others', () => {
  it.each([
    [0, 40],
    [45, 40],
    [30, 70],
  ])(
    'hold every crossing of a lattice at %d degrees, gaps of %d mm, clear of those beneath',
    (angle, gap) => {
      const made = planned({ pattern: { form: 'lattice' }, angle, gap });
      const [lower, upper] = [bradsOf(made, false), bradsOf(made, true)];
      let crossings = 0;
      for (const { laid, at } of upper) {
        for (const beneath of lower) {
          const own = at.filter((p) => inConvex(beneath.laid.region, p));
          // Clipped by the outline, a crossing may be too small for any.
          if (!crossWhole(laid, beneath.laid)) continue;
          crossings++;
          expect(own.length, `${laid.id} over ${beneath.laid.id}`).toBeGreaterThanOrEqual(1);
          // Ten diameters of a brad of 18 gauge, along the grain (EN 1995-1-1, table 8.2).
          for (const p of own)
            for (const q of beneath.at) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(10);
        }
      }
      expect(crossings).toBeGreaterThan(10);
      expect(made.checks.filter(({ code }) => code === 'fastening.few')).toEqual([]);
    },
  );

  it.each([6, 12])('hold battens on their boards beside every gap of %d mm, on both sides', (gap) => {
    const made = planned({
      pattern: { form: 'battened', stock: 'lath-quarter' },
      stock: 'pine-1x4',
      angle: 90,
      gap,
    });
    const battens = bradsOf(made, true);
    expect(battens.length).toBeGreaterThan(3);
    for (const { laid, at } of battens) {
      const middle = laid.box.x + laid.box.w / 2;
      for (const side of [-1, 1]) {
        const own = at.filter(({ x }) => (x - middle) * side > gap / 2);
        expect(own.length, laid.id).toBeGreaterThanOrEqual(2);
      }
    }
    expect(made.checks.filter(({ code }) => code.startsWith('fastening'))).toEqual([]);
  });
});
