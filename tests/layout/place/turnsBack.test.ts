import { difference } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import type { PanelShape } from '../../../src/design/schema.ts';
import { ringOfLoop } from '../../../src/geometry/loop.ts';
import { distance } from '../../../src/geometry/point.ts';
import type { Point } from '../../../src/geometry/shape.ts';
import { borderOfShape } from '../../../src/layout/place/drawn.ts';
import { outlineOf } from '../../../src/layout/place/outlines.ts';
import { pathOfRun } from '../../../src/layout/place/run.ts';
import { joineryOf } from '../../joinery/joined.ts';
import { type Multi, momentsOf, multiOf } from '../../shoelace.ts';
import { at, codes, design, lay, run } from '../sample.ts';

/** Paths along ready shapes, of straight segments of lath, 40 wide; the crown of an ogee turns back on itself. */
const BOX = at(300, 600, 420, 420);
const SHAPES: readonly PanelShape[] = [
  ...(['ogee', 'quatrefoil', 'pointed', 'four-centered', 'shield', 'arched'] as const).map((form) =>
    outlineOf(form).first(BOX),
  ),
  { form: 'ogee', rise: 400, radius: 100 },
  { form: 'ogee', rise: 250, radius: 120 },
];
const CASES = SHAPES.flatMap((shape) => [2, 6, 12, 24].map((segments) => ({ shape, segments })));

const laidAlong = (shape: PanelShape, segments: number, side: 'inside' | 'outside') =>
  lay(design([{ ...run('r', BOX), side, path: { form: 'shape', shape, segments } }]));

describe('a path whose sides meet sharply', () => {
  it.each(CASES)(
    '$shape.form of $segments segments lies within its outline, every piece within it too',
    (of) => {
      const layout = laidAlong(of.shape, of.segments, 'inside');
      expect(codes(layout)).toEqual([]);
      // Chords of a hollow arc lie out of it: the run lies within its own corners.
      const { points } = pathOfRun({ path: { form: 'shape', ...of } }, BOX, 40);
      const own = layout.parts[0]?.region ?? [];
      const within = multiOf([{ outer: points, holes: [] }]);
      const beyond = momentsOf(difference(multiOf(own), within) as Multi, { x: BOX.x, y: BOX.y })[0];
      expect(beyond).toBeLessThan(0.15);
      for (const { outline: ring, length } of joineryOf(layout, 80).pieces) {
        expect(length).toBeGreaterThan(0);
        expect(ring.length).toBeGreaterThanOrEqual(3);
      }
    },
  );

  it.each(CASES)(
    '$shape.form of $segments segments runs out beside it no farther than a piece is long',
    (of) => {
      const layout = laidAlong(of.shape, of.segments, 'outside');
      const [laid] = layout.parts;
      const legs = laid && 'legs' in laid ? laid.legs : [];
      const ring = ringOfLoop(borderOfShape(of.shape, BOX), 0.5);
      const off = (p: Point) => Math.min(...ring.map((q) => distance(p, q)));
      const longest = Math.max(...legs.map(({ start, end }) => distance(start, end)));
      const corners = (laid?.region ?? []).flatMap(({ outer }) => outer);
      expect(Math.max(...corners.map(off))).toBeLessThan(Math.hypot(longest, 40) + 2);
    },
  );
});
