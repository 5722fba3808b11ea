import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  cornersOf,
  type Measured,
  misreadOf,
  READINGS,
  type Reading,
  spanOf,
  TRUSTED,
} from '../../src/bed/measured.ts';
import type { Quad } from '../../src/geometry/shape.ts';
import { inches } from '../../src/measure/units.ts';
import { runs } from '../runs.ts';

/** Readings of corners with what each tape is off by; the twin of what the source computes corners from. */
function readingsOf(corners: Quad, noise: (reading: Reading) => number = () => 0): Measured {
  return Object.fromEntries(READINGS.map((one) => [one, spanOf(corners, one) + noise(one)]));
}

const found = (measured: Measured, w: number, h: number) => {
  const corners = cornersOf(measured, w, h);
  if (!corners) throw new Error('these do not close');
  return corners;
};

const mm = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
/** A face that was meant to be w by h, each corner off by at most `most`, its lower edge on x. */
const bed = (most: number) =>
  fc
    .record({
      w: fc.integer({ min: 900, max: 2300 }),
      h: fc.integer({ min: 900, max: 2300 }),
      by: fc.array(mm(most), { minLength: 5, maxLength: 5 }),
    })
    .map(({ w, h, by: [b = 0, cx = 0, cy = 0, dx = 0, dy = 0] }) => {
      const corners: Quad = [
        { x: 0, y: 0 },
        { x: w + b, y: 0 },
        { x: w + cx, y: h + cy },
        { x: dx, y: h + dy },
      ];
      return { w, h, corners };
    });

/** How far the worst corner lies from where it is. */
const worst = (a: Quad, b: Quad): number =>
  Math.max(...a.map((p, i) => Math.hypot(p.x - (b[i]?.x ?? Number.NaN), p.y - (b[i]?.y ?? Number.NaN))));

