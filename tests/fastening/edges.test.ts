import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { looseEdge } from '../../src/fastening/looseEdge.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import type { Brad } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import { bradded } from './laidAs.ts';

/*
 * Sheets whose edge rows lie over the joints of what is beneath them: boards side by side on the field of the
 * sample bed, 3/4 in thick, and a sheet or wide strip of 1/2 in over them. All in inches.
 */
const bed = sampleBed();
const { face } = faceOf(bed);
const lengths = [0.625, 0.75, 1, 1.25].map(inches);
const brad: Brad = { id: 'b', name: '', diameter: 1.21, lengths, price: 0, count: 1000, source: '' };
const FIELD = -3.25;
const FROM_EDGE = 0.5;
const SPACING = 6;

const block = (
  part: string,
  x: number,
  y: number,
  w: number,
  h: number,
  z0: number,
  t: number,
  kind: Solid['kind'] = 'panel',
): Solid => ({
  part,
  kind,
  region: regionOfBox({ x: inches(x), y: inches(y), w: inches(w), h: inches(h) }),
  z0: inches(z0),
  z1: inches(z0 + t),
  stock: null,
  finish: null,
  on: 'field',
});
const board = (x: number, y: number, w: number, h: number): Solid =>
  block(`board ${x} ${y}`, x, y, w, h, FIELD, 0.75);
const over = (x: number, y: number, w: number, h: number, kind: Solid['kind'] = 'panel') =>
  block('over', x, y, w, h, FIELD + 0.75, 0.5, kind);

/** Brads of the last solid, in inches, and the checks. */
function drive(solids: readonly Solid[]): { at: Point[]; codes: string[] } {
  const plan = bradded(solids, { bed, face }, brad, {
    lengths: [],
    spacing: inches(SPACING),
    fromEdge: inches(FROM_EDGE),
    shortOfFar: inches(0.125),
    bite: inches(0.25),
  });
  const last = plan.parts.at(-1);
  return {
    at: (last?.at ?? []).map((p) => ({ x: p.x / 25.4, y: p.y / 25.4 })),
    codes: plan.checks.filter((c) => c.parts.includes('over')).map((c) => c.code),
  };
}

/** Every point along the sides of a box has a brad within reach: looked at point by point. */
function heldAllAround(box: Box, at: readonly Point[], reach: number): boolean {
  const { x, y, w, h } = box;
  const steps = 40;
  for (let i = 0; i <= steps; i++) {
    const t = i / steps;
    const around = [
      { x: x + t * w, y },
      { x: x + t * w, y: y + h },
      { x, y: y + t * h },
      { x: x + w, y: y + t * h },
    ];
    if (!around.every((p) => at.some((q) => Math.hypot(p.x - q.x, p.y - q.y) <= reach))) return false;
  }
  return true;
}

