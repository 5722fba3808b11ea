import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { chordsInside } from '../../src/geometry/chord.ts';
import {
  clipPolyline,
  connectedParts,
  intersect,
  offset,
  regionOfRings,
  subtract,
  subtractedArea,
  union,
} from '../../src/geometry/clip.ts';
import { distance, rotate } from '../../src/geometry/point.ts';
import { areaOf, EMPTY, regionOfBox, ringsOf, transformRegion } from '../../src/geometry/region.ts';
import { signedArea } from '../../src/geometry/ring.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import { FLATNESS } from '../../src/geometry/tolerance.ts';

const box = (x: number, y: number, w: number, h: number) => regionOfBox({ x, y, w, h });
const turned = (region: Region, angle: number) =>
  transformRegion(region, (p) => rotate(p, angle, { x: 700, y: 300 }));

const anyBox = fc
  .record({
    x: fc.integer({ min: 0, max: 1800 }),
    y: fc.integer({ min: 0, max: 900 }),
    w: fc.integer({ min: 1, max: 700 }),
    h: fc.integer({ min: 1, max: 500 }),
    angle: fc.integer({ min: -180, max: 180 }),
  })
  .map(({ x, y, w, h, angle }) => turned(box(x, y, w, h), angle));
const anyRegion = fc.array(anyBox, { minLength: 1, maxLength: 8 }).map((boxes) => union(boxes));