describe('corners from measures', () => {
  it('3, 4, 5 and its multiples are square (diy-woodworking-guide.com/1548/is-it-square, decks of 12 x 16 and 20 ft: doityourself.com/forum, deck squaring)', () => {
    for (const [w, h, d] of [
      [3, 4, 5],
      [6, 8, 10],
      [12, 16, 20],
      [5, 12, 13],
    ] as const) {
      const [width, height, rising] = [w, h, d].map((ft) => inches(12 * ft)) as [number, number, number];
      const { corners, longer } = found({ bottom: width, left: height, rising }, width, height);
      expect(longer).toBeCloseTo(0, 6);
      expect(corners[2].x).toBeCloseTo(width, 6);
      expect(corners[3].y).toBeCloseTo(height, 6);
    }
  });

  it('a deck of 8 ft with 288 11/16 and 286 1/2 across and 303 1/2 both ways is not possible (decksgo.com, problems making the deck framing square)', () => {
    // A trapezoid with equal legs has diagonals of the root of l² + ab (Ptolemy): 303.19 in, not 303 1/2.
    const read = { bottom: inches(288 + 11 / 16), top: inches(286.5), left: inches(96), right: inches(96) };
    const diagonals = { rising: inches(303.5), falling: inches(303.5) };
    const { off } = found({ ...read, ...diagonals }, inches(288), inches(96));
    expect(off).toBeGreaterThan(TRUSTED);
    expect(misreadOf({ ...read, ...diagonals }, inches(288), inches(96))).not.toBeNull();
    const alone = found(read, inches(288), inches(96));
    const ptolemy = Math.sqrt(96 ** 2 + (288 + 11 / 16) * 286.5);
    expect(spanOf(alone.corners, 'rising') / 25.4).toBeCloseTo(ptolemy, 6);
    expect(spanOf(alone.corners, 'falling') / 25.4).toBeCloseTo(ptolemy, 6);
    // As that page answers: 24 by 8 ft and square has 303 9/16 both ways.
    expect(Math.round(16 * (spanOf(found({}, inches(288), inches(96)).corners, 'rising') / 25.4)) / 16).toBe(
      303 + 9 / 16,
    );
  });

  it('sides of a parallelogram follow the parallelogram law: squares of the diagonals are those of the four sides', () => {
    const [w, h] = [inches(56), inches(77)];
    const rising = inches(95.5);
    const falling = Math.sqrt(2 * (w ** 2 + h ** 2) - rising ** 2);
    const { longer } = found({ bottom: w, top: w, left: h, right: h, rising }, w, h);
    expect(longer).toBeCloseTo(rising - falling, 6);
  });

  it('what is left out is true', () => {
    expect(found({}, 1000, 2000).corners[2].x).toBeCloseTo(1000, 9);
    fc.assert(
      fc.property(fc.subarray([...READINGS]), bed(12), (read, { w, h }) => {
        const corners: Quad = [
          { x: 0, y: 0 },
          { x: w, y: 0 },
          { x: w, y: h },
          { x: 0, y: h },
        ];
        const all = readingsOf(corners);
        const some = Object.fromEntries(read.map((one) => [one, all[one]]));
        const { longer, bow, off, corners: back } = found(some, w, h);
        expect(Math.max(Math.abs(longer), Math.abs(bow), off, worst(back, corners))).toBeLessThan(1e-6);
      }),
      { numRuns: runs(200) },
    );
  });

  it('are those that exact readings were taken of, from all six or from any five', () => {
    fc.assert(
      fc.property(bed(20), fc.constantFrom(null, ...READINGS), ({ w, h, corners }, left) => {
        const all = readingsOf(corners);
        const { corners: back, off, bow } = found(left ? { ...all, [left]: undefined } : all, w, h);
        expect(worst(back, corners)).toBeLessThan(1e-4);
        expect(off).toBeLessThan(1e-5);
        expect(Math.abs(bow)).toBeLessThan(1e-5);
      }),
      { numRuns: runs(300) },
    );
  });

  it('are off by no more than noise allows, and by less in all than the noise', () => {
    const noisy = fc.record({ one: bed(12), noise: fc.array(mm(TRUSTED), { minLength: 7, maxLength: 7 }) });
    fc.assert(
      fc.property(noisy, ({ one: { w, h, corners }, noise }) => {
        const read = readingsOf(corners, (one) => noise[READINGS.indexOf(one)] ?? Number.NaN);
        const back = found({ ...read, middle: undefined }, w, h);
        const spans = READINGS.filter((one) => one !== 'middle');
        const lengths = spans.map((one) => spanOf(corners, one));
        const sum = (all: readonly number[]) => all.reduce((a, b) => a + b, 0);
        // The truth closes too, so what is nearest to the readings is no farther from them than it.
        const changed = spans.map((one) => spanOf(back.corners, one) - (read[one] ?? Number.NaN));
        const off = spans.map((one) => noise[READINGS.indexOf(one)] ?? Number.NaN);
        expect(Math.hypot(...changed)).toBeLessThan(1.01 * Math.hypot(...off) + 1e-6);
        // The least that one has to be off by is no more than the worst that is.
        expect(back.off).toBeLessThan(1.01 * TRUSTED);
        // A share k of each length closes it: |k| is at most the sum of lengths times noise over that of their squares.
        const k = (TRUSTED * sum(lengths)) / sum(lengths.map((l) => l * l));
        const most = Math.max(...lengths.map((l) => TRUSTED + k * l));
        // x = (b² + d² - r²) / 2b, y² = d² - x², by first differences of each.
        const [b, r, d] = (['bottom', 'right', 'rising'] as const).map((one) => spanOf(corners, one)) as [
          number,
          number,
          number,
        ];
        const [x, y] = [corners[2].x, corners[2].y];
        const dx = most * (Math.abs(1 - x / b) + d / b + r / b);
        const dy = (d * most + x * dx) / y;
        expect(Math.hypot(back.corners[2].x - x, back.corners[2].y - y)).toBeLessThan(
          1.05 * Math.hypot(dx, dy),
        );
      }),
      { numRuns: runs(300) },
    );
  });

  it('one gross error is found by its name, whichever it is, where it is thrice what the bed is out of true', () => {
    const gross = fc.double({ min: 20, max: 60, noNaN: true });
    const job = fc.record({
      one: bed(1.5),
      reading: fc.constantFrom(...READINGS),
      gross,
      sign: fc.constantFrom(1, -1),
    });
    fc.assert(
      fc.property(job, ({ one: { w, h, corners }, reading, gross, sign }) => {
        const read = readingsOf(corners, (one) => (one === reading ? sign * gross : 0));
        const misread = misreadOf(read, w, h);
        expect(misread?.reading).toBe(reading);
        expect(misread?.would).toBeCloseTo(spanOf(corners, reading), 2);
      }),
      { numRuns: runs(500) },
    );
  });

  it('readings that make no triangle have no corners, and name the one to read again', () => {
    const read = { bottom: 1000, left: 2000, rising: 3100 };
    expect(cornersOf(read, 1000, 2000)).toBeNull();
    expect(misreadOf(read, 1000, 2000)?.reading).toBe('rising');
  });

  it('a bow is what the middle is wider than straight sides: half an inch on 56', () => {
    const { bow } = found({ middle: inches(56.5) }, inches(56), inches(77));
    expect(bow).toBeCloseTo(inches(0.5), 6);
    const between = found(
      { bottom: inches(56), top: inches(57), middle: inches(56.75) },
      inches(56),
      inches(77),
    );
    expect(between.bow).toBeCloseTo(inches(0.25), 2);
  });
});
