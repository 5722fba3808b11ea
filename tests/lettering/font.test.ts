import { deflateRawSync } from 'node:zlib';
import fc from 'fast-check';
import opentype from 'opentype.js';
import { describe, expect, it } from 'vitest';
import { inflate as byEngine } from '../../src/command/inflate.ts';
import { Bytes } from '../../src/lettering/font/bytes.ts';
import { guardCff } from '../../src/lettering/font/guard-cff.ts';
import { inflate } from '../../src/lettering/font/inflate.ts';
import { type FontReason, readFont } from '../../src/lettering/font.ts';
import { bytesOf, fontOf } from './fonts.ts';

const reasonOf = (bytes: Uint8Array): FontReason | null => {
  const read = readFont(bytes, 'x');
  return read.ok ? null : read.reason;
};

/** A sound .otf with CFF outlines, written by the outline library from another font's letters. */
function otf(letters: string): Uint8Array {
  const source = opentype.parse(bytesOf('lato').slice().buffer);
  const blank = new opentype.Glyph({
    name: '.notdef',
    unicode: 0,
    advanceWidth: 500,
    path: new opentype.Path(),
  });
  blank.unicode = undefined;
  const glyphs = [...letters].map((letter) => {
    const glyph = source.charToGlyph(letter);
    return new opentype.Glyph({
      name: letter,
      unicode: letter.codePointAt(0) ?? 0,
      advanceWidth: glyph.advanceWidth ?? 0,
      path: glyph.path as opentype.Path,
    });
  });
  const font = new opentype.Font({
    familyName: 'Test',
    styleName: 'Regular',
    unitsPerEm: 2000,
    ascender: 1600,
    descender: -400,
    glyphs: [blank, ...glyphs],
  });
  return new Uint8Array(font.toArrayBuffer());
}

/** A plain font file from tables, for making hostile ones. */
function fileOf(tables: Record<string, Uint8Array>): Uint8Array {
  const entries = Object.entries(tables);
  const parts: number[] = [0, 1, 0, 0, entries.length >> 8, entries.length & 255, 0, 0, 0, 0, 0, 0];
  let at = 12 + 16 * entries.length;
  const four = (n: number) => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];
  for (const [tag, data] of entries) {
    parts.push(...[...tag].map((c) => c.charCodeAt(0)), 0, 0, 0, 0, ...four(at), ...four(data.length));
    at += data.length;
  }
  const file = new Uint8Array(at);
  file.set(parts);
  let end = parts.length;
  for (const [, data] of entries) {
    file.set(data, end);
    end += data.length;
  }
  return file;
}

const words = (...values: number[]) =>
  Uint8Array.from(values.flatMap((value) => [(value >> 8) & 255, value & 255]));

/** Tables of a small TrueType font: `A` is glyph 1; `glyf` and `loca` as given. */
function small(glyf: Uint8Array, loca: readonly number[]): Uint8Array {
  const head = new Uint8Array(54);
  head.set([0, 1, 0, 0], 0);
  head.set([0x5f, 0x0f, 0x3c, 0xf5], 12);
  head.set(words(1000), 18);
  head.set(words(0), 50);
  const hhea = new Uint8Array(36);
  hhea.set(words(1), 34);
  return fileOf({
    head,
    hhea,
    maxp: words(1, 0, loca.length - 1),
    hmtx: words(600, 0),
    cmap: words(
      0,
      1,
      3,
      1,
      0,
      12,
      4,
      32,
      0,
      4,
      0,
      0,
      0,
      0x41,
      0xffff,
      0,
      0x41,
      0xffff,
      (1 - 0x41) & 0xffff,
      1,
      0,
      0,
    ),
    glyf,
    loca: words(...loca.map((offset) => offset / 2)),
  });
}

describe.each([
  ['in script', inflate],
  ['by the engine', byEngine],
])('inflate %s', (_, inflate) => {
  it('undoes deflate at every level (twin: zlib)', () => {
    fc.assert(
      fc.property(
        fc.array(fc.oneof(fc.uint8Array({ maxLength: 400 }), fc.constant(new Uint8Array(300))), {
          maxLength: 8,
        }),
        fc.constantFrom(0, 1, 6, 9),
        (chunks, level) => {
          const data = Uint8Array.from(chunks.flatMap((chunk) => [...chunk]));
          expect(inflate(deflateRawSync(data, { level }), data.length)).toEqual(data);
        },
      ),
    );
  });

  it('refuses damaged data and another size than said, and ends', () => {
    const packed = deflateRawSync(Buffer.from('a sign a sign a sign a sign'));
    expect(() => inflate(packed, 26)).toThrow();
    expect(() => inflate(packed, 28)).toThrow();
    expect(() => inflate(packed.subarray(0, packed.length - 2), 27)).toThrow();
    expect(() => inflate(Uint8Array.of(7), 5)).toThrow();
    // A thousand times what was said: it stops at the first part that is too much.
    expect(() => inflate(deflateRawSync(new Uint8Array(20_000_000)), 100)).toThrow(RangeError);
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (noise) => {
        try {
          expect(inflate(noise, 50)).toHaveLength(50);
        } catch (error) {
          expect(error).toBeInstanceOf(Error);
        }
      }),
    );
  });
});

