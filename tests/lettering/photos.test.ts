import { deflateSync } from 'node:zlib';
import fc from 'fast-check';
import { PNG } from 'pngjs';
import { describe, expect, it } from 'vitest';
import type { LyingPhoto, Photo } from '../../src/design/schema.ts';
import { faultOf, type PhotoFault } from '../../src/lettering/photo/fault.ts';
import { bareJpeg, readJpeg } from '../../src/lettering/photo/jpeg.ts';
import { LEAST_DPI, placedPhoto } from '../../src/lettering/photo/placed.ts';
import { barePng, readPng } from '../../src/lettering/photo/png.ts';
import { jpegFile, jpegPhoto, pngFile, pngPhoto, segment } from './photos.ts';

const codes = (text: string) => [...text].map((c) => c.charCodeAt(0));

/** A chunk of a PNG file with its check sum, which the test makes bit by bit (W3C PNG, annex D, in its plainest form). */
function chunk(name: string, body: readonly number[]): number[] {
  const summed = [...codes(name), ...body];
  let crc = 0xffffffff;
  for (const byte of summed) {
    for (let bit = 0; bit < 8; bit++) {
      const odd = ((crc ^ (byte >> bit)) & 1) === 1;
      crc = (crc >>> 1) ^ (odd ? 0xedb88320 : 0);
    }
  }
  const four = (n: number) => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];
  return [...four(body.length), ...summed, ...four((crc ^ 0xffffffff) >>> 0)];
}

const HEAD = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];
const four = (n: number) => [n >>> 24, (n >>> 16) & 255, (n >>> 8) & 255, n & 255];
/** A PNG file by hand: its head as it is told, its rows as they are given. */
const handMade = (
  w: number,
  h: number,
  rows: readonly number[],
  { depth = 8, colors = 0, interlace = 0, more = [] as readonly number[] } = {},
): Uint8Array =>
  Uint8Array.from([
    ...HEAD,
    ...chunk('IHDR', [...four(w), ...four(h), depth, colors, 0, 0, interlace]),
    ...more,
    ...chunk('IDAT', [...deflateSync(Uint8Array.from(rows))]),
    ...chunk('IEND', []),
  ]);

/** An Exif segment that says how the camera was held, in either order of bytes (Exif 2.32; TIFF 6.0). */
function exif(orientation: number, little: boolean): number[] {
  const two = (n: number) => (little ? [n & 255, n >> 8] : [n >> 8, n & 255]);
  const long = (n: number) => (little ? four(n).reverse() : four(n));
  const entry = [...two(0x0112), ...two(3), ...long(1), ...two(orientation), 0, 0];
  const tiff = [...codes(little ? 'II' : 'MM'), ...two(42), ...long(8), ...two(1), ...entry, ...long(0)];
  return segment(0xe1, [...codes('Exif'), 0, 0, ...tiff]);
}

const bytesOf = ({ data }: Photo) => new Uint8Array(Buffer.from(data, 'base64'));
const checker = (x: number, y: number) => [(x * 7) % 256, (y * 5) % 256, (x * y) % 256];

