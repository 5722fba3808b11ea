import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { newPart } from '../../src/design/defaults.ts';
import type { Sign } from '../../src/design/schema.ts';
import { editsToLetter } from '../../src/editor/edit/letter.ts';
import {
  type Line,
  letterMeant,
  lettersMeant,
  lettersOf,
  lineAfterTyping,
  linesAfterTyping,
  withForm,
  withOwnSize,
  withoutSize,
  withSizeChanged,
} from '../../src/editor/edit/letterSizes.ts';

const line = (text: string, from: number, count: number): Line => ({
  text,
  sizes: [{ from, count, size: 0.5, stand: 'top' }],
});
const smallIn = (one: Line) => (one.sizes ?? []).map((size) => lettersOf(one, size)).join('|');

describe('sizes of letters while words are typed', () => {
  it.each([
    ['N° 4', 1, 1, 'Pier N° 4', '°'],
    ['N° 4', 1, 1, 'N° 12', '°'],
    ['N° 4', 1, 1, 'No 4', 'o'],
    ['N° 4', 1, 1, 'N 4', ''],
    ['N° 4', 1, 1, '', ''],
    ['FISH and CHIPS', 5, 3, 'FISH and EELS', 'and'],
    ['FISH and CHIPS', 5, 3, 'FISH aand CHIPS', 'aand'],
    ['FISH and CHIPS', 5, 3, 'FISH & CHIPS', '&'],
    ['FISH and CHIPS', 5, 3, 'FIS CHIPS', ''],
    ['1st', 1, 2, '21st', 'st'],
    ['1st', 1, 2, '1stly', 'st'],
    ['ALL', 0, 3, 'new', 'new'],
  ])('%s, small from %i for %i, becomes %s: small “%s”', (before, from, count, after, small) => {
    expect(smallIn(lineAfterTyping(line(before, from, count), after))).toBe(small);
  });

  it('stay on their letters through any one change, and inside of the text', () => {
    const letters = fc.uniqueArray(fc.constantFrom(...'abcdefghijklmnop'), { minLength: 1, maxLength: 12 });
    fc.assert(
      fc.property(letters, fc.nat(), fc.nat(), fc.nat(), fc.nat(), fc.nat(4), (all, a, b, c, d, more) => {
        const from = a % all.length;
        const count = 1 + (b % (all.length - from));
        const cut = c % (all.length + 1);
        const gone = d % (all.length - cut + 1);
        // Letters that are nowhere else, so that there is one way only to see what was changed.
        const typed = [...'WXYZ'].slice(0, more);
        const after = [...all.slice(0, cut), ...typed, ...all.slice(cut + gone)].join('');
        const next = lineAfterTyping(line(all.join(''), from, count), after);
        const small = all.slice(from, from + count);
        for (const size of next.sizes ?? []) {
          expect(size.from).toBeGreaterThanOrEqual(0);
          expect(size.from + size.count).toBeLessThanOrEqual([...after].length);
        }
        const kept = [...after].filter((letter) => small.includes(letter));
        expect([...smallIn(next)].filter((letter) => !typed.includes(letter))).toEqual(kept);
      }),
    );
  });

  it('stay with their lines when lines come and go', () => {
    const lines: Line[] = [{ text: 'PIER', capHeight: 40 }, line('N° 4', 1, 1)];
    expect(linesAfterTyping(lines, ['NEW', 'PIER', 'N° 4'])).toEqual([{ text: 'NEW' }, ...lines]);
    expect(linesAfterTyping(lines, ['N° 4'])).toEqual([lines[1]]);
    expect(linesAfterTyping(lines, ['PIERS', 'N° 4', 'x'])).toEqual([
      { text: 'PIERS', capHeight: 40 },
      lines[1],
      { text: 'x' },
    ]);
  });

  it('are no edit where nothing was typed, and one that keeps the rest of the sign otherwise', () => {
    const part = newPart('sign', { id: 's', name: 'Sign', box: { x: 0, y: 0, w: 400, h: 100 } }) as Sign;
    const sign = { ...part, lettering: { ...part.lettering, lines: [line('N° 4', 1, 1)] } };
    expect(editsToLetter(sign, 'N° 4')).toEqual([]);
    expect(editsToLetter(sign, 'N° 5')).toEqual([
      {
        kind: 'replace',
        list: 'parts',
        id: 's',
        item: { ...sign, lettering: { ...sign.lettering, lines: [line('N° 5', 1, 1)] } },
      },
    ]);
  });
});

