import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  formatAngle,
  formatArea,
  formatCovered,
  formatForce,
  formatLength,
  formatMass,
  formatMoment,
  formatMoney,
  formatRate,
  formatReading,
  formatVolume,
  lengthParts,
} from '../../src/measure/format.ts';
import { parseMeasure } from '../../src/measure/parse.ts';
import type { FractionStyle, LengthUnit } from '../../src/measure/style.ts';

const style = (unit: LengthUnit, fraction: FractionStyle = '16') => ({ unit, fraction });
const us = style('in');
const metric = style('mm');

describe('formatLength', () => {
  it.each([
    [38.5, 'in', '16', '38 1/2"'],
    [38.5, 'in', 'decimal', '38.5"'],
    [0.75, 'in', '16', '3/4"'],
    [0, 'in', '16', '0"'],
    [-3.25, 'in', '16', '-3 1/4"'],
    [74.375, 'ft-in', '16', '6\' 2 3/8"'],
    [72, 'ft-in', '16', '6\' 0"'],
    [72.5, 'ft-in', '16', '6\' 1/2"'],
    [11.5, 'ft-in', '16', '11 1/2"'],
    [-74.375, 'ft-in', '8', '-6\' 2 3/8"'],
    [38 + 3 / 64, 'in', '64', '38 3/64"'],
    [12.3456, 'in', 'decimal', '12.346"'],
  ] as const)('%d in as %s %s', (value, unit, fraction, expected) => {
    expect(formatLength(value * 25.4, style(unit, fraction))).toBe(expected);
  });

  it('carries over whole inches and feet', () => {
    expect(formatReading(11.99 * 25.4, us)).toBe('12"');
    expect(formatReading(71.99 * 25.4, style('ft-in'))).toBe('6\' 0"');
    expect(formatReading(-0.001, us)).toBe('0"');
  });

  it.each([
    [978, 'mm', '978 mm'],
    [977.94, 'mm', '977.9 mm'],
    [978, 'cm', '97.8 cm'],
    [977.9, 'cm', '97.79 cm'],
    [1000, 'cm', '100 cm'],
    [-0.04, 'mm', '0 mm'],
    [-12.25, 'mm', '-12.3 mm'],
  ] as const)('%d mm as %s', (mm, unit, expected) => {
    expect(formatLength(mm, style(unit))).toBe(expected);
  });

  it('says heavy or light beyond 1/128 in, not at it', () => {
    const at = (inches: number, fraction: FractionStyle = '16') =>
      formatLength(inches * 25.4, style('in', fraction));
    expect(at(38.5 + 1 / 100)).toBe('38 1/2" heavy');
    expect(at(38.5 - 1 / 100)).toBe('38 1/2" light');
    expect(at(38.5 + 1 / 128)).toBe('38 1/2"');
    expect(at(38.5 + 1 / 200)).toBe('38 1/2"');
    expect(at(38.5 + 1 / 64, '32')).toBe('38 17/32" light');
    expect(at(38.5 + 1 / 100, '64')).toBe('38 33/64"');
    // What is mirrored about the datum reads the same, but for the sign.
    expect(at(-38.51)).toBe('-38 1/2" heavy');
    expect(at(-0.01)).toBe('-0" heavy');
    expect(formatReading(38.51 * 25.4, us)).toBe('38 1/2"');
  });
});

describe('lengthParts', () => {
  it('takes a reading apart for the type', () => {
    expect(lengthParts(74.375 * 25.4, style('ft-in'))).toEqual({
      sign: '',
      feet: 6,
      whole: 2,
      decimals: '',
      numerator: 3,
      denominator: 8,
      unit: 'ft-in',
      mark: null,
    });
    expect(lengthParts(-97.85, style('cm'))).toMatchObject({
      sign: '-',
      feet: null,
      whole: 9,
      decimals: '79',
    });
    expect(lengthParts(25.4 * 1.05, style('in', 'decimal'))).toMatchObject({
      whole: 1,
      decimals: '05',
      numerator: 0,
    });
  });
});

