import { PNG } from 'pngjs';
import type { Photo } from '../../src/design/schema.ts';

type Rgba = readonly number[];

const photoOf = (
  id: string,
  type: Photo['type'],
  width: number,
  height: number,
  file: Uint8Array,
): Photo => ({
  ...{ id, name: id, type, width, height, data: Buffer.from(file).toString('base64') },
});

/** A PNG file by a library of the tests (pngjs): its pixels by place, row 0 at the top. */
export function pngFile(
  width: number,
  height: number,
  colorOf: (x: number, y: number) => Rgba,
  colorType: 0 | 2 | 4 | 6 = 2,
  bitDepth: 8 | 16 = 8,
): Uint8Array {
  const png = new PNG({ width, height });
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [r = 0, g = r, b = r, a = 255] = colorOf(x, y);
      png.data.set([r, g, b, a], 4 * (y * width + x));
    }
  }
  return PNG.sync.write(png, { colorType, bitDepth, inputHasAlpha: true });
}

/** The same as a photo of a design. */
export const pngPhoto = (
  id: string,
  width: number,
  height: number,
  colorOf: (x: number, y: number) => Rgba,
  colorType: 0 | 2 | 4 | 6 = 2,
): Photo => photoOf(id, 'image/png', width, height, pngFile(width, height, colorOf, colorType));

/** A segment of a JPEG file: its marker, its length with itself, what is in it. */
export const segment = (marker: number, body: readonly number[]): number[] => [
  ...[0xff, marker, (body.length + 2) >> 8, (body.length + 2) & 0xff],
  ...body,
];

/**
 * A gray baseline JPEG file of even blocks of 8 by 8 pixels, written by hand after ITU T.81: no quantization, one coefficient
 * a block (8 times the gray less 128, A.3.3), twelve codes of 4 bits for its length, one of a bit for the end of a block.
 */
export function jpegFile(
  columns: number,
  rows: number,
  grayOf: (column: number, row: number) => number,
  more: readonly number[] = [],
): Uint8Array {
  const [width, height] = [8 * columns, 8 * rows];
  let bits = '';
  let before = 0;
  for (let row = 0; row < rows; row++) {
    for (let column = 0; column < columns; column++) {
      const value = 8 * (grayOf(column, row) - 128);
      const difference = value - before;
      before = value;
      const size = difference === 0 ? 0 : Math.floor(Math.log2(Math.abs(difference))) + 1;
      const told = difference < 0 ? difference + 2 ** size - 1 : difference;
      const extra = size === 0 ? '' : told.toString(2).padStart(size, '0');
      bits += `${size.toString(2).padStart(4, '0')}${extra}0`;
    }
  }
  const padded = bits.padEnd(Math.ceil(bits.length / 8) * 8, '1');
  const scan = Array.from(
    { length: padded.length / 8 },
    (_, i) => Number.parseInt(padded.slice(8 * i, 8 * i + 8), 2),
    // A byte of ones is followed by an empty one, so that it is no marker (B.1.1.5).
  ).flatMap((byte) => (byte === 0xff ? [byte, 0] : [byte]));
  return Uint8Array.from([
    ...[0xff, 0xd8],
    ...more,
    ...segment(0xdb, [0, ...Array.from({ length: 64 }, () => 1)]),
    ...segment(0xc0, [8, height >> 8, height & 0xff, width >> 8, width & 0xff, 1, 1, 0x11, 0]),
    ...segment(0xc4, [
      0x00,
      0,
      0,
      0,
      12,
      ...Array<number>(12).fill(0),
      ...Array.from({ length: 12 }, (_, i) => i),
    ]),
    ...segment(0xc4, [0x10, 1, ...Array<number>(15).fill(0), 0]),
    ...segment(0xda, [1, 1, 0, 0, 63, 0]),
    ...scan,
    ...[0xff, 0xd9],
  ]);
}

export const jpegPhoto = (
  id: string,
  columns: number,
  rows: number,
  grayOf: (column: number, row: number) => number,
): Photo => photoOf(id, 'image/jpeg', 8 * columns, 8 * rows, jpegFile(columns, rows, grayOf));
