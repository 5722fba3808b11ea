import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatLength } from '../../src/measure/format.ts';
import { parseMeasure } from '../../src/measure/parse.ts';
import { stepOf } from '../../src/measure/round.ts';
import type { FractionStyle, LengthUnit } from '../../src/measure/style.ts';

const read = (text: string, unit: LengthUnit = 'in') => {
  const result = parseMeasure(text, unit);
  if (!result.ok) throw new Error(`${text}: ${result.found} at ${result.at}, expected ${result.expected}`);
  return result.value;
};
const inches = (text: string) => read(text) / 25.4;
const refuse = (text: string, unit: LengthUnit = 'in') => {
  const result = parseMeasure(text, unit);
  if (result.ok) throw new Error(`${text} was read as ${result.value}`);
  return { at: result.at, found: result.found, expected: result.expected };
};

describe('numbers as they are typed', () => {
  it.each([
    ['38 1/2', 38.5],
    ['38-1/2"', 38.5],
    ['38½', 38.5],
    ['38 ½', 38.5],
    ['38–½”', 38.5],
    ['38¹⁄₂', 38.5],
    ['38 1⁄2', 38.5],
    ['1/2', 0.5],
    ['⅜', 0.375],
    ['7/2', 3.5],
    ['3.25 in', 3.25],
    ['.75', 0.75],
    ['38.', 38],
    ['  12  ', 12],
    ['6\' 2 3/8"', 74.375],
    ["6'2 3/8", 74.375],
    ['6\'-2 3/8"', 74.375],
    ['6′ 2⅜″', 74.375],
    ['6’ 2 3/8’’', 74.375],
    ['6 ft 2 3/8 inches', 74.375],
    ['6ft2in', 74],
    ["6'", 72],
    ['1 foot', 12],
    ['-3 1/4', -3.25],
    ['38 1/2 heavy', 38.5 + 1 / 64],
    ['38 1/2" light', 38.5 - 1 / 64],
    ["6' 2 heavy", 74 + 1 / 64],
    ['38 \u00a0 1/2', 38.5],
    ['11/16', 0.6875],
    ['¹¹⁄₁₆', 0.6875],
    ['¹⁰⁄₁₆', 0.625],
    ['+3', 3],
    ['-+3', -3],
    ['+-3', -3],
    ['⅓', 1 / 3],
    ['⅔', 2 / 3],
    ['¼', 1 / 4],
    ['¾', 3 / 4],
    ['⅕', 1 / 5],
    ['⅖', 2 / 5],
    ['⅗', 3 / 5],
    ['⅘', 4 / 5],
    ['⅙', 1 / 6],
    ['⅚', 5 / 6],
    ['⅛', 1 / 8],
    ['⅝', 5 / 8],
    ['⅞', 7 / 8],
  ])('%s', (text, expected) => {
    expect(inches(text)).toBeCloseTo(expected, 12);
  });

  it.each([
    ['97.8cm', 978],
    ['978 mm', 978],
    ['978', 978],
    ['1.2 m', 1200],
    ['97,8 cm', 978],
    ['0,25 m', 250],
    ['1 in', 25.4],
    ['1 ft', 304.8],
  ])('%s in a metric design', (text, expected) => {
    expect(read(text, 'mm')).toBeCloseTo(expected, 9);
  });

  it.each([
    ['10 heavy', 10 + 25.4 / 64],
    ['3" + 2 + 1', 79.2],
    ['(3" + 2) * 2', 156.4],
    ['(2 * 3") + 1', 153.4],
    ['(3" * 2) + 1', 153.4],
    ['(3" / 2) + 1', 39.1],
    ['(10 heavy) + 1', 11 + 25.4 / 64],
    ["(6') + 1", 1829.8],
  ])('%s stays a length once it is one', (text, expected) => {
    expect(read(text, 'mm')).toBeCloseTo(expected, 9);
  });

  it('takes a bare number in the unit of the design', () => {
    // 1 in = 2.54 cm and 1 ft = 30.48 cm, exact (16 CFR 500.19).
    expect(read('10', 'in')).toBe(254);
    expect(read('10', 'ft-in')).toBe(254);
    expect(read('10', 'mm')).toBe(10);
    expect(read('10', 'cm')).toBe(100);
    expect(read("1'", 'cm')).toBeCloseTo(304.8, 12);
  });
});