describe('union, intersect, subtract', () => {
  it('conserves area: A is what is outside B and what is inside', () => {
    fc.assert(
      fc.property(anyRegion, anyRegion, (a, b) => {
        const inside = areaOf(intersect(a, b));
        expect(areaOf(subtract(a, b)) + inside).toBeCloseTo(areaOf(a), 0);
        expect(subtractedArea(a, b) + inside).toBeCloseTo(areaOf(a), 0);
      }),
      { numRuns: 300 },
    );
  });

  it('gives outers counterclockwise and holes clockwise', () => {
    fc.assert(
      fc.property(anyRegion, anyRegion, (a, b) => {
        for (const polygon of subtract(a, b)) {
          expect(signedArea(polygon.outer)).toBeGreaterThan(0);
          for (const hole of polygon.holes) expect(signedArea(hole)).toBeLessThan(0);
        }
      }),
    );
  });

  it('does not depend on the order of the regions', () => {
    const lists = fc.array(anyBox, { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(lists, (boxes) => {
        const there = union(boxes);
        const back = union([...boxes].reverse());
        expect(areaOf(back)).toBeCloseTo(areaOf(there), 1);
        expect(back.length).toBe(there.length);
      }),
    );
  });

  it('keeps the exact coordinates of corners it does not cut', () => {
    const x = 25.4 / 64;
    const result = union([box(x, x, 100, 50), box(x + 50, x, 100.123456789, 50)]);
    const xs = ringsOf(result).flatMap((ring) => ring.map((p) => p.x));
    expect(Math.min(...xs)).toBe(x);
    expect(Math.max(...xs)).toBe(x + 50 + 100.123456789);
    expect(result[0]?.outer).toHaveLength(4);
  });

  it('makes a frame with a hole, and a piece in the hole stands by itself', () => {
    const frame = subtract(box(0, 0, 1000, 2000), box(100, 100, 800, 1800));
    expect(frame).toHaveLength(1);
    expect(frame[0]?.holes).toHaveLength(1);
    expect(areaOf(frame)).toBe(1000 * 2000 - 800 * 1800);
    const both = union([frame, box(300, 300, 100, 100)]);
    expect(both).toHaveLength(2);
    expect(connectedParts(both).map(areaOf)).toEqual([560_000, 10_000]);
  });

  it('treats disjoint and empty regions', () => {
    expect(union([])).toEqual(EMPTY);
    expect(intersect(box(0, 0, 1, 1), box(5, 5, 1, 1))).toEqual(EMPTY);
    expect(subtract(EMPTY, box(0, 0, 1, 1))).toEqual(EMPTY);
    expect(subtractedArea(box(0, 0, 2, 3), EMPTY)).toBe(6);
  });

  it('refuses numbers that are no place on a bed', () => {
    expect(() => union([box(0, 0, 2e6, 1)])).toThrow(/within 1000000 mm expected, found/);
    expect(() => union([[{ outer: [{ x: Number.NaN, y: 0 }], holes: [] }]])).toThrow(RangeError);
  });
});

describe('a single ring', () => {
  // Twin: the same ring twice goes through the polygon library, which has to tell what is convex from what is not.
  const throughLibrary = (ring: readonly Point[]) => regionOfRings([ring, ring], 'nonzero');

  it('covers what the library makes of it, convex or not, around once or more; to the last digit where it is even', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 12 }),
        fc.integer({ min: 1, max: 3 }),
        fc.integer({ min: -180, max: 180 }),
        fc.constantFrom(0.0001, 0.01, 1, 300),
        fc.oneof(
          fc.constant(Array.from({ length: 12 }, () => 1)),
          fc.array(fc.constantFrom(1, 1, 1, 0.5, 0.99999, -1), { minLength: 12, maxLength: 12 }),
        ),
        (corners, times, angle, radius, reach) => {
          const ring = Array.from({ length: corners }, (_, i) => {
            const turn = ((360 * times * i) / corners + angle) * (Math.PI / 180);
            const r = radius * (reach[i] ?? 1);
            return { x: 700 + r * Math.cos(turn), y: 300 + r * Math.sin(turn) };
          });
          const middles = ring.flatMap((p, i) => {
            const q = ring[(i + 1) % ring.length] ?? p;
            return [p, { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 }];
          });
          for (const one of [ring, middles, [...ring].reverse()]) {
            const [own, twin] = [regionOfRings([one], 'nonzero'), throughLibrary(one)];
            if (times === 1 && reach.slice(0, corners).every((r) => r === 1)) expect(own).toEqual(twin);
            else expect(Math.abs(areaOf(own) - areaOf(twin))).toBeLessThan(1e-3 * radius + 1e-7);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('turned, staggered, abutting grids', () => {
  /** Columns of boxes side by side, each column shifted up by its own amount, all turned. */
  function staggered(columns: number, rows: number, shift: number, angle: number): Region[] {
    const parts: Region[] = [];
    for (let c = 0; c < columns; c++) {
      for (let r = 0; r < rows; r++) {
        parts.push(turned(box(c * 82.55, r * 38.1 + ((c * shift) % 38.1), 82.55, 38.1), angle));
      }
    }
    return parts;
  }

  it('fills without gap: the union is the sum, and nothing is left when the parts are taken away', () => {
    const grids = fc.record({
      columns: fc.integer({ min: 1, max: 9 }),
      rows: fc.integer({ min: 1, max: 9 }),
      shift: fc.double({ min: 0, max: 38, noNaN: true }),
      angle: fc.double({ min: -90, max: 90, noNaN: true }),
    });
    fc.assert(
      fc.property(grids, ({ columns, rows, shift, angle }) => {
        const parts = staggered(columns, rows, shift, angle);
        const whole = union(parts);
        const sum = columns * rows * 82.55 * 38.1;
        expect(Math.abs(areaOf(whole) - sum)).toBeLessThan(sum * 1e-5);
        for (const part of parts) expect(subtractedArea(part, whole)).toBeLessThan(0.5);
        expect(areaOf(subtract(whole, parts.flat()))).toBeGreaterThanOrEqual(0);
        expect(areaOf(subtract(whole, parts.flat()))).toBeLessThan(1);
      }),
      { numRuns: 150 },
    );
  });
});

describe('offset', () => {
  it('grows a box by closed forms for each kind of corner', () => {
    const b = box(0, 0, 100, 50);
    expect(areaOf(offset(b, 10, 'miter'))).toBeCloseTo(120 * 70, 6);
    const round = areaOf(offset(b, 10, 'round'));
    const exact = 100 * 50 + 2 * 10 * 150 + Math.PI * 100;
    expect(exact - round).toBeGreaterThanOrEqual(0);
    expect(exact - round).toBeLessThan(2 * Math.PI * 10 * FLATNESS);
    expect(areaOf(offset(b, -10, 'miter'))).toBeCloseTo(80 * 30, 6);
    expect(offset(b, -25, 'round')).toEqual(EMPTY);
  });

  it('shrinks a frame from both sides', () => {
    const frame = subtract(box(0, 0, 100, 100), box(30, 30, 40, 40));
    expect(areaOf(offset(frame, -5, 'miter'))).toBeCloseTo(90 * 90 - 50 * 50, 6);
  });
});

describe('regionOfRings', () => {
  const outer = [
    { x: 0, y: 0 },
    { x: 10, y: 0 },
    { x: 10, y: 10 },
    { x: 0, y: 10 },
  ];
  const inner = [
    { x: 2, y: 2 },
    { x: 8, y: 2 },
    { x: 8, y: 8 },
    { x: 2, y: 8 },
  ];
  it('fills by rule', () => {
    expect(areaOf(regionOfRings([outer, inner], 'evenodd'))).toBe(64);
    expect(areaOf(regionOfRings([outer, inner], 'nonzero'))).toBe(100);
    expect(areaOf(regionOfRings([outer, [...inner].reverse()], 'nonzero'))).toBe(64);
  });
});

describe('clipPolyline', () => {
  const frame = subtract(box(0, 0, 100, 100), box(30, 30, 40, 40));
  const nano = (value: number) => Math.round(value * 1e9) / 1e9 + 0;
  const rounded = (parts: Point[][]) =>
    parts.map((part) => part.map((p) => ({ x: nano(p.x), y: nano(p.y) })));

  it('keeps the parts inside, in the direction of the line', () => {
    const line = [
      { x: 150, y: 50 },
      { x: -50, y: 50 },
    ];
    expect(clipPolyline(line, frame)).toEqual([
      [
        { x: 100, y: 50 },
        { x: 70, y: 50 },
      ],
      [
        { x: 30, y: 50 },
        { x: 0, y: 50 },
      ],
    ]);
  });

  it('keeps a corner of the line and a stretch along the border', () => {
    const line = [
      { x: 10, y: -10 },
      { x: 10, y: 20 },
      { x: 200, y: 20 },
    ];
    expect(rounded(clipPolyline(line, frame))).toEqual([
      [
        { x: 10, y: 0 },
        { x: 10, y: 20 },
        { x: 100, y: 20 },
      ],
    ]);
    const border = [
      { x: -5, y: 0 },
      { x: 50, y: 0 },
    ];
    expect(rounded(clipPolyline(border, frame))).toEqual([
      [
        { x: 0, y: 0 },
        { x: 50, y: 0 },
      ],
    ]);
  });

  it('agrees with the quick count of borders crossed', () => {
    fc.assert(
      fc.property(anyRegion, fc.integer({ min: -80, max: 80 }), (region, slope) => {
        const a = { x: -3000, y: 400.37 - 30 * slope };
        const b = { x: 4000, y: 400.37 + 40 * slope };
        const exact = clipPolyline([a, b], region).map((part) => [part[0], part[part.length - 1]] as const);
        const quick = chordsInside(a, b, region);
        const total = (pairs: readonly (readonly [number, number])[]) =>
          pairs.reduce((n, [s, t]) => n + t - s, 0);
        const ends = exact.map(([p, q]) => [distance(a, p ?? a), distance(a, q ?? a)] as const);
        expect(total(quick)).toBeCloseTo(total(ends), 3);
      }),
    );
  });

  it('keeps of a line with corners what it keeps of each of its segments (twin: clipped one by one)', () => {
    // On few whole places, so that segments run along borders and turn on them, and on corners of the region.
    const place = fc.record({ x: fc.integer({ min: -1, max: 7 }), y: fc.integer({ min: -1, max: 7 }) });
    const lattice = fc
      .array(fc.tuple(place, fc.integer({ min: 1, max: 4 }), fc.integer({ min: 1, max: 4 }), fc.boolean()), {
        minLength: 1,
        maxLength: 6,
      })
      .map((boxes) =>
        boxes.reduce<Region>(
          (all, [{ x, y }, w, h, out]) =>
            out ? subtract(all, box(x, y, w, h)) : union([all, box(x, y, w, h)]),
          box(1, 1, 4, 3),
        ),
      );
    const lengthOf = (parts: readonly (readonly Point[])[]) =>
      parts.reduce(
        (sum, part) => sum + part.slice(1).reduce((all, p, i) => all + distance(part[i] ?? p, p), 0),
        0,
      );
    fc.assert(
      fc.property(lattice, fc.array(place, { minLength: 2, maxLength: 20 }), (region, line) => {
        const each = line.slice(1).map((p, i) => lengthOf(clipPolyline([line[i] ?? p, p], region)));
        expect(lengthOf(clipPolyline(line, region))).toBeCloseTo(
          each.reduce((sum, one) => sum + one, 0),
          6,
        );
      }),
      { numRuns: 1000 },
    );
  });

  it('has the length that the chord of a turned region has', () => {
    fc.assert(
      fc.property(anyRegion, fc.integer({ min: 0, max: 900 }), (region, y) => {
        const inside = clipPolyline(
          [
            { x: -5000, y: y + 0.123 },
            { x: 5000, y: y + 0.123 },
          ],
          region,
        );
        let total = 0;
        for (const part of inside) {
          for (let i = 1; i < part.length; i++) total += (part[i]?.x ?? 0) - (part[i - 1]?.x ?? 0);
        }
        // A thin band about the line is the plain twin.
        const band = areaOf(intersect(region, box(-5000, y + 0.123 - 0.05, 10_000, 0.1))) / 0.1;
        // Corners inside the band cost up to half its height over the tangent of the flattest side, 1 degree.
        expect(Math.abs(total - band)).toBeLessThan(12);
      }),
    );
  });
});