describe('a photo of a design', () => {
  it('is sound as a second library writes it, in every kind, and as it is written by hand', () => {
    for (const kind of [0, 2, 4, 6] as const) {
      const photo = pngPhoto('a', 37, 23, checker, kind);
      expect(faultOf(bytesOf(photo), photo)).toBeNull();
      expect(readPng(bytesOf(photo))?.colors).toBe(kind);
    }
    const deep = pngFile(9, 7, checker, 2, 16);
    expect(faultOf(deep, { type: 'image/png', width: 9, height: 7 })).toBeNull();
    const jpeg = jpegPhoto('b', 5, 4, (x, y) => 20 * x + 30 * y);
    expect(faultOf(bytesOf(jpeg), jpeg)).toBeNull();
    // Interlaced, 3 by 2: passes 1 (1 pixel), 4 (1 by 1 at x 2), 6 (1 at x 1) and 7 (the second row) hold pixels (8.2, Adam7).
    const rows = [0, 10, 0, 30, 0, 20, 0, 40, 50, 60];
    expect(faultOf(handMade(3, 2, rows, { interlace: 1 }), PNG_3_2)).toBeNull();
    expect(
      [...PNG.sync.read(Buffer.from(handMade(3, 2, rows, { interlace: 1 }))).data].filter(
        (_, i) => i % 4 === 0,
      ),
    ).toEqual([10, 20, 30, 40, 50, 60]);
  });

  it('says its size as the file has it', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 40 }), (w, h) => {
        const png = readPng(pngFile(w, h, checker));
        expect([png?.width, png?.height]).toEqual([w, h]);
        const jpeg = readJpeg(jpegFile(w, h, () => 128));
        expect([jpeg?.width, jpeg?.height]).toEqual([8 * w, 8 * h]);
      }),
      { numRuns: 20 },
    );
  });

  it('tells how the camera was held, in both orders of bytes', () => {
    for (const little of [true, false]) {
      for (let orientation = 1; orientation <= 8; orientation++) {
        const jpeg = readJpeg(jpegFile(2, 2, () => 90, exif(orientation, little)));
        expect(jpeg?.orientation).toBe(orientation);
      }
    }
  });

  it('keeps nothing of place, time, comments and previews, and all of what is seen', () => {
    const told = [
      ...exif(1, true),
      ...segment(0xe1, codes('http://ns.adobe.com/xap/1.0/ secret place')),
      ...segment(0xed, codes('secret words')),
      ...segment(0xfe, codes('secret comment')),
    ];
    const bare = jpegFile(6, 4, (x) => 40 * x);
    const whole = jpegFile(6, 4, (x) => 40 * x, told);
    const jpeg = readJpeg(whole);
    if (!jpeg) throw new Error('no JPEG');
    expect(Buffer.from(bareJpeg(whole, jpeg)).equals(Buffer.from(bare))).toBe(true);

    const rows = [0, 10, 20, 30, 0, 40, 50, 60];
    const text = chunk('tEXt', [...codes('Comment'), 0, ...codes('secret')]);
    const file = handMade(3, 2, rows, { more: [...text, ...chunk('eXIf', codes('secret'))] });
    const png = readPng(file);
    if (!png) throw new Error('no PNG');
    const kept = barePng(file, png);
    expect(Buffer.from(kept).includes('secret')).toBe(false);
    expect(PNG.sync.read(Buffer.from(kept)).data.equals(PNG.sync.read(Buffer.from(file)).data)).toBe(true);
  });
});

const GRAY = [0, 10, 20, 30, 0, 40, 50, 60];
const told = (type: Photo['type'], width: number, height: number) => ({ type, width, height });
const PNG_3_2 = told('image/png', 3, 2);
const sofOf = (components: number, precision = 8, marker = 0xc0) => {
  const file = [...jpegFile(2, 2, () => 99)];
  const at = file.findIndex((b, i) => b === 0xff && file[i + 1] === 0xc0);
  file[at + 1] = marker;
  file[at + 4] = precision;
  file[at + 9] = components;
  return Uint8Array.from(file);
};

