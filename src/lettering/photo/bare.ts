import type { Photo } from '../../design/schema.ts';
import { bareJpeg, readJpeg } from './jpeg.ts';
import { barePng, readPng } from './png.ts';

/** A photo's file without what is written in it besides the picture; null where it is none. */
export function barePhoto(bytes: Uint8Array, type: Photo['type']): Uint8Array | null {
  if (type === 'image/png') {
    const png = readPng(bytes);
    return png && barePng(bytes, png);
  }
  const jpeg = readJpeg(bytes);
  return jpeg && bareJpeg(bytes, jpeg);
}
