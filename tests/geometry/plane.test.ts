import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { angleOf, distance, leftNormal, lerp, rotate, unit } from '../../src/geometry/point.ts';
import {
  areaOf,
  boxesMeet,
  boxOf,
  centroidOf,
  containsPointInRegion,
  EMPTY,
  perimeterOf,
  regionOfBox,
  regionOfRing,
  transformRegion,
  translateRegion,
} from '../../src/geometry/region.ts';
import {
  boxOfPoints,
  centroidOfRing,
  containsPoint,
  perimeter,
  reverseRing,
  signedArea,
} from '../../src/geometry/ring.ts';
import { distanceToSegment, intersectLines, intersectSegments } from '../../src/geometry/segment.ts';
import type { Point, Ring } from '../../src/geometry/shape.ts';

const p = (x: number, y: number): Point => ({ x, y });
const square: Ring = [p(0, 0), p(4, 0), p(4, 4), p(0, 4)];

describe('points', () => {
  it('turns by quarters without rounding', () => {
    expect(rotate(p(3, 1), 90)).toEqual(p(-1, 3));
    expect(rotate(p(3, 1), -90)).toEqual(p(1, -3));
    expect(rotate(p(3, 1), 540, p(1, 1))).toEqual(p(-1, 1));
  });

  it('turns and measures angles alike', () => {
    const angles = fc.double({ min: -179.9, max: 179.9, noNaN: true });
    fc.assert(
      fc.property(angles, (angle) => {
        expect(angleOf(rotate(p(1, 0), angle))).toBeCloseTo(angle, 9);
        expect(distance(p(7, 8), rotate(p(1, 2), angle, p(7, 8)))).toBeCloseTo(Math.hypot(6, 6), 9);
      }),
    );
  });

  it('keeps the ends, left is counterclockwise, and nothing has no direction', () => {
    expect(lerp(p(0.1, 0.2), p(0.3, 0.7), 1)).toEqual(p(0.3, 0.7));
    expect(lerp(p(0.1, 0.2), p(0.1, 0.7), 1 / 3).x).toBe(0.1);
    expect(leftNormal(p(5, 0))).toEqual(p(-0, 1));
    expect(unit(p(0, 0))).toEqual(p(0, 0));
  });
});

describe('segments', () => {
  it('meets lines beyond their points, segments only within', () => {
    expect(intersectLines(p(0, 0), p(1, 1), p(5, 0), p(5, 1))).toEqual(p(5, 5));
    expect(intersectSegments(p(0, 0), p(1, 1), p(5, 0), p(5, 1))).toBeNull();
    expect(intersectSegments(p(0, 0), p(4, 4), p(0, 4), p(4, 0))).toEqual(p(2, 2));
    expect(intersectSegments(p(0, 0), p(4, 0), p(4, 0), p(4, 9))).toEqual(p(4, 0));
  });

  it('has no meeting for parallel lines and for points', () => {
    expect(intersectLines(p(0, 0), p(9, 0), p(0, 1), p(9, 1))).toBeNull();
    expect(intersectLines(p(0, 0), p(0, 0), p(0, 1), p(9, 1))).toBeNull();
  });

  it('does not depend on which line is named first', () => {
    const point = fc.record({
      x: fc.integer({ min: -999, max: 999 }),
      y: fc.integer({ min: -999, max: 999 }),
    });
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const one = intersectSegments(a, b, c, d);
        const two = intersectSegments(d, c, b, a);
        expect(one === null).toBe(two === null);
        if (one && two) expect(distance(one, two)).toBeLessThan(1e-6);
      }),
    );
  });

  it('measures distances', () => {
    expect(distanceToSegment(p(3, 4), p(-5, 0), p(0, 0))).toBe(5);
    expect(distanceToSegment(p(-2, 4), p(-5, 0), p(0, 0))).toBe(4);
    expect(distanceToSegment(p(3, 4), p(0, 0), p(0, 0))).toBe(5);
  });
});

