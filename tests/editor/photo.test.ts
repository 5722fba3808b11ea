import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { homographyOf, mapped } from '../../src/editor/photo/homography.ts';
import { faceQuad, newPlacing, onFace, onPicture, scaledTo } from '../../src/editor/photo/placing.ts';
import { warpedPixels } from '../../src/editor/photo/warp.ts';
import type { Quad } from '../../src/geometry/shape.ts';
import { readPictureHead } from '../../src/lettering/photo/head.ts';

const quad = (...xy: readonly (readonly [number, number])[]): Quad =>
  xy.map(([x, y]) => ({ x, y })) as unknown as Quad;
const SQUARE = quad([0, 0], [1, 0], [1, 1], [0, 1]);

function mapOf(from: Quad, to: Quad) {
  const map = homographyOf(from, to);
  if (!map) throw new Error('no map');
  return map;
}

describe('the map of four corners to four others', () => {
  it('is a plain scaling and shift between parallelograms', () => {
    const map = mapOf(SQUARE, quad([10, 20], [40, 20], [40, 80], [10, 80]));
    // x' = 30 x + 10, y' = 60 y + 20; no perspective.
    [30, 0, 10, 0, 60, 20, 0, 0].forEach((value, i) => {
      expect(map[i]).toBeCloseTo(value, 9);
    });
  });

  it('takes the crossing of the diagonals to the crossing of the diagonals', () => {
    // A trapezoid with sides 4 and 2, height 3: diagonals cross at 4/(4+2) of the height (similar triangles).
    const map = mapOf(SQUARE, quad([0, 0], [4, 0], [3, 3], [1, 3]));
    const middle = mapped(map, { x: 0.5, y: 0.5 });
    expect(middle.x).toBeCloseTo(2, 9);
    expect(middle.y).toBeCloseTo(2, 9);
  });

  it('keeps lines straight, meets its corners and is taken back by its inverse', () => {
    const jitter = fc.double({ min: -0.2, max: 0.2, noNaN: true });
    const corners = fc
      .array(jitter, { minLength: 8, maxLength: 8 })
      .map((j) =>
        quad(
          ...([0, 1, 2, 3] as const).map((i): [number, number] => [
            (SQUARE[i].x + (j[2 * i] ?? 0)) * 900,
            (SQUARE[i].y + (j[2 * i + 1] ?? 0)) * 700,
          ]),
        ),
      );
    fc.assert(
      fc.property(corners, corners, (from, to) => {
        const there = mapOf(from, to);
        const back = mapOf(to, from);
        from.forEach((p, i) => {
          const q = mapped(there, p);
          expect(Math.hypot(q.x - (to[i]?.x ?? 0), q.y - (to[i]?.y ?? 0))).toBeLessThan(1e-6);
        });
        const [a, b] = [mapped(there, { x: 300, y: 300 }), mapped(there, { x: 500, y: 400 })];
        const c = mapped(there, { x: 400, y: 350 });
        const off = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        expect(Math.abs(off) / Math.hypot(b.x - a.x, b.y - a.y)).toBeLessThan(1e-5);
        const home = mapped(back, c);
        expect(Math.hypot(home.x - 400, home.y - 350)).toBeLessThan(1e-5);
      }),
    );
  });

  it('is none where three corners lie in line', () => {
    expect(homographyOf(SQUARE, quad([0, 0], [1, 1], [2, 2], [0, 1]))).toBeNull();
    expect(homographyOf(quad([0, 0], [0, 0], [1, 1], [0, 1]), SQUARE)).toBeNull();
  });
});

describe('straightened pixels', () => {
  const source = (width: number, height: number) => {
    const data = new Uint8ClampedArray(width * height * 4);
    for (let i = 0; i < width * height; i++)
      data.set([(i % width) * 10, Math.floor(i / width) * 10, 7, 255], i * 4);
    return { data, width, height };
  };

  it('are the picture itself when its own corners are its corners', () => {
    const picture = source(9, 7);
    const map = mapOf(faceQuad(9, 7), faceQuad(9, 7));
    expect([...warpedPixels(picture, map, 9, 7).data]).toEqual([...picture.data]);
  });

  it('cut out what the corners hold, and are clear beyond the picture', () => {
    const picture = source(9, 7);
    const cut = warpedPixels(picture, mapOf(faceQuad(3, 2), quad([2, 5], [5, 5], [5, 3], [2, 3])), 3, 2);
    expect([...cut.data.slice(0, 4)]).toEqual([20, 30, 7, 255]);
    expect([...cut.data.slice(-4)]).toEqual([40, 40, 7, 255]);
    const beyond = warpedPixels(
      picture,
      mapOf(faceQuad(2, 2), quad([20, 22], [22, 22], [22, 20], [20, 20])),
      2,
      2,
    );
    expect([...beyond.data]).toEqual(new Array(16).fill(0));
  });
});

