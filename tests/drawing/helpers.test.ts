import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dimension } from '../../src/drawing/dimension.ts';
import type { DrawItem, TextItem } from '../../src/drawing/drawing.ts';
import { HATCHINGS, hatch } from '../../src/drawing/hatch.ts';
import { rectangle } from '../../src/drawing/items.ts';
import { scaleBar, scaleFor, scaleWords } from '../../src/drawing/scaleBar.ts';
import { applied, compose, matrixOf, turnAndMove } from '../../src/drawing/transform.ts';
import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { subtract } from '../../src/geometry/clip.ts';
import { flattenPath } from '../../src/geometry/curve.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { distance, midpoint } from '../../src/geometry/point.ts';
import { areaOf, containsPointInRegion, regionOfBox } from '../../src/geometry/region.ts';
import type { Point } from '../../src/geometry/shape.ts';

const coordinate = fc.double({ min: -500, max: 500, noNaN: true });
const textOf = (items: DrawItem[]) => items.find((item): item is TextItem => item.kind === 'text')!;
const strokes = (items: DrawItem[]): Point[][] =>
  flatten(items).paths.flatMap(({ path }) => flattenPath(path).map((c) => c.points));

describe('a dimension', () => {
  it('runs parallel to what it measures, as long as it, at its distance', () => {
    fc.assert(
      fc.property(coordinate, coordinate, fc.double({ min: 5, max: 400, noNaN: true }), (x, y, length) => {
        const [a, b] = [
          { x, y },
          { x: x + length, y },
        ];
        const segments = strokes(dimension(a, b, 10, '12'));
        const line = segments.find(
          (s) => Math.abs(s[0]!.y - (y + 10)) < 1e-9 && Math.abs(s[1]!.y - (y + 10)) < 1e-9,
        );
        expect(distance(line![0]!, line![1]!)).toBeCloseTo(length, 9);
      }),
    );
  });

  it.each([
    ['rightward', { x: 60, y: 0 }, 0],
    ['leftward', { x: -60, y: 0 }, 0],
    ['upward', { x: 0, y: 60 }, 90],
    ['downward', { x: 0, y: -60 }, 90],
  ])('going %s is read from below or from the right, its figure above its line', (_, to, angle) => {
    for (const away of [8, -8]) {
      const items = dimension({ x: 0, y: 0 }, to, away, '60');
      const words = textOf(items);
      expect((((words.angle ?? 0) % 360) + 360) % 360).toBe(angle);
      const lineAt = angle === 0 ? Math.sign(to.x) * away : -Math.sign(to.y) * away;
      // Above: higher for level text, further left for text that is read from the right.
      if (angle === 0) expect(words.at.y).toBeGreaterThan(lineAt);
      else expect(words.at.x).toBeLessThan(lineAt);
    }
  });

  it('too short for its figure has it beyond its end', () => {
    const words = textOf(dimension({ x: 0, y: 0 }, { x: 2, y: 0 }, 5, '1234 1/2'));
    expect(words.at.x).toBeGreaterThan(2);
  });
});

describe('hatching', () => {
  const ring = subtract(
    regionOfBox({ x: 0, y: 0, w: 60, h: 40 }),
    regionOfBox({ x: 20, y: 10, w: 15, h: 15 }),
  );

  it('lies inside its region and is as dense as its pitch says', () => {
    for (const hatching of HATCHINGS) {
      if (!hatching) continue;
      const lines = strokes(hatch(ring, hatching));
      for (const [a, b] of lines) expect(containsPointInRegion(ring, midpoint(a!, b!))).toBe(true);
      const length = lines.reduce((sum, [a, b]) => sum + distance(a!, b!), 0);
      const expected = (areaOf(ring) / hatching.pitch) * (hatching.crossed ? 2 : 1);
      expect(Math.abs(length / expected - 1)).toBeLessThan(0.08);
    }
  });

  it('is none for nothing', () => {
    expect(hatch([], HATCHINGS[1]!)).toEqual([]);
    expect(hatch(ring, null)).toEqual([]);
  });
});