describe('the font door', () => {
  it('reads TrueType in WOFF and CFF in .otf alike', () => {
    const otfFont = readFont(otf('HAOé'), 'test');
    if (!otfFont.ok) throw new Error(JSON.stringify(otfFont.reason));
    const lato = fontOf('lato');
    expect(otfFont.font.capHeight).toBe(lato.capHeight);
    expect(otfFont.font.advance('O')).toBe(lato.advance('O'));
    expect(otfFont.font.has('é')).toBe(true);
    expect(otfFont.font.has('B')).toBe(false);
    expect(otfFont.font.outline('O').length).toBeGreaterThan(8);
  });

  it('closes every contour and keeps to lines and cubics', () => {
    for (const character of 'ABQ&8i') {
      const ops = fontOf('playfair-display')
        .outline(character)
        .map((command) => command.op);
      expect(ops.filter((op) => op === 'M')).toHaveLength(ops.filter((op) => op === 'Z').length);
      expect(ops.at(-1)).toBe('Z');
    }
  });

  it('names why a file is refused', () => {
    const text = (s: string) => new TextEncoder().encode(s.padEnd(64));
    expect(reasonOf(new Uint8Array(3))).toEqual({ code: 'not-a-font' });
    expect(reasonOf(text('<!doctype html>'))).toEqual({ code: 'not-a-font' });
    expect(reasonOf(text('wOF2'))).toEqual({ code: 'not-a-font' });
    expect(reasonOf(text('ttcf'))).toEqual({ code: 'not-a-font' });
    expect(reasonOf(new Uint8Array(9_000_000))).toEqual({
      code: 'too-big',
      bytes: 9_000_000,
      most: 8_000_000,
    });
    expect(reasonOf(bytesOf('lato').slice(0, 5000))).toMatchObject({ code: 'damaged' });
    expect(reasonOf(fileOf({ head: new Uint8Array(54) }))).toEqual({ code: 'no-outlines' });
    const glyf = new Uint8Array(12);
    expect(reasonOf(fileOf({ glyf }))).toEqual({ code: 'no-table', table: 'head' });
    expect(reasonOf(fileOf({ glyf, head: new Uint8Array(54) }))).toEqual({ code: 'bad-units', units: 0 });
    const head = new Uint8Array(54);
    head.set(words(1000), 18);
    expect(reasonOf(fileOf({ glyf, head, maxp: words(1, 0, 50_000) }))).toEqual({
      code: 'too-many-glyphs',
      glyphs: 50_000,
      most: 40_000,
    });
  });

  it('refuses a small file that unfolds into a huge one', () => {
    const bomb = bytesOf('lato').slice();
    // Unpacked size of the first table: two gigabytes.
    bomb.set([0x7f, 0xff, 0xff, 0xff], 44 + 12);
    expect(reasonOf(bomb)).toMatchObject({ code: 'too-big' });
  });

  it('does not draw glyphs that stand for endless points', { timeout: 5000 }, () => {
    // Glyph n is glyph n + 1 sixteen times over, seven deep; the last is a triangle.
    const triangle = [1, 0, 0, 500, 700, 2, 0, 0x0101, 0x0100, 0, 500, 0xff06, 0, 0, 700].map(
      (v) => v & 0xffff,
    );
    const parts: number[] = [];
    const loca = [0, 0];
    for (let level = 1; level <= 7; level += 1) {
      parts.push(0xffff, 0, 0, 500, 700);
      for (let i = 0; i < 16; i += 1) parts.push(i < 15 ? 0x0023 : 0x0003, level + 1, 0, 0);
      loca.push(2 * parts.length);
    }
    parts.push(...triangle);
    loca.push(2 * parts.length);
    const read = readFont(small(words(...parts), loca), 'bomb');
    if (!read.ok) throw new Error(JSON.stringify(read.reason));
    expect(read.font.has('A')).toBe(false);
    // Glyphs that contain themselves end too.
    const self = readFont(small(words(0xffff, 0, 0, 500, 700, 0x0003, 1, 0, 0), [0, 0, 18]), 'self');
    expect(self.ok && self.font.has('A')).toBe(false);
  });

  it('draws the same small font when its glyph is sound', () => {
    // A triangle as a simple glyph: three points on the curve.
    const glyph = new Uint8Array([
      0, 1, 0, 0, 0, 0, 1, 244, 2, 188, 0, 2, 0, 0, 1, 1, 1, 0, 0, 1, 244, 255, 6, 0, 0, 0, 0, 2, 188, 0,
    ]);
    const read = readFont(small(glyph, [0, 0, 30]), 'small');
    if (!read.ok) throw new Error(JSON.stringify(read.reason));
    expect(read.font.has('A')).toBe(true);
    expect(read.font.capHeight).toBe(700);
  });

  it('never throws and never hangs on damaged files', () => {
    const sound = [bytesOf('bebas-neue'), otf('HAMBO'), bytesOf('playfair-display')];
    fc.assert(
      fc.property(
        fc.constantFrom(...sound),
        fc.array(fc.tuple(fc.double({ min: 0, max: 0.999, noNaN: true }), fc.integer({ min: 0, max: 255 })), {
          minLength: 1,
          maxLength: 30,
        }),
        fc.double({ min: 0.2, max: 1, noNaN: true }),
        (file, changes, kept) => {
          const damaged = file.slice(0, Math.ceil(file.length * (kept > 0.6 ? 1 : kept)));
          for (const [share, value] of changes) damaged[Math.floor(share * damaged.length)] = value;
          const read = readFont(damaged, 'damaged');
          if (!read.ok) return;
          for (const left of 'HAMB') {
            expect(Number.isFinite(read.font.kern(left, 'V') + read.font.advance(left))).toBe(true);
            for (const command of read.font.outline(left)) {
              if (command.op !== 'Z') expect(Number.isFinite(command.x + command.y)).toBe(true);
            }
          }
        },
      ),
      { numRuns: 150 },
    );
  });

  it('counts the steps of CFF outlines before they are drawn', { timeout: 5000 }, () => {
    const index = (...items: number[][]) => {
      if (items.length === 0) return [0, 0];
      const ends: number[] = [1];
      for (const item of items) ends.push((ends.at(-1) ?? 1) + item.length);
      return [
        items.length >> 8,
        items.length & 255,
        2,
        ...ends.flatMap((e) => [e >> 8, e & 255]),
        ...items.flat(),
      ];
    };
    const cffOf = (routines: number[][], ...glyphs: number[][]) => {
      const before = [1, 0, 4, 1, ...index([65])];
      const after = [...index(), ...index(...routines)];
      // One dictionary entry: the place of the charstrings, as a five-byte number.
      const at = before.length + index([29, 0, 0, 0, 0, 17]).length + after.length;
      const top = index([29, 0, 0, at >> 8, at & 255, 17]);
      return new Bytes(Uint8Array.from([...before, ...top, ...after, ...index(...glyphs)]), 'CFF ');
    };
    const call = (routine: number) => [139 + routine - 107, 29];
    const twenty = (routine: number) => Array.from({ length: 20 }, () => call(routine)).flat();
    const end = [14];
    const chain = [1, 2, 3, 4, 5, 6, 7].map((next) => [...twenty(next), 11]);
    const safe = guardCff(
      cffOf([...chain, [11]], end, [...call(7), ...end], [...call(4), ...end], [...call(0), ...end], [247]),
    );
    expect([0, 1, 2].map(safe)).toEqual([true, true, true]);
    expect(safe(3)).toBe(false);
    expect(safe(99)).toBe(false);
    // Itself, for ever.
    expect(guardCff(cffOf([[...call(0), 11]], [...call(0), ...end]))(0)).toBe(false);
    // Numbers without end, and a composed glyph.
    expect(guardCff(cffOf([], Array<number>(500).fill(139)))(0)).toBe(false);
    expect(guardCff(cffOf([], [139, 139, 139, 139, 14]))(0)).toBe(false);
    // A list whose ends run backwards is damage.
    const broken = cffOf([[11], [11]], end).data.slice();
    const list = 4 + index([65]).length + index([29, 0, 0, 0, 0, 17]).length + 2;
    broken[list + 6] = 0;
    expect(() => guardCff(new Bytes(broken, 'CFF '))).toThrow();
  });
});
