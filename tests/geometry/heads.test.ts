import { describe, expect, it } from 'vitest';
import { withArcs } from '../../src/geometry/arcs.ts';
import {
  basketRadii,
  fourCenteredRadius,
  type Head,
  headedLoop,
  ogeeRadius,
  pointedRadius,
} from '../../src/geometry/heads.ts';
import { ringOfLoop } from '../../src/geometry/loop.ts';
import { boxOfPoints, signedArea } from '../../src/geometry/ring.ts';
import { FLATNESS } from '../../src/geometry/tolerance.ts';
import { figuresOf } from './bows.ts';

/**
 * Constructions: pointed heads, Manual of Purpose-Made Woodworking Joinery and Bloxam, Gothic Architecture; three
 * centers, French, Engineering Drawing (1911); ogee, Bloxam. Figures in inches were computed from those
 * constructions by a script of double precision that shares nothing with the tool.
 */

/** Length of the head alone, and the area over its springing line, both along its arcs. */
function head(name: Head, span: number, rise: number, radius = 0) {
  // In millimeters, so that arcs are made of as many chords as they are in the tool.
  const mm = 25.4;
  const foot = 100;
  const box = { x: 0, y: 0, w: span * mm, h: rise * mm + foot };
  const outline = withArcs(ringOfLoop(headedLoop(name, box, rise * mm, radius * mm)), true);
  const { arcs, bowed, area } = figuresOf(outline);
  return { arcs, length: bowed / mm, area: (area - box.w * foot) / mm / mm };
}

describe('heads of arches', () => {
  it.each([
    // span, radius, rise, both arcs, area over the springing line
    ['equilateral', 36, 36, 31.1769, 75.3982, 795.9836],
    ['equilateral', 60, 60, 51.9615, 125.6637, 2211.0655],
    ['drop', 36, 27, 25.4558, 66.4718, 668.2668],
    ['lancet', 36, 48, 37.47, 85.9838, 939.512],
    ['lancet', 36, 54, 40.2492, 90.8354, 1003.5842],
  ])('pointed, %s, span %d', (_, span, radius, rise, length, area) => {
    expect(pointedRadius(span / 2, rise)).toBeCloseTo(radius, 3);
    const found = head('pointed', span, rise);
    expect(found.arcs).toBe(2);
    expect(found.length).toBeCloseTo(length, 3);
    expect(found.area).toBeCloseTo(area, 1);
  });

  it.each([
    [60, 20, 15.6574, 41.5139, 79.5966],
    [48, 16, 12.5259, 33.2111, 63.6772],
    [36, 12, 9.3944, 24.9083, 47.7579],
    [100, 30, 22.3381, 76.1032, 128.2886],
  ])('three centers, span %d', (span, rise, side, crown, length) => {
    const radii = basketRadii(span / 2, rise);
    expect(radii.side).toBeCloseTo(side, 3);
    expect(radii.crown).toBeCloseTo(crown, 3);
    expect(head('basket', span, rise).length).toBeCloseTo(length, 3);
  });

  it.each([
    [48, 18, 12, 79.1769, 64.316],
    [48, 16, 8, 112.4974, 60.7478],
  ])('four centers, span %d, rise %d', (span, rise, lower, upper, length) => {
    expect(fourCenteredRadius(span / 2, rise, lower)).toBeCloseTo(upper, 3);
    const found = head('four-centered', span, rise, lower);
    expect(found.arcs).toBe(4);
    expect(found.length).toBeCloseTo(length, 3);
  });

  it('four centers, from the quarter points', () => {
    expect(fourCenteredRadius(24, 20.3462, 12, 45)).toBeCloseTo(45.9411, 2);
    // Where the lower arcs run on to 70 degrees, none reaches a rise of 16 on 48.
    expect(fourCenteredRadius(24, 16, 8, 70)).toBeNull();
  });

  it.each([
    [36, 36, 18, 27, 83.4566],
    [36, 30, 18, 16, 73.4971],
    [48, 40, 20, 25.3333, 97.9961],
  ])('ogee, span %d, rise %d', (span, rise, lower, upper, length) => {
    expect(ogeeRadius(span / 2, rise, lower)).toBeCloseTo(upper, 3);
    const found = head('ogee', span, rise, lower);
    expect(found.arcs).toBe(4);
    expect(found.length).toBeCloseTo(length, 3);
  });

  it('half an ellipse is as long as the Gauss mean says', () => {
    const box = { x: 0, y: 0, w: 60 * 25.4, h: 20 * 25.4 };
    const ring = ringOfLoop(headedLoop('elliptical', box, box.h));
    let length = 0;
    for (let i = 1; i < ring.length; i++) {
      const [a, b] = [ring[i - 1], ring[i]];
      if (a && b) length += Math.hypot(b.x - a.x, b.y - a.y);
    }
    // Chords that stray by 0.05 mm fall short by a few parts in a hundred thousand.
    expect(length / 25.4 / 79.3272).toBeCloseTo(1, 3);
  });

  it('is the circular head where no such arcs meet, and never leaves its box', () => {
    const box = { x: 10, y: 20, w: 400, h: 300 };
    const names: Head[] = ['pointed', 'basket', 'elliptical', 'four-centered', 'ogee'];
    for (const name of names) {
      for (const rise of [5, 50, 199, 200, 201, 299, 300, 900]) {
        for (const radius of [1, 60, 150, 200, 500]) {
          const ring = ringOfLoop(headedLoop(name, box, rise, radius));
          const own = boxOfPoints(ring);
          expect(signedArea(ring), `${name} ${rise} ${radius}`).toBeGreaterThan(0);
          for (const side of ['x', 'y', 'w', 'h'] as const) {
            // The crown of the circular head may lie between two of its points.
            expect(Math.abs(own[side] - box[side])).toBeLessThan(2 * FLATNESS);
          }
        }
      }
    }
  });
});