describe('other amounts', () => {
  it('areas: 1 sq ft = 929.0304 cm2, exact (16 CFR 500.19)', () => {
    expect(formatArea(0.09290304, us)).toBe('1 sq ft');
    expect(formatArea(2.2761, us)).toBe('24.5 sq ft');
    expect(formatArea(2.2761, metric)).toBe('2.28 m²');
    // 1 sq in = 6.4516 cm2, exact (the same).
    expect(formatArea(6.4516e-4, us)).toBe('1 sq in');
    expect(formatArea(0.00579, us)).toBe('8.97 sq in');
    expect(formatArea(0.00579, metric)).toBe('57.9 cm²');
    expect(formatArea(0, us)).toBe('0 sq ft');
  });

  it('areas of one list are all in one unit, and none of them reads as nothing (the same)', () => {
    expect([2.2761, 0.0561, 0.00579, 1e-6, 0].map((area) => formatCovered(area, metric))).toEqual([
      '2.28 m²',
      '0.056 m²',
      '0.006 m²',
      '0.001 m²',
      '0 m²',
    ]);
    expect([0.09290304, 6.4516e-4 * 12].map((area) => formatCovered(area, us))).toEqual([
      '1 sq ft',
      '0.083 sq ft',
    ]);
  });

  it('masses: 1 lb = 0.45359237 kg (NIST Handbook 44, App. C)', () => {
    expect(formatMass(0.45359237, us)).toBe('1 lb');
    // A 4 x 8 ft x 1/2 in MDF sheet at 700 kg/m3: 26.43 kg, 58.27 lb (check values, section 7).
    expect(formatMass(26.43, us)).toBe('58.3 lb');
    expect(formatMass(26.43, metric)).toBe('26.4 kg');
  });

  it('volumes: gallon 3.785411784 L, quart, fluid ounce 29.5735295625 mL', () => {
    expect(formatVolume(3.785411784, us)).toBe('1 gal');
    expect(formatVolume(0.946352946, us)).toBe('1 qt');
    expect(formatVolume(0.0295735295625, us)).toBe('1 fl oz');
    expect(formatVolume(0.473, metric)).toBe('473 mL');
    expect(formatVolume(2.5, metric)).toBe('2.5 L');
    expect(formatVolume(0.99996, metric)).toBe('1 L');
  });

  it('amounts to three figures, and none beyond the point from a hundred on', () => {
    expect(formatMass(123.4, metric)).toBe('123 kg');
    expect(formatMass(100.4, metric)).toBe('100 kg');
    expect(formatMass(12.34, metric)).toBe('12.3 kg');
    expect(formatMass(1.234, metric)).toBe('1.23 kg');
  });

  it('a foot is a foot', () => {
    expect(formatLength(304.8, { unit: 'ft-in', fraction: '16' })).toBe(`1' 0"`);
    expect(formatLength(303.2125, { unit: 'ft-in', fraction: '16' })).toBe('11 15/16"');
  });

  it('angles to a tenth', () => {
    expect(formatAngle(22.5)).toBe('22.5°');
    expect(formatAngle(45)).toBe('45°');
    expect(formatAngle(31.62)).toBe('31.6°');
    expect(formatAngle(-0.01)).toBe('0°');
  });

  it('forces and moments', () => {
    // 1 lbf = 0.45359237 kg x 9.80665 m/s2 = 4.4482216 N.
    expect(formatForce(4.4482216, us)).toBe('1 lb');
    expect(formatForce(55.04, metric)).toBe('55 N');
    expect(formatMoment(1.3558179, us)).toBe('1 ft-lb');
    expect(formatMoment(42.34, metric)).toBe('42.3 N·m');
  });

  it('spreading rates: 400 sq ft/gal is 9.82 m2/L', () => {
    const rate = (400 * 0.09290304) / 3.785411784;
    expect(formatRate(rate, us)).toBe('400 sq ft/gal');
    expect(formatRate(rate, metric)).toBe('9.82 m²/L');
  });

  it('money', () => {
    expect(formatMoney(12.5, '$')).toBe('$12.50');
    expect(formatMoney(12.5, 'EUR')).toBe('12.50 EUR');
    expect(formatMoney(-3, '€')).toBe('-€3.00');
    expect(formatMoney(-0.001, '')).toBe('0.00');
    expect(formatMoney(5, '')).toBe('5.00');
    // Letters before a sign are part of it and stand before the number too.
    expect(formatMoney(5, 'US$')).toBe('US$5.00');
  });
});

describe('the notation of a language', () => {
  const notation = { decimalMark: ',', currency: 'behind', heavy: 'reichlich', light: 'knapp' } as const;
  const german = { ...metric, notation };

  it('sets the decimal mark in every figure', () => {
    expect(formatLength(977.94, german)).toBe('977,9 mm');
    expect(formatLength(978, { ...german, unit: 'cm' })).toBe('97,8 cm');
    expect(formatArea(2.28, german)).toBe('2,28 m²');
    expect(formatMass(5.6, german)).toBe('5,6 kg');
    expect(formatVolume(2.5, german)).toBe('2,5 L');
    expect(formatAngle(22.5, notation)).toBe('22,5°');
    expect(formatMoment(42.3, german)).toBe('42,3 N·m');
    expect(formatMoney(12.5, '€', notation)).toBe('12,50 €');
    expect(formatMoney(-12.5, '$', notation)).toBe('-12,50 $');
  });

  it('shows lengths that the parser reads back', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -5000, max: 5000, noNaN: true }),
        fc.constantFrom<LengthUnit>('mm', 'cm', 'in', 'ft-in'),
        fc.constantFrom<FractionStyle>('8', '16', 'decimal'),
        (mm, unit, fraction) => {
          const read = parseMeasure(formatLength(mm, { unit, fraction, notation }), unit);
          expect(read.ok).toBe(true);
          expect(read).toEqual(parseMeasure(formatLength(mm, { unit, fraction }), unit));
        },
      ),
    );
  });
});
