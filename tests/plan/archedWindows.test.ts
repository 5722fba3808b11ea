import DxfParser from 'dxf-parser';
import { expect, it } from 'vitest';
import { faceOutlines } from '../../src/output/drawings.ts';
import { dxfOf } from '../../src/output/dxf/dxf.ts';
import { planned, starter } from './starters.ts';

interface Polyline {
  readonly layer: string;
  readonly vertices: readonly { readonly x: number; readonly y: number; readonly bulge?: number }[];
}

/** Radius of an arc by its chord and its rise: (c^2 + 4 r^2) / (8 r) (Building Trades Pocketbook, mensuration). */
const radiusBy = (chord: number, rise: number) => (chord ** 2 + 4 * rise ** 2) / (8 * rise);

it('the windows of the bread shop have heads that are true arcs, 18 1/2 in wide and 6 in high', () => {
  const dxf = dxfOf(faceOutlines(planned(starter('bread-shop'))));
  const lines = (new DxfParser().parseSync(dxf)?.entities ?? []) as unknown as Polyline[];
  // Bulge of a side is the tangent of a quarter of its angle (DXF reference, group 42): rise over half its chord.
  const arcs = lines.flatMap(({ vertices = [] }) =>
    vertices.flatMap((a, i) => {
      const b = vertices[(i + 1) % vertices.length];
      if (!b || !a.bulge) return [];
      const chord = Math.hypot(b.x - a.x, b.y - a.y);
      return [{ chord, radius: radiusBy(chord, (Math.abs(a.bulge) * chord) / 2) }];
    }),
  );
  // By hand: (18 1/2^2 + 4 x 6^2) / (8 x 6) = 10.1302 in; the head is 1 1/2 in wide, its inner arc has so much less.
  const radius = radiusBy(18.5, 6) * 25.4;
  const near = (wanted: number) => arcs.filter((arc) => Math.abs(arc.radius - wanted) < 0.01).length;
  expect(near(radius)).toBeGreaterThanOrEqual(2);
  expect(near(radius - 1.5 * 25.4)).toBeGreaterThanOrEqual(2);
});
