import { PDFDocument } from '@cantoo/pdf-lib';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { HELVETICA, HELVETICA_BOLD } from '../../src/drawing/helvetica.ts';
import { fittedSize, shortened, textWidth, wrapped } from '../../src/drawing/text.ts';
import { winAnsi } from '../../src/drawing/winansi.ts';

const words = fc.stringMatching(/^[A-Za-z0-9 ,.'/äöü½-]{0,60}$/);
const style = { size: 3 };

describe('widths of the standard typefaces', () => {
  it('are those of the metrics files that the PDF library carries, with its codes, for every character of WinAnsi', async () => {
    const document = await PDFDocument.create();
    for (const [name, table] of [
      ['Helvetica', HELVETICA],
      ['Helvetica-Bold', HELVETICA_BOLD],
    ] as const) {
      const font = await document.embedFont(name);
      for (const point of font.getCharacterSet()) {
        const char = String.fromCodePoint(point);
        const code = Number.parseInt(font.encodeText(char).asString(), 16);
        expect(winAnsi(char), char).toEqual([code]);
        expect(table[code - 32], `${name} ${char}`).toBe(Math.round(font.widthOfTextAtSize(char, 1000)));
      }
    }
  });

  it('add up: capital A is 667, i 222, space 278 thousandths (Helvetica metrics, from memory)', () => {
    expect(textWidth('A i', { size: 1000 })).toBe(667 + 278 + 222);
  });
});

describe('WinAnsi codes', () => {
  it('spell out or mark what they lack', () => {
    const read = (text: string) =>
      winAnsi(text)
        .map((c) => String.fromCharCode(c))
        .join('');
    expect(read('⅜')).toBe('3/8');
    expect(read('ő Ł ≤')).toBe('o L <=');
    expect(read('漢')).toBe('?');
    expect(read('a\tb')).toBe('a b');
  });

  it('never fail and stay in range', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), (text) => {
        expect(winAnsi(text).every((c) => c >= 32 && c < 256)).toBe(true);
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