describe('a photo on the face', () => {
  const size = { width: 800, height: 1200 };
  const face = { width: 1054.1, height: 1981.2 };

  it('covers the height of the face at first, and its points come back', () => {
    const placing = newPlacing(size, face);
    expect(onFace(placing, size, { x: 400, y: 0 })).toEqual({ x: face.width / 2, y: face.height });
    const p = onPicture(placing, size, onFace(placing, size, { x: 123, y: 456 }));
    expect(p.x).toBeCloseTo(123, 9);
    expect(p.y).toBeCloseTo(456, 9);
  });

  it('is sized by a length between its marks, about the first one', () => {
    const placing = {
      ...newPlacing(size, face),
      marks: [
        { x: 100, y: 700 },
        { x: 400, y: 300 },
      ] as const,
    };
    const sized = scaledTo(placing, size, 1000);
    // 300 and 400 across make 500 pixels: two millimeters each.
    expect(sized.scale).toBeCloseTo(2, 12);
    const [before, after] = [placing, sized].map((one) => onFace(one, size, placing.marks[0]));
    expect(after?.x).toBeCloseTo(before?.x ?? 0, 9);
    expect(after?.y).toBeCloseTo(before?.y ?? 0, 9);
    expect(scaledTo({ ...placing, marks: [placing.marks[0], placing.marks[0]] }, size, 1000).scale).toBe(
      placing.scale,
    );
  });
});

describe('what a file is, by its bytes', () => {
  const bytes = (...parts: readonly (string | readonly number[])[]) =>
    new Uint8Array(
      parts.flatMap((p) => (typeof p === 'string' ? [...p].map((c) => c.charCodeAt(0)) : [...p])),
    );
  const png = bytes([0x89], 'PNG\r\n', [0x1a, 0x0a, 0, 0, 0, 13], 'IHDR', [0, 0, 3, 32, 0, 0, 4, 176]);

  it('reads the size of a PNG (W3C PNG: IHDR comes first)', () => {
    expect(readPictureHead(png)).toEqual({ type: 'image/png', width: 800, height: 1200 });
  });

  it('finds the frame header of a JPEG behind other segments (ITU T.81)', () => {
    const app = [0xff, 0xe0, 0, 6, 1, 2, 3, 4];
    const tables = [0xff, 0xc4, 0, 4, 0, 0];
    const frame = [0xff, 0xc2, 0, 17, 8, 4, 176, 3, 32, 3];
    expect(readPictureHead(bytes([0xff, 0xd8], app, tables, [0xff], frame))).toEqual({
      type: 'image/jpeg',
      width: 800,
      height: 1200,
    });
    expect(readPictureHead(bytes([0xff, 0xd8], app, [0xff, 0xda, 0, 8]))).toBeNull();
  });

  it('reads the three heads of WebP (RFC 9649)', () => {
    const head = (chunk: string, rest: readonly number[]) => bytes('RIFF', [0, 0, 0, 0], 'WEBP', chunk, rest);
    const size = { type: 'image/webp', width: 800, height: 1200 };
    expect(readPictureHead(head('VP8 ', [0, 0, 0, 0, 0, 0, 0, 0x9d, 1, 0x2a, 32, 3, 176, 4]))).toEqual(size);
    // 799 in 14 bits, 1199 in the next 14.
    const packed = 799 + 1199 * 0x4000;
    const four = [0, 8, 16, 24].map((shift) => (packed >>> shift) & 255);
    expect(readPictureHead(head('VP8L', [0, 0, 0, 0, 0x2f, ...four]))).toEqual(size);
    expect(readPictureHead(head('VP8X', [10, 0, 0, 0, 0, 0, 0, 0, 31, 3, 0, 175, 4, 0]))).toEqual(size);
  });

  it('takes nothing else, and nothing that is cut off', () => {
    expect(readPictureHead(bytes('GIF89a', [0, 0, 0, 0]))).toBeNull();
    expect(readPictureHead(bytes('<svg xmlns="http://www.w3.org/2000/svg"/>'))).toBeNull();
    for (let n = 0; n < png.length; n++) expect(readPictureHead(png.slice(0, n))).toBeNull();
  });
});
