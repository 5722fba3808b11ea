import { byte } from '../../list/at.ts';
import { joinedBytes } from '../../list/joinedBytes.ts';

/** What a JPEG file is made of (ITU T.81, annex B), as far as its markers tell. */
export interface Jpeg {
  readonly width: number;
  readonly height: number;
  /** Bits of a sample. */
  readonly precision: number;
  /** 1: gray; 3: color; 4: inks. */
  readonly components: number;
  /** How it is coded: 0 baseline, 1 extended, 2 progressive; others are rare. */
  readonly process: number;
  /** How the camera was held, 1 to 8 (Exif 2.32, tag 0x0112); 1: as it is seen. */
  readonly orientation: number;
  /** Where each segment before the scans begins and ends, its marker with it. */
  readonly segments: readonly { readonly marker: number; readonly from: number; readonly to: number }[];
  /** Where the scans begin. */
  readonly scans: number;
}

const START = [0xff, 0xd8] as const;
const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

/** Reads a JPEG file; null for anything else, and for one that is cut off. */
export function readJpeg(bytes: Uint8Array): Jpeg | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    return bytes[0] === START[0] && bytes[1] === START[1] ? read(bytes, view) : null;
  } catch (error) {
    // The view tells in this way that the bytes ended.
    if (error instanceof RangeError) return null;
    throw error;
  }
}

function read(bytes: Uint8Array, view: DataView): Jpeg | null {
  const segments: Jpeg['segments'][number][] = [];
  let frame: Pick<Jpeg, 'width' | 'height' | 'precision' | 'components' | 'process'> | null = null;
  let orientation = 1;
  for (let from = 2; ; ) {
    if (view.getUint8(from) !== 0xff) return null;
    const marker = view.getUint8(from + 1);
    // Bytes that fill up may stand before a marker; 01 and D0 to D7 stand alone.
    if (marker === 0xff) {
      from += 1;
      continue;
    }
    if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) {
      from += 2;
      continue;
    }
    if (marker === 0xd9) return null;
    const to = from + 2 + view.getUint16(from + 2);
    if (to > bytes.length || to < from + 4) return null;
    segments.push({ marker, from, to });
    if (isFrame(marker)) {
      if (frame) return null;
      frame = {
        ...{ precision: view.getUint8(from + 4), components: view.getUint8(from + 9) },
        ...{ height: view.getUint16(from + 5), width: view.getUint16(from + 7), process: marker - 0xc0 },
      };
    }
    if (marker === 0xe1) orientation = orientationIn(view, from + 4, to) ?? orientation;
    if (marker === 0xda) {
      return frame && endsWhole(bytes) ? { ...frame, orientation, segments, scans: from } : null;
    }
    from = to;
  }
}

/** Whether the marker of the end stands at the end, but for bytes that cameras leave behind it. */
function endsWhole(bytes: Uint8Array): boolean {
  const LEFT_BEHIND = 4096;
  for (let i = bytes.length - 2; i >= Math.max(2, bytes.length - LEFT_BEHIND); i--) {
    if (byte(bytes, i) === 0xff && byte(bytes, i + 1) === 0xd9) return true;
  }
  return false;
}

/** The orientation of an Exif segment (TIFF 6.0: byte order, then a directory of entries of 12 bytes). */
function orientationIn(view: DataView, from: number, to: number): number | null {
  const EXIF = [0x45, 0x78, 0x69, 0x66, 0, 0];
  if (to - from < 20 || EXIF.some((code, i) => view.getUint8(from + i) !== code)) return null;
  const tiff = from + EXIF.length;
  const little = view.getUint16(tiff) === 0x4949;
  const directory = tiff + view.getUint32(tiff + 4, little);
  if (directory + 2 > to) return null;
  const count = view.getUint16(directory, little);
  for (let i = 0; i < count; i++) {
    const entry = directory + 2 + 12 * i;
    if (entry + 12 > to) return null;
    if (view.getUint16(entry, little) !== 0x0112) continue;
    const value = view.getUint16(entry + 8, little);
    return value >= 1 && value <= 8 ? value : null;
  }
  return null;
}

/** Application data that says how colors are meant: of JFIF, color profiles, and how components are stored. */
const KEPT_DATA = [0xe0, 0xe2, 0xee];

/** The same picture without what else a camera or a program wrote about it: place, time, comments, previews. */
export function bareJpeg(bytes: Uint8Array, { segments, scans }: Jpeg): Uint8Array {
  const kept = segments.filter(
    ({ marker, from }) => from < scans && (marker < 0xe0 || KEPT_DATA.includes(marker)),
  );
  return joinedBytes([
    Uint8Array.from(START),
    ...kept.map(({ from, to }) => bytes.subarray(from, to)),
    bytes.subarray(scans),
  ]);
}
