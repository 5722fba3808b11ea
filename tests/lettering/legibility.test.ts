import { describe, expect, it } from 'vitest';
import {
  gapProportion,
  leastHeight,
  lineSpaceProportion,
  narrowestGap,
  readingDistance,
} from '../../src/lettering/legibility.ts';
import { letter } from '../../src/lettering/letter.ts';
import { fontOf } from './fonts.ts';
import { lettering } from './lettering.ts';

const inch = (value: number) => value * 25.4;

describe('least height for a distance (ADA table 703.5.5)', () => {
  // check-values.md, section 6; the first case also at thebuildingcodeforum.com.
  it.each([
    [60, 21 * 12, 2.5],
    [60, 12 * 12, 1.375],
    [60, 6 * 12, 0.625],
    [60, 2 * 12, 0.625],
    [80, 20 * 12, 2.625],
    [130, 30 * 12, 4.125],
    [40, 72, 0.625],
    [70, 72, 0.625],
    [70.01, 180, 2],
    [120, 180, 2],
    [120.01, 252, 3],
  ])('baseline at %f in, read from %f in: %f in', (baseline, distance, height) => {
    expect(leastHeight(inch(baseline), inch(distance))).toBeCloseTo(inch(height), 6);
  });

  it('has no row below 40 in (703.5.6)', () => {
    expect(leastHeight(inch(39.9), inch(72))).toBeNull();
  });
});

describe('proportions', () => {
  it('limits of gap and line space (703.5.8, 703.5.9)', () => {
    expect([9, 10, 35, 36].map((gap) => gapProportion(gap, 100).within)).toEqual([false, true, true, false]);
    expect([1.34, 1.35, 1.7, 1.71].map((space) => lineSpaceProportion(space).within)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });

  it('measures the gap between the closest points of neighbors', () => {
    const glyphs = letter({
      lettering: lettering(['HIH', 'I'], { kerning: false, tracking: 0.1 }),
      font: fontOf('lato'),
      sign: { id: 's', w: 900, h: 400 },
    }).lettered.glyphs;
    // Section 13: I has 210 units of white on either side; H, alike, its own (font: 188 before the stem).
    const scale = 100 / 1433;
    const h = fontOf('lato').outline('H');
    const white = Math.min(...h.map((command) => (command.op === 'Z' ? Infinity : command.x)));
    const narrowest = narrowestGap(glyphs);
    // Letters stand on the grid of 1/10000 mm on which polygons are worked.
    expect(narrowest?.gap).toBeCloseTo((white + 210) * scale + 10, 3);
    expect(narrowest?.capHeight).toBeCloseTo(100, 9);
    expect(narrowestGap(glyphs.slice(0, 1))).toBeNull();
  });

  it('is zero where letters touch', () => {
    const glyphs = letter({
      lettering: lettering('OO', { tracking: -0.3 }),
      font: fontOf('lato'),
      sign: { id: 's', w: 900, h: 400 },
    }).lettered.glyphs;
    expect(narrowestGap(glyphs)?.gap).toBe(0);
  });
});

it('reading distance of road-sign words: 30 to 40 ft an inch (MUTCD)', () => {
  expect(readingDistance(inch(4)).near).toBeCloseTo(inch(120 * 12), 6);
  expect(readingDistance(inch(4)).far).toBeCloseTo(inch(160 * 12), 6);
});
