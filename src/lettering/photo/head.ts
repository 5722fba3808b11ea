/** What the first bytes of a file tell of a picture. */
export interface PictureHead {
  readonly type: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly width: number;
  readonly height: number;
}

/**
 * Kind and size of a picture by its bytes alone, whatever its name says; null for anything else and for heads
 * that are cut off. PNG: W3C PNG, IHDR. JPEG: ITU T.81, frame header. WebP: RFC 9649, VP8, VP8L and VP8X chunks.
 */
export function readPictureHead(bytes: Uint8Array): PictureHead | null {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  try {
    if (startsWith(bytes, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) {
      return { type: 'image/png', width: view.getUint32(16), height: view.getUint32(20) };
    }
    if (startsWith(bytes, [0xff, 0xd8, 0xff])) return jpegHead(view);
    if (text(view, 0) === 'RIFF' && text(view, 8) === 'WEBP') return webpHead(view);
  } catch (error) {
    // The view tells in this way that the bytes ended.
    if (!(error instanceof RangeError)) throw error;
  }
  return null;
}

const startsWith = (bytes: Uint8Array, start: readonly number[]) => start.every((b, i) => bytes[i] === b);

const text = (view: DataView, at: number) =>
  String.fromCharCode(...[0, 1, 2, 3].map((i) => view.getUint8(at + i)));

function jpegHead(view: DataView): PictureHead | null {
  let at = 2;
  while (view.getUint8(at) === 0xff) {
    const marker = view.getUint8(at + 1);
    // Fill bytes may stand before a marker; 01 and D0 to D7 stand alone.
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd7)) at += 2;
    else if (marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc) {
      return { type: 'image/jpeg', width: view.getUint16(at + 7), height: view.getUint16(at + 5) };
    } else if (marker === 0xd9 || marker === 0xda) return null;
    else at += 2 + view.getUint16(at + 2);
  }
  return null;
}

function webpHead(view: DataView): PictureHead | null {
  const type = 'image/webp';
  switch (text(view, 12)) {
    case 'VP8 ':
      return {
        type,
        width: view.getUint16(26, true) & 0x3fff,
        height: view.getUint16(28, true) & 0x3fff,
      };
    case 'VP8L': {
      const bits = view.getUint32(21, true);
      return { type, width: (bits & 0x3fff) + 1, height: ((bits >>> 14) & 0x3fff) + 1 };
    }
    case 'VP8X': {
      const three = (at: number) => view.getUint16(at, true) + (view.getUint8(at + 2) << 16) + 1;
      return { type, width: three(24), height: three(27) };
    }
    default:
      return null;
  }
}