/** Bytes that no design may print, each with the reason. All written for this test. */
const HOSTILE: readonly (readonly [string, PhotoFault, Uint8Array, ReturnType<typeof told>])[] = [
  ['nothing', 'damaged', new Uint8Array(), PNG_3_2],
  ['a page', 'damaged', Uint8Array.from(codes('<html><script>1</script></html>')), PNG_3_2],
  ['a drawing', 'damaged', Uint8Array.from(codes('<svg onload="x()"/>')), PNG_3_2],
  ['another kind of picture', 'damaged', Uint8Array.from(codes('GIF89a\u0001\u0000\u0001\u0000')), PNG_3_2],
  ['a WebP', 'damaged', Uint8Array.from(codes('RIFF\u0010\u0000\u0000\u0000WEBPVP8L')), PNG_3_2],
  ['a JPEG told as PNG', 'damaged', jpegFile(1, 1, () => 1), told('image/png', 8, 8)],
  ['a PNG told as JPEG', 'damaged', handMade(3, 2, GRAY), told('image/jpeg', 3, 2)],
  ['another size than is told', 'damaged', handMade(3, 2, GRAY), told('image/png', 3, 3)],
  ['no pixels', 'damaged', handMade(0, 0, [0]), told('image/png', 0, 0)],
  ['a row too few', 'damaged', handMade(3, 2, GRAY.slice(0, 4)), PNG_3_2],
  ['rows that unfold without end', 'damaged', handMade(3, 2, Array(200_000).fill(0)), PNG_3_2],
  [
    'more pixels than a design holds',
    'too-many-pixels',
    handMade(60_000, 60_000, GRAY),
    told('image/png', 60_000, 60_000),
  ],
  ['a depth that is none', 'damaged', handMade(3, 2, GRAY, { depth: 7 }), PNG_3_2],
  ['colors that are none', 'damaged', handMade(3, 2, GRAY, { colors: 5 }), PNG_3_2],
  ['a palette that is missing', 'damaged', handMade(3, 2, GRAY, { colors: 3 }), PNG_3_2],
  ['an interlace that is none', 'damaged', handMade(3, 2, GRAY, { interlace: 2 }), PNG_3_2],
  [
    'a moving picture',
    'kind',
    handMade(3, 2, GRAY, { more: chunk('acTL', [0, 0, 0, 1, 0, 0, 0, 0]) }),
    PNG_3_2,
  ],
  [
    'a head after its pixels',
    'damaged',
    Uint8Array.from([...HEAD, ...chunk('IDAT', [1]), ...chunk('IEND', [])]),
    PNG_3_2,
  ],
  ['four inks', 'kind', sofOf(4), told('image/jpeg', 16, 16)],
  ['twelve bits', 'kind', sofOf(1, 12, 0xc1), told('image/jpeg', 16, 16)],
  ['a lossless JPEG', 'kind', sofOf(1, 8, 0xc3), told('image/jpeg', 16, 16)],
  ['one held sideways', 'kind', jpegFile(2, 2, () => 9, exif(6, true)), told('image/jpeg', 16, 16)],
  ['a JPEG without an end', 'damaged', jpegFile(2, 2, () => 9).subarray(0, -2), told('image/jpeg', 16, 16)],
  [
    'a segment longer than the file',
    'damaged',
    Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0xff, 0xff]),
    told('image/jpeg', 16, 16),
  ],
  [
    'two frames',
    'damaged',
    jpegFile(2, 2, () => 9, segment(0xc0, [8, 0, 16, 0, 16, 1, 1, 0x11, 0])),
    told('image/jpeg', 16, 16),
  ],
];

describe('bytes from elsewhere', () => {
  it.each(HOSTILE)('%s are refused: %s', (_, fault, bytes, as) => {
    expect(faultOf(bytes, as)).toBe(fault);
  });

  it('are refused wherever they are cut off or a bit of a PNG is turned, and never throw', () => {
    const png = pngFile(11, 9, checker, 6);
    const jpeg = jpegFile(3, 3, (x, y) => 25 * (x + y), exif(1, false));
    for (let end = 0; end < png.length; end++)
      expect(faultOf(png.subarray(0, end), told('image/png', 11, 9))).not.toBeNull();
    for (let end = 0; end < jpeg.length; end++)
      expect(faultOf(jpeg.subarray(0, end), told('image/jpeg', 24, 24))).not.toBeNull();
    for (let at = 0; at < png.length; at++) {
      const turned = Uint8Array.from(png);
      turned[at] = (turned[at] ?? 0) ^ (1 << (at % 8));
      expect(faultOf(turned, told('image/png', 11, 9))).not.toBeNull();
      const other = Uint8Array.from(jpeg);
      if (at < other.length) other[at] = (other[at] ?? 0) ^ 0x55;
      expect(() => faultOf(other, told('image/jpeg', 24, 24))).not.toThrow();
    }
  });
});

