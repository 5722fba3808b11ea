import { byte, whole } from '../../list/at.ts';
import { joinedBytes } from '../../list/joinedBytes.ts';

/** What a PNG file is made of (W3C PNG, third edition). */
export interface Png {
  readonly width: number;
  readonly height: number;
  /** Bits of a sample. */
  readonly depth: number;
  /** 0 gray, 2 color, 3 by a palette, 4 and 6 gray and color with how opaque they are. */
  readonly colors: number;
  /** Samples of a pixel. */
  readonly samples: number;
  readonly interlaced: boolean;
  /** By a color or by entries of the palette that are clear. */
  readonly clears: boolean;
  /** Moving pictures are none that are printed. */
  readonly moves: boolean;
  /** Three bytes a color. */
  readonly palette: Uint8Array;
  /** Its pixels, packed as zlib packs (RFC 1950). */
  readonly packed: Uint8Array;
  readonly chunks: readonly { readonly name: string; readonly from: number; readonly to: number }[];
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Samples of a pixel by the kind of its colors, with the depths that each may have (11.2.1, table 8). */
const KINDS: Readonly<Record<number, { readonly samples: number; readonly depths: readonly number[] }>> = {
  0: { samples: 1, depths: [1, 2, 4, 8, 16] },
  2: { samples: 3, depths: [8, 16] },
  3: { samples: 1, depths: [1, 2, 4, 8] },
  4: { samples: 2, depths: [8, 16] },
  6: { samples: 4, depths: [8, 16] },
};

/** Reads a PNG file; null for anything else, one that is cut off, and one whose check sums do not hold. */
export function readPng(bytes: Uint8Array): Png | null {
  if (SIGNATURE.some((code, i) => bytes[i] !== code)) return null;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const chunks: Png['chunks'][number][] = [];
  for (let from = SIGNATURE.length; from + 12 <= bytes.length; ) {
    const to = from + 12 + view.getUint32(from);
    if (to > bytes.length || crcOf(bytes.subarray(from + 4, to - 4)) !== view.getUint32(to - 4)) return null;
    chunks.push({ name: String.fromCharCode(...bytes.subarray(from + 4, from + 8)), from, to });
    from = to;
    if (chunks.at(-1)?.name === 'IEND') break;
  }
  const dataOf = (name: string): Uint8Array[] =>
    chunks.filter((c) => c.name === name).map(({ from, to }) => bytes.subarray(from + 8, to - 4));
  const [head] = dataOf('IHDR');
  if (chunks[0]?.name !== 'IHDR' || chunks.at(-1)?.name !== 'IEND' || head?.length !== 13) return null;
  const [depth, colors, interlace] = [byte(head, 8), byte(head, 9), byte(head, 12)];
  const kind = KINDS[colors];
  if (!kind?.depths.includes(depth)) return null;
  const at = SIGNATURE.length + 8;
  const png: Png = {
    ...{ width: view.getUint32(at), height: view.getUint32(at + 4), depth, colors, chunks },
    samples: kind.samples,
    interlaced: interlace === 1,
    clears: dataOf('tRNS').length > 0,
    moves: dataOf('acTL').length > 0,
    palette: joinedBytes(dataOf('PLTE')),
    packed: joinedBytes(dataOf('IDAT')),
  };
  const sound =
    interlace <= 1 &&
    png.packed.length > 6 &&
    (colors !== 3 || (png.palette.length > 0 && png.palette.length % 3 === 0));
  return sound ? png : null;
}

/** First pixel and step across and down of each pass of an interlaced picture (8.2, Adam7). */
const PASSES = [
  [0, 0, 8, 8],
  [4, 0, 8, 8],
  [0, 4, 4, 8],
  [2, 0, 4, 4],
  [0, 2, 2, 4],
  [1, 0, 2, 2],
  [0, 1, 1, 2],
] as const;

/** Bytes of all rows of its pixels, each with the byte that says how it is filtered (7.2). */
export function rowBytesOf({ width, height, depth, samples, interlaced }: Png): number {
  const bits = depth * samples;
  const rows = (w: number, h: number) => (w > 0 && h > 0 ? h * (1 + Math.ceil((w * bits) / 8)) : 0);
  if (!interlaced) return rows(width, height);
  return PASSES.reduce(
    (sum, [x, y, dx, dy]) => sum + rows(Math.ceil((width - x) / dx), Math.ceil((height - y) / dy)),
    0,
  );
}

/** Chunks that say what is seen; others tell of time, text and programs. */
const KEPT = ['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND', 'gAMA', 'cHRM', 'sRGB', 'iCCP'];

/** The same picture without what else is written in its file. */
export const barePng = (bytes: Uint8Array, { chunks }: Png): Uint8Array =>
  joinedBytes([
    Uint8Array.from(SIGNATURE),
    ...chunks.filter(({ name }) => KEPT.includes(name)).map(({ from, to }) => bytes.subarray(from, to)),
  ]);

/** Remainders of the check sum by a byte (annex D). */
const REMAINDERS = Int32Array.from({ length: 256 }, (_, n) => {
  let c = n;
  for (let k = 0; k < 8; k++) c = c & 1 ? 0xedb88320 ^ (c >>> 1) : c >>> 1;
  return c;
});

function crcOf(bytes: Uint8Array): number {
  let c = -1;
  for (let i = 0; i < bytes.length; i++) c = whole(REMAINDERS, (c ^ byte(bytes, i)) & 0xff) ^ (c >>> 8);
  return (c ^ -1) >>> 0;
}