describe('scales', () => {
  it('are the largest of the series at which the thing fits', () => {
    expect(scaleFor({ w: 1000, h: 2000 }, { w: 180, h: 230 }, 'mm')).toBe(10);
    expect(scaleFor({ w: 1000, h: 2000 }, { w: 180, h: 230 }, 'in')).toBe(12);
    expect(scaleFor({ w: 100, h: 100 }, { w: 200, h: 200 }, 'mm')).toBe(1);
    expect(scaleFor({ w: 100_000, h: 10 }, { w: 200, h: 200 }, 'mm')).toBe(500);
  });

  // ISO 5455:1979, table 2: reductions 1:2, 1:5, 1:10, 1:20, 1:50, 1:100 and so on; from memory.
  it('are in millimeters those of ISO 5455: 1, 2 and 5 and their tens', () => {
    for (let size = 1; size < 100_000; size *= 1.07) {
      const scale = scaleFor({ w: size, h: size }, { w: 100, h: 100 }, 'mm');
      expect(String(scale)).toMatch(/^[125]0*$/);
      expect(size / scale).toBeLessThanOrEqual(100 + 1e-6);
    }
    expect(scaleWords(20, 'mm')).toBe('1:20');
  });

  // What stands on an architect's scale; the trade's, from memory.
  it.each([
    [2, '6" = 1\'-0"'],
    [4, '3" = 1\'-0"'],
    [8, '1 1/2" = 1\'-0"'],
    [12, '1" = 1\'-0"'],
    [16, '3/4" = 1\'-0"'],
    [24, '1/2" = 1\'-0"'],
    [32, '3/8" = 1\'-0"'],
    [48, '1/4" = 1\'-0"'],
    [64, '3/16" = 1\'-0"'],
    [96, '1/8" = 1\'-0"'],
    [128, '3/32" = 1\'-0"'],
    [192, '1/16" = 1\'-0"'],
  ])('are in inches those of an architect’s scale: 1:%i is %s', (scale, words) => {
    expect(scaleFor({ w: scale, h: scale }, { w: 1, h: 1 }, 'in')).toBe(scale);
    expect(scaleWords(scale, 'in')).toBe(words);
  });

  it.each(['mm', 'in'] as const)(
    'have a bar in %s that measures true on paper and stays in its room',
    (unit) => {
      for (const scale of [1, 5, 12, 40]) {
        const items = scaleBar(scale, unit, 50);
        const last = items.filter((item): item is TextItem => item.kind === 'text').at(-1)!;
        const told = Number(last.text.split(' ')[0]) * (unit === 'in' ? 25.4 : 1);
        expect(last.at.x * scale).toBeCloseTo(told, 6);
        expect(last.at.x).toBeLessThanOrEqual(50);
      }
    },
  );
});

describe('transformations', () => {
  it('of groups scale, then turn, then move', () => {
    const m = matrixOf({ kind: 'group', scale: { x: 2, y: 3 }, turn: 90, move: { x: 10, y: 20 }, items: [] });
    expect(applied(m, { x: 1, y: 1 })).toEqual({ x: 10 - 3, y: 20 + 2 });
  });

  it('compose as one after the other', () => {
    fc.assert(
      fc.property(coordinate, coordinate, fc.integer({ min: -360, max: 360 }), (x, y, angle) => {
        const inner = turnAndMove(angle, { x: 3, y: -2 });
        const outer = turnAndMove(-2 * angle, { x, y: 7 });
        const once = applied(compose(outer, inner), { x: y, y: x });
        const twice = applied(outer, applied(inner, { x: y, y: x }));
        expect(distance(once, twice)).toBeLessThan(1e-9);
      }),
    );
  });

  it('carry groups down to their paths and texts', () => {
    const items: DrawItem[] = [
      {
        kind: 'group',
        layer: 'a',
        move: { x: 5, y: 5 },
        items: [{ kind: 'group', scale: { x: 2, y: 2 }, items: [rectangle({ x: 1, y: 1, w: 2, h: 3 })] }],
      },
    ];
    const [flat] = flatten(items).paths;
    expect(boxOfPath(flat!.path)).toEqual({ x: 7, y: 7, w: 4, h: 6 });
    expect(flat!.layer).toBe('a');
    const words: TextItem = {
      kind: 'text',
      at: { x: 10, y: 10 },
      text: 'AA',
      size: 10,
      anchor: 'middle',
      color: '#000000',
    };
    const corners = textCorners(flatten([{ ...words, angle: 90 }]).texts[0]!);
    // Two capitals A are 1.214 em wide; standing, they run from 6.07 below the anchor to 6.07 above.
    expect(Math.min(...corners.map((p) => p.y))).toBeCloseTo(10 - 6.07, 9);
    expect(Math.max(...corners.map((p) => p.y))).toBeCloseTo(10 + 6.07, 9);
  });
});
