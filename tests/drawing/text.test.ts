import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import fc from 'fast-check';
import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { spelled } from '../../src/drawing/spelled.ts';
import { fittedSize, shortened, textWidth, wrapped } from '../../src/drawing/text.ts';
import { BOLD, CHARACTERS, REGULAR } from '../../src/drawing/typeface.ts';

const words = fc.stringMatching(/^[A-Za-z0-9 ,.'/äöü½-]{0,60}$/);
const style = { size: 3 };

describe('widths of the typeface of the sheets', () => {
  it.each([
    ['regular', 400, REGULAR],
    ['bold', 700, BOLD],
  ] as const)(
    '%s are those that a second library reads from the font file, figures all of one width',
    (_, weight, table) => {
      const file = `@fontsource/barlow/files/barlow-latin-${weight}-normal.woff`;
      const font = create(readFileSync(createRequire(import.meta.url).resolve(file))) as Font;
      const theirs = (char: string) =>
        /\d/.test(char)
          ? font.layout(char, ['tnum']).glyphs[0]
          : font.glyphForCodePoint(char.codePointAt(0) ?? 0);
      expect([...CHARACTERS].filter((char) => (theirs(char)?.id ?? 0) === 0)).toEqual([]);
      expect(font.unitsPerEm).toBe(1000);
      expect(table).toEqual([...CHARACTERS].map((char) => theirs(char)?.advanceWidth));
    },
  );

  it('add up, character by character, with no kerning', () => {
    const figures = [...'0123456789'].map((figure) => textWidth(figure, { size: 1 }));
    expect(new Set(figures).size).toBe(1);
    expect(textWidth('A ½…', { size: 1000 })).toBe(607 + 200 + 796 + 795);
  });
});

describe('what the typeface lacks', () => {
  it('is spelled out or marked', () => {
    expect(spelled('⅜')).toBe('3/8');
    expect(spelled('ő Ł ≤')).toBe('o L <=');
    expect(spelled('漢')).toBe('?');
    expect(spelled('a\tb')).toBe('a b');
  });

  it('never fails and leaves only characters that it has', () => {
    const held = new Set(CHARACTERS);
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect([...spelled(text)].filter((char) => !held.has(char))).toEqual([]);
      }),
    );
  });
});

describe('fitting text', () => {
  it('wraps into lines no wider than the room, losing no letter', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 8, max: 80, noNaN: true }), (text, room) => {
        const lines = wrapped(text, style, room);
        for (const line of lines) expect(textWidth(line, style)).toBeLessThanOrEqual(room + 1e-9);
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''));
      }),
    );
  });

  it('shortens to the room and keeps what fits', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 0, max: 80, noNaN: true }), (text, room) => {
        const short = shortened(text, style, room);
        expect(textWidth(short, style)).toBeLessThanOrEqual(room + 1e-9);
        if (textWidth(text, style) <= room) expect(short).toBe(text);
      }),
    );
  });

  it('makes type smaller, never larger', () => {
    fc.assert(
      fc.property(words, fc.double({ min: 0, max: 80, noNaN: true }), (text, room) => {
        const size = fittedSize(text, style, room);
        expect(size).toBeLessThanOrEqual(style.size);
        expect(textWidth(text, { size })).toBeLessThanOrEqual(room + 1e-9);
      }),
    );
  });
});