describe('rings', () => {
  it('has area and border by closed forms', () => {
    const right = [p(0, 0), p(3, 0), p(0, 4)];
    expect(signedArea(right)).toBe(6);
    expect(signedArea(reverseRing(right))).toBe(-6);
    expect(perimeter(right)).toBe(12);
    expect(centroidOfRing(right)).toEqual(p(1, 4 / 3));
    // Regular hexagon of side 1: 3/2 sqrt 3.
    const hexagon = [0, 60, 120, 180, 240, 300].map((a) => rotate(p(1, 0), a));
    expect(signedArea(hexagon)).toBeCloseTo(1.5 * Math.sqrt(3), 12);
  });

  it('keeps its digits far from the origin', () => {
    const far = square.map((q) => p(q.x / 1000 + 90_000, q.y / 1000 + 90_000));
    expect(signedArea(far)).toBeCloseTo(16e-6, 12);
  });

  it('knows inside, border and outside', () => {
    expect(containsPoint(square, p(2, 2))).toBe(true);
    expect(containsPoint(square, p(4, 2))).toBe(true);
    expect(containsPoint(square, p(0, 0))).toBe(true);
    expect(containsPoint(square, p(4.001, 2))).toBe(false);
    expect(containsPoint(square, p(-1, 4))).toBe(false);
  });

  it('boxes points, and nothing too', () => {
    expect(boxOfPoints([p(3, -1), p(-2, 7)])).toEqual({ x: -2, y: -1, w: 5, h: 8 });
    expect(boxOfPoints([])).toEqual({ x: 0, y: 0, w: 0, h: 0 });
  });
});

describe('regions', () => {
  const frame = [{ outer: square, holes: [[p(1, 1), p(1, 3), p(3, 3), p(3, 1)]] }];

  it('takes holes away and counts their borders', () => {
    expect(areaOf(frame)).toBe(12);
    expect(perimeterOf(frame)).toBe(16 + 8);
    expect(boxOf(frame)).toEqual({ x: 0, y: 0, w: 4, h: 4 });
    expect(centroidOf(frame)).toEqual(p(2, 2));
    expect(boxOf(EMPTY)).toBeNull();
  });

  it('has the center of mass of its parts together', () => {
    const two = [...regionOfBox({ x: 0, y: 0, w: 2, h: 2 }), ...regionOfBox({ x: 10, y: 0, w: 2, h: 4 })];
    // Areas 4 and 8 at (1, 1) and (11, 2).
    expect(centroidOf(two)).toEqual(p((4 * 1 + 8 * 11) / 12, (4 * 1 + 8 * 2) / 12));
  });

  it('mirrors and moves without turning inside out', () => {
    const mirrored = transformRegion(frame, (q) => p(-q.x, q.y));
    expect(areaOf(mirrored)).toBe(12);
    expect(signedArea(mirrored[0]?.outer ?? [])).toBe(16);
    expect(boxOf(translateRegion(frame, 5, -1))).toEqual({ x: 5, y: -1, w: 4, h: 4 });
  });

  it('is the same whichever way a ring was walked; without area it is empty', () => {
    expect(areaOf(regionOfRing(reverseRing(square)))).toBe(16);
    expect(regionOfRing([p(0, 0), p(1, 1)])).toEqual(EMPTY);
    expect(regionOfBox({ x: 0, y: 0, w: 0, h: 5 })).toEqual(EMPTY);
  });

  it('contains its borders, but not its holes', () => {
    expect(containsPointInRegion(frame, p(0.5, 2))).toBe(true);
    expect(containsPointInRegion(frame, p(1, 2))).toBe(true);
    expect(containsPointInRegion(frame, p(2, 2))).toBe(false);
  });

  it('meets boxes that touch', () => {
    const a = { x: 0, y: 0, w: 1, h: 1 };
    expect(boxesMeet(a, { x: 1, y: 1, w: 1, h: 1 })).toBe(true);
    expect(boxesMeet(a, { x: 1.1, y: 0, w: 1, h: 1 })).toBe(false);
    expect(boxesMeet(a, { x: 0, y: -2, w: 1, h: 1 })).toBe(false);
  });
});