describe('a sheet whose edge row lies on a joint', () => {
  it('stands half an inch beyond it: joint at 20, sheet from 19.5', () => {
    const { at, codes } = drive([board(10, 10, 10, 50), board(20, 10, 20, 50), over(19.5, 12, 12, 30)]);
    expect(codes).toEqual([]);
    const left = at.filter((p) => p.x < 21);
    // Along 29 in, none farther apart than 6.
    expect(left.length).toBeGreaterThanOrEqual(6);
    for (const p of left) expect(p.x).toBeCloseTo(20.5, 2);
    expect(Math.min(...left.map((p) => p.y))).toBeCloseTo(12.5, 2);
    expect(Math.max(...left.map((p) => p.y))).toBeCloseTo(41.5, 2);
  });

  it('moves only the stretch over the joint: it ends half way up', () => {
    const { at } = drive([
      board(10, 10, 10, 16),
      board(20, 10, 20, 16),
      board(10, 26, 30, 30),
      over(19.5, 12, 12, 30),
    ]);
    const left = at.filter((p) => p.x < 21);
    const low = left.filter((p) => p.y < 26);
    const high = left.filter((p) => p.y > 26);
    expect(low.length).toBeGreaterThanOrEqual(3);
    expect(high.length).toBeGreaterThanOrEqual(3);
    for (const p of low) expect(p.x).toBeCloseTo(20.5, 2);
    for (const p of high) expect(p.x).toBeCloseTo(20, 2);
  });

  it('puts no two brads into one corner', () => {
    const { at } = drive([board(10, 10, 10, 50), board(20, 10, 20, 50), over(19.5, 12, 12, 30)]);
    for (const [i, p] of at.entries()) {
      for (const q of at.slice(i + 1)) expect(Math.hypot(p.x - q.x, p.y - q.y)).toBeGreaterThan(0.49);
    }
  });

  it('says where nothing can hold: laths too thin for a brad under the left edge', () => {
    const laths = Array.from({ length: 60 }, (_, i) => board(16 + i * 0.08, 10, 0.08, 50));
    const { at, codes } = drive([...laths, board(20.8, 10, 20, 50), over(16.5, 12, 12, 30)]);
    expect(at.length).toBeGreaterThan(5);
    expect(Math.min(...at.map((p) => p.x))).toBeGreaterThan(20.8);
    expect(codes).toEqual(['fastening.loose-edge']);
  });

  it('holds all around over a joint anywhere, clear of it and of its own edges', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -200, max: 400 }),
        fc.boolean(),
        fc.integer({ min: 8, max: 20 }),
        (hundredths, across, size) => {
          const joint = hundredths / 100;
          const box = { x: 12, y: 14, w: size, h: 24 };
          const boards = across
            ? [board(6, 6, 30, 8 + joint), board(6, 14 + joint, 30, 40)]
            : [board(6, 6, 6 + joint, 50), board(12 + joint, 6, 26, 50)];
          const { at, codes } = drive([...boards, over(box.x, box.y, box.w, box.h)]);
          expect(codes).toEqual([]);
          for (const p of at) {
            const own = Math.min(p.x - box.x, p.y - box.y, box.x + box.w - p.x, box.y + box.h - p.y);
            expect(own).toBeGreaterThanOrEqual(FROM_EDGE - 1e-3);
            const seam = Math.abs(across ? p.y - box.y - joint : p.x - box.x - joint);
            expect(seam).toBeGreaterThanOrEqual(FROM_EDGE / 2 - 1e-3);
          }
          expect(heldAllAround(box, at, 0.75 * SPACING + 1)).toBe(true);
        },
      ),
      { numRuns: 150 },
    );
  });
});

describe('a wide strip with one of its two rows on a joint', () => {
  it('keeps two rows, the one moved off the joint', () => {
    // Rows of a 3 1/2 in strip from 19.5 stand at 20 and 22.5; the joint is at 20.
    const { at } = drive([board(10, 10, 10, 50), board(20, 10, 20, 50), over(19.5, 12, 3.5, 40, 'strip')]);
    const left = at.filter((p) => p.x < 21.25);
    const right = at.filter((p) => p.x > 21.25);
    expect(left.length).toBeGreaterThanOrEqual(7);
    expect(right.length).toBe(left.length);
    for (const p of left) expect(p.x).toBeCloseTo(20.5, 2);
    for (const p of right) expect(p.x).toBeCloseTo(22.5, 2);
  });
});

describe('the longest loose stretch of an edge', () => {
  const sheet = regionOfBox({ x: 0, y: 0, w: 400, h: 400 });
  const at = { spacing: 100, fromEdge: 10 };
  const ring = (step: number) =>
    Array.from({ length: 4 * Math.round(380 / step) }, (_, i) => {
      const along = (i * step) % 1520;
      const [side, t] = [Math.floor(along / 380), along % 380];
      return [
        { x: 10 + t, y: 10 },
        { x: 390, y: 10 + t },
        { x: 390 - t, y: 390 },
        { x: 10, y: 390 - t },
      ][side] as Point;
    });

  it('is none where a row runs all around, or where there is no wood', () => {
    expect(looseEdge(sheet, sheet, ring(95), at)).toBeNull();
    expect(looseEdge(sheet, [], [], at)).toBeNull();
  });

  it('is what lies beyond three quarters of the spacing of the nearest, by hand', () => {
    // No brad along the bottom, but those in its corners: 380 less 75 at either end.
    const places = ring(95).filter((p) => p.y > 10 || p.x === 10 || p.x === 390);
    expect(looseEdge(sheet, sheet, places, at)?.length).toBeCloseTo(230, 6);
    expect(looseEdge(sheet, sheet, places, at)?.at).toEqual({ x: expect.closeTo(200, 6), y: 10 });
    // Wood under its left half alone.
    const half = regionOfBox({ x: 0, y: 0, w: 200, h: 400 });
    expect(looseEdge(sheet, half, places, at)?.length).toBeCloseTo(200 - 10 - 75, 6);
  });
});
