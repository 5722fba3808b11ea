import { create } from 'fontkit';
import { describe, expect, it } from 'vitest';
import type { Path } from '../../src/geometry/shape.ts';
import { capsOf } from '../../src/lettering/font/caps.ts';
import { letter } from '../../src/lettering/letter.ts';
import { bytesOf, fontOf, SHIPPED } from './fonts.ts';
import { lettering } from './lettering.ts';

/**
 * What a ruler laid on a letter reads, from its pixels: rows of a fine grid that the letter fills over more than
 * a tenth of its width are edge to edge of its flat strokes; the tips of round or pointed ends fill less. Outlines
 * come from a second font library.
 */
function ruled(id: string, character: string, rows: number): { low: number; high: number } {
  const font = create(Buffer.from(bytesOf(id)));
  if (!('glyphForCodePoint' in font)) throw new Error('one font expected');
  const glyph = font.glyphForCodePoint(character.codePointAt(0) ?? 0);
  const { minX, maxX, minY, maxY } = glyph.bbox;
  const edges = flat(glyph.path.commands);
  const step = (maxY - minY) / rows;
  const filled: number[] = [];
  for (let row = 0; row < rows; row += 1) {
    const y = minY + (row + 0.5) * step;
    const crossings = edges
      .filter(([, ay, , by]) => ay < y !== by < y)
      .map(([ax, ay, bx, by]) => ({ x: ax + ((y - ay) / (by - ay)) * (bx - ax), turn: by > ay ? 1 : -1 }))
      .sort((a, b) => a.x - b.x);
    let [sum, turns] = [0, 0];
    crossings.forEach(({ x, turn }, i) => {
      turns += turn;
      if (turns !== 0) sum += (crossings[i + 1]?.x ?? x) - x;
    });
    if (sum > 0.1 * (maxX - minX)) filled.push(y);
  }
  return { low: Math.min(...filled) - step / 2, high: Math.max(...filled) + step / 2 };
}

type Edge = readonly [number, number, number, number];

/** Curves as sixteen chords. */
function flat(commands: readonly { command: string; args: readonly number[] }[]): Edge[] {
  const edges: Edge[] = [];
  let at: readonly [number, number] = [0, 0];
  let start = at;
  const to = (x: number, y: number) => {
    edges.push([at[0], at[1], x, y]);
    at = [x, y];
  };
  for (const { command, args } of commands) {
    if (command === 'closePath') to(...start);
    else if (command === 'moveTo') {
      at = [args[0] ?? 0, args[1] ?? 0];
      start = at;
    } else {
      const points = [...at, ...args];
      for (let k = 1; k <= 16; k += 1) {
        // De Casteljau, for lines, quadratics and cubics alike.
        let run = points;
        while (run.length > 2)
          run = run.slice(2).map((v, i) => (run[i] ?? 0) + ((v - (run[i] ?? 0)) * k) / 16);
        edges.push([at[0], at[1], run[0] ?? 0, run[1] ?? 0]);
        at = [run[0] ?? 0, run[1] ?? 0];
      }
    }
  }
  return edges;
}

const drawn = (id: string, text: string, capHeight: number) =>
  letter({
    lettering: lettering(text, { font: id, capHeight }),
    font: fontOf(id),
    sign: { id: 's', w: 900, h: 300 },
  }).lettered;

describe('the cap height asked for', () => {
  const ROWS = 1000;

  it.each(SHIPPED.map(({ id }) => id))(
    'is what a ruler reads on flat capitals of %s (twin: pixels)',
    (id) => {
      const { capHeight, foot } = fontOf(id);
      // Each font has flourishes on some; three of these at least are plain.
      const off = [...'HIELTFZNXD'].map((character) => {
        const { low, high } = ruled(id, character, ROWS);
        return Math.max(Math.abs(low - foot), Math.abs(high - foot - capHeight)) / capHeight;
      });
      expect(off.filter((share) => share < 0.004).length).toBeGreaterThanOrEqual(3);
    },
  );

  it('is drawn: 31.70 mm of Rye, whose feet dip under the line of the font, were 32.11', () => {
    expect(drawn('rye', 'H', 31.7).box.h).toBeCloseTo(31.7, 6);
    expect(drawn('rye', 'HIP', 31.7).box.h).toBeCloseTo(31.7 * (1580 / 1570), 1);
    // The feet stand on the baseline that the sheet shows.
    const { glyphs, box } = drawn('rye', 'H', 31.7);
    expect(box.y).toBeCloseTo(glyphs[0]?.baseline ?? Number.NaN, 6);
    expect(drawn('limelight', 'I', 50).box.h).toBeCloseTo(50, 6);
  });
});

describe('fonts with other letters', () => {
  const block = (low: number, high: number): Path => [
    { op: 'M', x: 0, y: low },
    { op: 'L', x: 100, y: low },
    { op: 'L', x: 100, y: high },
    { op: 'Z' },
  ];
  const capsIn = (letters: Readonly<Record<string, Path>>) =>
    capsOf((character) => letters[character] ?? [], undefined, 1000);

  it('are measured on what they have, round letters aside', () => {
    expect(capsIn({ O: block(-12, 712), E: block(0, 700), T: block(0, 700) })).toEqual({
      foot: 0,
      height: 700,
    });
    expect(capsIn({ O: block(-12, 712), E: block(0, 700) })).toEqual({ foot: 0, height: 700 });
    expect(capsIn({ H: block(-40, 690), E: block(0, 700), T: block(0, 700), C: block(-9, 709) })).toEqual({
      foot: 0,
      height: 700,
    });
    expect(capsIn({ П: block(3, 650), О: block(-8, 661), Н: block(3, 650) })).toEqual({
      foot: 3,
      height: 647,
    });
    expect(capsIn({ '1': block(0, 640), '7': block(0, 640), '8': block(-9, 649) })).toEqual({
      foot: 0,
      height: 640,
    });
    expect(capsIn({})).toEqual({ foot: 0, height: 700 });
  });
});
