import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BedMeasured } from '../../src/bed/bed.ts';
import type { RealEdges } from '../../src/bed/face.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { READINGS, spanOf } from '../../src/bed/measured.ts';
import { squareWithin } from '../../src/bed/realEdges.ts';
import { inches } from '../../src/measure/units.ts';
import { runs } from '../runs.ts';
import { sampleBed } from './sample.ts';

const { face: TRUE } = faceOf(sampleBed());
const [W, H] = [TRUE.width, TRUE.height];
const measured = (change: Partial<BedMeasured>): BedMeasured => ({
  ...{ rim: {}, field: {}, keep: 'bottom', rise: 0, border: 'square' },
  ...change,
});
const faceWith = (change: Partial<BedMeasured>) => faceOf(sampleBed({ measured: measured(change) }));
const rimOf = (real: readonly RealEdges[] | undefined): RealEdges => {
  const rim = real?.find(({ of }) => of === 'rim');
  if (!rim) throw new Error('it is true');
  return rim;
};

const off = fc.double({ min: -10, max: 10, noNaN: true });
const readings = fc
  .record({ top: off, left: off, right: off, rising: off })
  .map(({ top, left, right, rising }) => ({
    ...{ bottom: W + 1, top: W + top, left: H + left, right: H + right, rising: Math.hypot(W, H) + rising },
  }));

describe('real edges around the true rectangle', () => {
  it('keep their spans, lie along what is kept, and have the largest square within begin where the true one does', () => {
    fc.assert(
      fc.property(readings, fc.constantFrom('bottom', 'top', 'left', 'right'), (rim, keep) => {
        const rimOfFace = rimOf(faceWith({ rim, keep }).face.real);
        const { corners } = rimOfFace;
        for (const one of READINGS) {
          const read = rim[one as keyof typeof rim];
          if (read !== undefined) expect(spanOf(corners, one)).toBeCloseTo(read, 5);
        }
        const [a, b, c, d] = corners;
        const on = { bottom: [a.y, b.y, 0], top: [c.y, d.y, H], left: [a.x, d.x, 0], right: [b.x, c.x, W] }[
          keep
        ];
        expect(on[0]).toBeCloseTo(on[2] ?? Number.NaN, 5);
        expect(on[1]).toBeCloseTo(on[2] ?? Number.NaN, 5);
        if (keep !== 'right') expect(Math.max(a.x, d.x)).toBeCloseTo(0, 5);
        if (keep !== 'top') expect(Math.max(a.y, b.y)).toBeCloseTo(0, 5);
        const square = squareWithin(rimOfFace);
        // Every corner of it lies within: none of the four edges passes between them.
        const x = keep === 'right' ? W - square.w : 0;
        const y = keep === 'top' ? H - square.h : 0;
        const at = [
          [x, y],
          [x + square.w, y],
          [x + square.w, y + square.h],
          [x, y + square.h],
        ] as const;
        for (const [px, py] of at) {
          corners.forEach((p, i) => {
            const q = corners[(i + 1) % 4] ?? p;
            expect((q.x - p.x) * (py - p.y) - (q.y - p.y) * (px - p.x)).toBeGreaterThan(-1e-3);
          });
        }
      }),
      { numRuns: runs(100) },
    );
  });

  it('level: a lower edge that rises by 1/4 in leans by that', () => {
    const { corners } = rimOf(faceWith({ keep: 'level', rise: inches(0.25) }).face.real);
    expect(corners[1].y - corners[0].y).toBeCloseTo(inches(0.25), 6);
    expect(Math.hypot(corners[1].x - corners[0].x, corners[1].y - corners[0].y)).toBeCloseTo(W, 6);
  });

  it('tell at each corner what shows or hangs over: a top 1/4 in wider shows 1/4 in at one corner and at no other', () => {
    const { checks } = faceWith({ rim: { top: W + inches(0.25), left: H, rising: Math.hypot(W, H) } });
    const told = checks.filter(({ code }) => code === 'bed.corner').map(({ figures }) => figures);
    // By hand: the upper left corner swings about the lower left one, x² + y² = H², and falls by q² / 2H.
    const q = inches(0.25);
    expect(told).toHaveLength(1);
    expect(told[0]?.corner).toBe('upper-left');
    expect(told[0]?.across_mm).toBeCloseTo(q, 2);
    expect(told[0]?.up_mm).toBeCloseTo(-(q * q) / (2 * H), 4);
  });

  it('a frame board is as wide all along: its inner edge lies its thickness within, and so does the field', () => {
    const { face } = faceWith({ rim: { rising: Math.hypot(W, H) + 8 } });
    const [a, b] = rimOf(face.real).corners;
    const board = face.levels.find(({ id }) => id === 'ledge')?.region[0]?.outer[0];
    if (!board) throw new Error('no ledge');
    const away =
      Math.abs((b.x - a.x) * (board.y - a.y) - (b.y - a.y) * (board.x - a.x)) /
      Math.hypot(b.x - a.x, b.y - a.y);
    expect(away).toBeCloseTo(inches(1.5), 6);
  });

  it('a measured field keeps its own spans, in the middle of its rim', () => {
    const field = TRUE.levels.find(({ id }) => id === 'field')?.box;
    if (!field) throw new Error('no field');
    const top = field.w + inches(0.25);
    const { face } = faceWith({ field: { top } });
    const own = face.real?.find(({ of }) => of === 'field');
    if (!own) throw new Error('it is true');
    expect(spanOf(own.corners, 'top')).toBeCloseTo(top, 6);
    const middle = own.corners.reduce((sum, p) => sum + p.x / 4, 0);
    expect(middle).toBeCloseTo(W / 2, 6);
  });

  it('readings that are true, or none, change nothing of the face', () => {
    for (const rim of [{}, { bottom: W, left: H, rising: Math.hypot(W, H) }])
      expect(faceWith({ rim }).face).toEqual(TRUE);
  });
});
