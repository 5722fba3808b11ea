import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meetingPairs } from '../../src/geometry/meeting.ts';
import { boxesMeet } from '../../src/geometry/region.ts';
import { lapDepth } from '../../src/joinery/meet.ts';

const box = fc.record({
  x: fc.integer({ min: 0, max: 60 }),
  y: fc.integer({ min: 0, max: 60 }),
  w: fc.integer({ min: 1, max: 30 }),
  h: fc.integer({ min: 1, max: 30 }),
});

describe('pairs of boxes that meet', () => {
  it('are those found by looking at every pair', () => {
    fc.assert(
      fc.property(fc.array(box, { maxLength: 25 }), (boxes) => {
        const plain = boxes.flatMap((a, i) =>
          boxes.flatMap((b, j) => (i < j && boxesMeet(a, b) ? [[i, j]] : [])),
        );
        expect(meetingPairs(boxes)).toEqual(plain);
      }),
    );
  });
});

describe('how deep two outlines lie in each other', () => {
  const ring = ({ x, y, w, h }: { x: number; y: number; w: number; h: number }) => [
    { x, y },
    { x: x + w, y },
    { x: x + w, y: y + h },
    { x, y: y + h },
  ];

  it('is the least overlap of two boxes, negative by their gap', () => {
    fc.assert(
      fc.property(box, box, (a, b) => {
        const across = Math.min(a.x + a.w - b.x, b.x + b.w - a.x);
        const up = Math.min(a.y + a.h - b.y, b.y + b.h - a.y);
        expect(lapDepth(ring(a), ring(b))).toBeCloseTo(Math.min(across, up), 9);
      }),
    );
  });

  it('sees that a slope keeps two boxes apart whose bounds meet', () => {
    const triangle = [
      { x: 0, y: 0 },
      { x: 10, y: 0 },
      { x: 0, y: 10 },
    ];
    expect(lapDepth(triangle, ring({ x: 8, y: 8, w: 5, h: 5 }))).toBeCloseTo(-6 / Math.SQRT2, 9);
  });
});