describe('arithmetic', () => {
  it.each([
    ['75 + 2*1 1/2', 78],
    ['(38 1/2 - 3*3 1/4) / 4', 7.1875],
    ['38 - 1/2', 37.5],
    ['38 -1/2', 37.5],
    ['3/4-1/2', 0.25],
    ['38 1/2-1/4', 38.25],
    ['2*38-1/2', 77],
    ['10/2.5', 4],
    ['1/2/2', 0.25],
    ['38 1/2 / 2', 19.25],
    ['38 1/2/2', 19.25],
    ['--3', 3],
    ['2 × 3 · 4 ÷ 6', 4],
    ['6\' - 2"', 70],
    ['(1 + 2)"', 3],
    ['6" * 2 + 1', 13],
    ['72 * (1\' / 6")', 144],
    ['1 ft + 254 mm', 22],
    ['10 - 4 - 3', 3],
    ['24 / 4 / 3', 2],
    ['5 \u2212 2', 3],
    ['5 \u2013 2', 3],
    ['5 \u2010 2', 3],
    ['5 \u2011 2', 3],
    ['6\' + 2"', 74],
    ["6'*2", 144],
    ["6'/2", 36],
    ["6' -2", 70],
    ["6'- 2", 70],
    ["6'-(2)", 70],
    ["6'-2", 74],
    ['6"/3" * 2', 4],
    ['2 * (6"/3")', 4],
    ['6"/3" / 2', 1],
  ])('%s', (text, expected) => {
    expect(inches(text)).toBeCloseTo(expected, 12);
  });

  it('takes the even division of a face from its source', () => {
    // W 72, w 1.5, n 13: gaps of 3.75 in (check values, section 12); W 75, w 2, n 15: 2.8125.
    expect(inches('(72 - 13*1 1/2) / 14')).toBeCloseTo(3.75, 12);
    expect(inches('(75 - 15*2) / 16')).toBeCloseTo(2.8125, 12);
  });

  it('equals plain evaluation', () => {
    type Tree = { text: string; value: number };
    const number = fc.integer({ min: 1, max: 60 }).map((n): Tree => ({ text: `${n}`, value: n }));
    const { tree } = fc.letrec<{ tree: Tree }>((tie) => ({
      tree: fc.oneof(
        { depthSize: 'small' },
        number,
        fc
          .tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/'), tie('tree'))
          .filter(([, op, b]) => op !== '/' || Math.abs(b.value) > 1e-3)
          .map(([a, op, b]): Tree => {
            const value =
              {
                '+': a.value + b.value,
                '-': a.value - b.value,
                '*': a.value * b.value,
                '/': a.value / b.value,
              }[op] ?? 0;
            return { text: `(${a.text}) ${op} (${b.text})`, value };
          }),
      ),
    }));
    fc.assert(
      fc.property(tree, ({ text, value }) => {
        fc.pre(text.length <= 200);
        expect(read(text, 'mm')).toBeCloseTo(value, 6);
      }),
    );
  });
});

