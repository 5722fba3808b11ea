import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatNumber } from '../../src/measure/format.ts';
import { parseNumber } from '../../src/measure/parse.ts';
import { PLAIN_NOTATION } from '../../src/measure/style.ts';
import { runs } from '../runs.ts';

const AMBIGUOUS = 'thousands written close, such as 1200, or one decimal mark, such as 1.2';
const mark = fc.constantFrom('.' as const, ',' as const);

/** The value, or what is expected instead. */
function read(text: string, decimalMark: '.' | ',' = '.'): number | string {
  const parsed = parseNumber(text, decimalMark);
  return parsed.ok ? parsed.value : parsed.expected;
}

describe('a number in a field', () => {
  it('is read in both languages ways of writing it', () => {
    for (const decimalMark of ['.', ','] as const) {
      expect(read('1,200.50', decimalMark)).toBe(1200.5);
      expect(read('1.200,50', decimalMark)).toBe(1200.5);
      expect(read('1200', decimalMark)).toBe(1200);
      expect(read('12,5', decimalMark)).toBe(12.5);
      expect(read('12.5', decimalMark)).toBe(12.5);
      expect(read('1,200,000', decimalMark)).toBe(1_200_000);
      expect(read('1.200.000', decimalMark)).toBe(1_200_000);
      expect(read('1 200,5', decimalMark)).toBe(1200.5);
      expect(read('1\u202f200', decimalMark)).toBe(1200);
      expect(read('0,125', decimalMark)).toBe(0.125);
      expect(read('1200,500', decimalMark)).toBe(1200.5);
      expect(read('-.5', decimalMark)).toBe(-0.5);
    }
  });

  it('is refused, with how to write it, where one mark could be thousands or decimals', () => {
    expect(read('1,200')).toBe(AMBIGUOUS);
    expect(read('1.200', ',')).toBe(AMBIGUOUS);
    // The language's own decimal mark is one.
    expect(read('1.200')).toBe(1.2);
    expect(read('1,200', ',')).toBe(1.2);
    for (const text of ['1,20.5', '1,200,00', '1.200.5', '1,2,3', '12,3456.7', '1,200 300', '1.2,3.4']) {
      for (const decimalMark of ['.', ','] as const) expect(read(text, decimalMark), text).toBe(AMBIGUOUS);
    }
  });

  it('takes fractions and sums, and no unit or word', () => {
    expect(read('1 1/2')).toBe(1.5);
    expect(read('3*12')).toBe(36);
    expect(read('(2 + 1) / 4')).toBe(0.75);
    expect(read('5 mm')).toBe('a number without unit');
    expect(read('1e5')).toBe('a number without unit');
    expect(read('five')).toBe('a number without unit');
    expect(read('')).toBe('a number');
    expect(read('1/0')).toBe('a number other than 0 below a fraction');
  });

  it('is the number that was meant, however it is written out by the standard formats of many places', () => {
    // Intl writes the figures: en-US 1,200.5, de-DE 1.200,5, fr-FR with narrow spaces, pl-PL with spaces.
    const locale = fc.constantFrom('en-US', 'de-DE', 'fr-FR', 'pl-PL', 'en-IN-u-nu-latn', 'es-ES');
    const cents = fc.integer({ min: 0, max: 99_999_999 });
    fc.assert(
      fc.property(cents, fc.integer({ min: 0, max: 4 }), locale, mark, (n, digits, place, decimalMark) => {
        const value = n / 10 ** digits;
        const typed = new Intl.NumberFormat(place, { maximumFractionDigits: digits }).format(value);
        const got = read(typed, decimalMark);
        // A hundred thousand is written 1,00,000 in India: no known notation, so refused and never misread.
        if (typeof got === 'string') expect(got).toBe(AMBIGUOUS);
        else if (/^[1-9]\d{0,2}[.,]\d{3}$/.test(typed)) {
          expect([value, Number(typed.replace(',', '.'))]).toContain(got);
          expect(typed).toContain(decimalMark);
        } else expect(got).toBe(value);
      }),
      { numRuns: runs(1000) },
    );
  });

  it('reads back what was shown', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        fc.integer({ min: 0, max: 6 }),
        mark,
        (value, digits, decimalMark) => {
          const shown = formatNumber(value, digits, { ...PLAIN_NOTATION, decimalMark });
          expect(read(shown, decimalMark)).toBe(Number(value.toFixed(digits)) + 0);
        },
      ),
      { numRuns: runs(1000) },
    );
  });

  it('reads any text or says where it stopped, and never throws', () => {
    const pieces = fc.constantFrom(
      '1',
      '20',
      '300',
      ',',
      '.',
      ' ',
      '\u00a0',
      '/',
      '-',
      '(',
      ')',
      'e',
      '½',
      'mm',
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(pieces, { maxLength: 30 }).map((p) => p.join('')),
    );
    fc.assert(
      fc.property(text, mark, (typed, decimalMark) => {
        const parsed = parseNumber(typed, decimalMark);
        if (parsed.ok) expect(Number.isFinite(parsed.value)).toBe(true);
        else {
          expect(parsed.at).toBeGreaterThanOrEqual(0);
          expect(parsed.at).toBeLessThanOrEqual(typed.length);
        }
      }),
      { numRuns: runs(1000) },
    );
  });
});
