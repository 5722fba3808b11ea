import { describe, expect, it } from 'vitest';
import { degrees, inches, radians } from '../../src/measure/units.ts';

describe('conversions', () => {
  it('an inch is 25.4 mm, half a turn is pi (16 CFR 500.19; geometry)', () => {
    expect(inches(2)).toBe(50.8);
    expect(radians(180)).toBe(Math.PI);
    expect(radians(45)).toBeCloseTo(Math.PI / 4, 15);
    expect(degrees(Math.PI)).toBe(180);
    expect(degrees(1)).toBeCloseTo(57.29577951308232, 12);
  });
});
