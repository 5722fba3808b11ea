import { MOST_PHOTO_PIXELS } from '../../design/limits.ts';
import type { Photo } from '../../design/schema.ts';
import { unfoldedLength } from '../font/inflate.ts';
import { readJpeg } from './jpeg.ts';
import { type Png, readPng, rowBytesOf } from './png.ts';

/**
 * Why bytes are no photo that can be printed as they are. `damaged`: cut off, or not what they say; `kind`: of a kind that
 * has to be redrawn first, such as one with four inks, or held sideways.
 */
export type PhotoFault = 'damaged' | 'kind' | 'too-many-pixels';

/** Whether a photo is what it says and can be taken over as it is, by its structure: what is seen is not looked at. */
export function faultOf(
  bytes: Uint8Array,
  told: Pick<Photo, 'type' | 'width' | 'height'>,
): PhotoFault | null {
  const read = told.type === 'image/png' ? readPng(bytes) : readJpeg(bytes);
  if (!read || read.width !== told.width || read.height !== told.height) return 'damaged';
  if (read.width === 0 || read.height === 0) return 'damaged';
  if (read.width * read.height > MOST_PHOTO_PIXELS) return 'too-many-pixels';
  if ('packed' in read) return read.moves ? 'kind' : unfolds(read) ? null : 'damaged';
  const { process, precision, components, orientation } = read;
  const plain = process <= 2 && precision === 8 && (components === 1 || components === 3);
  return plain && orientation === 1 ? null : 'kind';
}

/** Whether the pixels of a PNG are there, each row of them, and no more. A zlib stream has 2 bytes before them and 4 behind. */
function unfolds(png: Png): boolean {
  const size = rowBytesOf(png);
  try {
    return unfoldedLength(png.packed.subarray(2, -4), size) === size;
  } catch {
    return false;
  }
}