describe('a photo on a sign', () => {
  const photo: Photo = { ...pngPhoto('a', 3, 2, checker), width: 3000, height: 2000 };
  const board = { x: 10, y: 20, w: 250, h: 180 };
  const paper = { bleed: 3, margin: 12 };
  const lying = (more: Partial<LyingPhoto>): LyingPhoto => ({
    ...{ photo: 'a', fit: 'sized', width: 254, shift: { x: 0, y: 0 } },
    ...more,
  });

  it('has as many pixels to an inch as its width says: 3,000 over 10 in are 300', () => {
    const { dpi, frame, shown } = placedPhoto(photo, lying({}), board, paper);
    expect(dpi).toBe(300);
    expect(frame).toEqual(shown);
    expect([frame.w, frame.h]).toEqual([254, (254 * 2) / 3]);
    // In the middle of the board.
    expect(frame.x + frame.w / 2).toBeCloseTo(135, 9);
    expect(frame.y + frame.h / 2).toBeCloseTo(110, 9);
  });

  it('is warned of under what an eye tells apart at 23 in', () => {
    // Snellen: 20/20 tells a minute of arc apart. Recomputed from that and the distance, rounded to whole tens.
    const minute = Math.PI / 180 / 60;
    expect(Math.round(1 / (23 * Math.tan(minute)) / 10) * 10).toBe(LEAST_DPI);
  });

  const share = fc.double({ min: 0, max: 0.45, noNaN: true });
  const crops = fc.record({ left: share, right: share, bottom: share, top: share });
  const shifts = fc.record({
    x: fc.double({ min: -400, max: 400, noNaN: true }),
    y: fc.double({ min: -400, max: 400, noNaN: true }),
  });

  it('covers the board and its bleed, or stands within the margin, and is never drawn out, however it is cut', () => {
    fc.assert(
      fc.property(crops, shifts, fc.constantFrom('cover', 'inside', 'sized'), (crop, shift, fit) => {
        const { frame, shown, dpi } = placedPhoto(photo, lying({ fit, crop, shift }), board, paper);
        expect(frame.w / frame.h).toBeCloseTo(1.5, 9);
        expect((frame.w / 25.4) * dpi).toBeCloseTo(3000, 6);
        // What is cut off is cut off at the sides that are told.
        expect((shown.x - frame.x) / frame.w).toBeCloseTo(crop.left, 9);
        expect((frame.x + frame.w - shown.x - shown.w) / frame.w).toBeCloseTo(crop.right, 9);
        expect((shown.y - frame.y) / frame.h).toBeCloseTo(crop.bottom, 9);
        expect((frame.y + frame.h - shown.y - shown.h) / frame.h).toBeCloseTo(crop.top, 9);
        const SAME = 1e-9;
        if (fit === 'cover') {
          expect(shown.x).toBeLessThanOrEqual(board.x - 3 + SAME);
          expect(shown.y).toBeLessThanOrEqual(board.y - 3 + SAME);
          expect(shown.x + shown.w).toBeGreaterThanOrEqual(board.x + board.w + 3 - SAME);
          expect(shown.y + shown.h).toBeGreaterThanOrEqual(board.y + board.h + 3 - SAME);
          // No larger than that takes.
          expect(Math.min(shown.w - 256, shown.h - 186)).toBeCloseTo(0, 9);
        } else {
          expect(shown.x + shown.w / 2 - 135).toBeCloseTo(shift.x, 9);
          expect(shown.y + shown.h / 2 - 110).toBeCloseTo(shift.y, 9);
        }
        if (fit === 'inside') expect(Math.min(226 - shown.w, 156 - shown.h)).toBeCloseTo(0, 9);
        if (fit === 'sized') expect(frame.w).toBe(254);
      }),
    );
  });
});