describe('giving letters a size', () => {
  it('takes what is selected, else the word at the caret, else the last word', () => {
    const meant = (from: number, to: number) => lettersMeant('FISH and CHIPS', { from, to });
    expect(meant(5, 8)).toEqual({ from: 5, count: 3 });
    expect(meant(6, 6)).toEqual({ from: 5, count: 3 });
    expect(lettersMeant('FISH and CHIPS', null)).toEqual({ from: 9, count: 5 });
    expect(lettersMeant('𝌆 ab', { from: 3, to: 5 })).toEqual({ from: 2, count: 2 });
    expect(lettersMeant('  ', { from: 0, to: 2 })).toBeNull();
    expect(lettersMeant('ab', { from: 7, to: 9 })).toBeNull();
  });

  it('pushes other sizes aside, changes one and takes it away again', () => {
    const twice = withOwnSize(line('abcdef', 0, 6), 2, 2);
    expect(smallIn(twice)).toBe('ab|cd|ef');
    expect(withSizeChanged(twice, 1, { size: 2, stand: 'middle' }).sizes?.[1]).toEqual({
      from: 2,
      count: 2,
      size: 2,
      stand: 'middle',
    });
    expect(smallIn(withoutSize(twice, 1))).toBe('ab|ef');
    expect(withoutSize(line('ab', 0, 1), 0)).toEqual({ text: 'ab' });
  });
});

describe('forms of letters', () => {
  const formed = (text: string, at: number): Line => ({ text, forms: [{ at, tag: 'salt', value: 1 }] });
  const where = (one: Line) =>
    (one.forms ?? []).map(({ at }) => `${lettersOf(one, { from: at, count: 1 })}${at}`);
  it.each([
    ['banana', 3, 'a banana', ['a5']],
    ['banana', 3, 'bananas', ['a3']],
    ['banana', 3, 'bana', ['a3']],
    // Another letter in its place, or none.
    ['banana', 0, 'canana', []],
    ['banana', 5, 'banan', []],
  ])('%s, at %i, becomes %s: on %s', (before, at, after, expected) => {
    expect(where(lineAfterTyping(formed(before, at), after))).toEqual(expected);
  });

  it('are given to one letter, changed, and taken back', () => {
    const one = withForm({ text: 'banana' }, 3, { tag: 'salt', value: 2 });
    const two = withForm(one, 1, { tag: 'ss01', value: 1 });
    expect(where(two)).toEqual(['a1', 'a3']);
    expect(withForm(two, 3, { tag: 'salt', value: 1 }).forms?.[1]).toEqual({ at: 3, tag: 'salt', value: 1 });
    expect(withForm(withForm(two, 1, null), 3, null)).toEqual({ text: 'banana' });
  });

  it('are meant for the first letter that is selected, else for the one before the caret', () => {
    expect(letterMeant('a\u{1d400}b', { from: 1, to: 3 })).toEqual({ at: 1, letter: '\u{1d400}' });
    expect(letterMeant('abc', { from: 2, to: 2 })).toEqual({ at: 1, letter: 'b' });
    expect(letterMeant('abc', { from: 0, to: 0 })).toEqual({ at: 0, letter: 'a' });
    expect(letterMeant('a c', { from: 2, to: 2 })).toBeNull();
    expect(letterMeant('', { from: 0, to: 0 })).toBeNull();
  });
});