describe('what cannot be read is named with its place', () => {
  it.each([
    ['', 0, 'the end', 'a number'],
    ['38 1/2 banana', 7, 'banana', 'a number, or a unit: in, ft, mm, cm or m'],
    ['38 +', 4, 'the end', 'a number'],
    ['38 * / 2', 5, '/', 'a number'],
    ['(38', 3, 'the end', 'a closing parenthesis'],
    ['38)', 2, ')', 'a sign (+ - * /), a unit or the end'],
    ['38 20', 3, '20', 'a sign (+ - * /), a unit or the end'],
    ['38 1/0', 5, '0', 'a number other than 0 below a fraction'],
    ['38 5/4', 3, '5/4', 'a fraction less than 1 behind a whole number'],
    ['4 / (2 - 2)', 4, '(', 'a number other than 0 to divide by'],
    ['3" * 2"', 5, '2', 'a number without unit to multiply by'],
    ['3 / 2"', 4, '2', 'a number without unit to divide by'],
    ['3" / 2"', 0, 'a number without unit', 'a length'],
    ['5" + 3"/2"', 3, '+', 'two lengths to add or take away'],
    ['(3")"', 4, '"', 'one unit only'],
    ['1,219', 1, ',', 'a decimal point'],
    ['1,219.5', 1, ',', 'a decimal point'],
    ['1.5,2', 3, ',', 'a decimal point'],
    ['2 * 3" * 2"', 9, '2', 'a number without unit to multiply by'],
    ['(6"/3") + 1"', 8, '+', 'two lengths to add or take away'],
    ['1" + 6"/3"', 3, '+', 'two lengths to add or take away'],
    ['(6"/3") heavy', 8, 'heavy', 'a sign (+ - * /), a unit or the end'],
    ['2 * 6"/3"', 0, 'a number without unit', 'a length'],
    ['6"/3" * (4"/2")', 0, 'a number without unit', 'a length'],
    ['6"/3" / (4"/2")', 0, 'a number without unit', 'a length'],
    ['6" 2', 3, '2', 'a sign (+ - * /), a unit or the end'],
    ["6' 2 cm", 3, '2', 'a sign (+ - * /), a unit or the end'],
    ["6'(2)", 2, '(', 'a sign (+ - * /), a unit or the end'],
    ['3.25 1/2', 5, '1/2', 'a sign (+ - * /), a unit or the end'],
    ['38 5/5', 3, '5/5', 'a fraction less than 1 behind a whole number'],
    ['1,', 1, ',', 'a decimal point'],
    ['1,5,2', 1, ',', 'a decimal point'],
    ['1,5.2', 1, ',', 'a decimal point'],
    ['+ banana', 2, 'banana', 'a number, or a unit: in, ft, mm, cm or m'],
    ['(+', 2, 'the end', 'a number'],
    ['38 ♥', 3, '♥', 'a number, a unit or a sign'],
    ['38 😀', 3, '😀', 'a number, a unit or a sign'],
    ['1e3', 1, 'e', 'a number, or a unit: in, ft, mm, cm or m'],
    ['constructor', 0, 'constructor', 'a number, or a unit: in, ft, mm, cm or m'],
  ])('%s', (text, at, found, expected) => {
    expect(refuse(text)).toEqual({ at, found, expected });
  });

  it('refuses text too long to be a measure and numbers beyond it', () => {
    expect(refuse('('.repeat(100_000))).toEqual({
      at: 200,
      found: '…',
      expected: 'no more than 200 characters',
    });
    expect(inches(`${' '.repeat(198)}38`)).toBe(38);
    expect(refuse(`${' '.repeat(199)}38`).at).toBe(200);
    expect(read('100000000', 'mm')).toBe(1e8);
    expect(refuse('100000001', 'mm').found).toBe('a number beyond measure');
    expect(refuse('9'.repeat(199))).toEqual({
      at: 0,
      found: 'a number beyond measure',
      expected: 'a length',
    });
    expect(refuse(`9${'*99999999'.repeat(20)}`, 'mm').found).toBe('a number beyond measure');
  });
});

describe('for any text', () => {
  it('never throws, and always gives a number or a place within the text', () => {
    const pieces = fc.constantFrom(
      ...[
        '38',
        '1/2',
        '½',
        ' ',
        '-',
        '+',
        '*',
        '/',
        '(',
        ')',
        '"',
        "'",
        'in',
        'mm',
        'ft',
        '.',
        ',',
        '0',
        '⁄',
        'heavy',
        '¹',
        '₂',
        '\u00a0',
        'é',
        '\ud83d',
      ],
    );
    const text = fc.oneof(
      fc.string({ unit: 'binary' }),
      fc.array(pieces, { maxLength: 30 }).map((p) => p.join('')),
    );
    fc.assert(
      fc.property(text, fc.constantFrom<LengthUnit>('in', 'ft-in', 'mm', 'cm'), (typed, unit) => {
        const result = parseMeasure(typed, unit);
        if (result.ok) {
          expect(Number.isFinite(result.value)).toBe(true);
        } else {
          expect(result.at).toBeGreaterThanOrEqual(0);
          expect(result.at).toBeLessThanOrEqual(typed.length);
          expect(result.expected).not.toBe('');
        }
      }),
      { numRuns: 4000 },
    );
  });

  it('reads back what was shown, within half a step', () => {
    const style = fc.record({
      unit: fc.constantFrom<LengthUnit>('in', 'ft-in', 'mm', 'cm'),
      fraction: fc.constantFrom<FractionStyle>('8', '16', '32', '64', 'decimal'),
    });
    fc.assert(
      fc.property(fc.double({ min: -100_000, max: 100_000, noNaN: true }), style, (mm, s) => {
        const shown = formatLength(mm, s);
        expect(Math.abs(read(shown, s.unit) - mm), shown).toBeLessThanOrEqual(stepOf(s) / 2 + 1e-6);
      }),
      { numRuns: 2000 },
    );
  });
});
