import { wrap } from 'comlink';
import { scale } from '../../geometry/point.ts';
import { boxOfPoints, quadThrough } from '../../geometry/ring.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Photo } from '../state/photo.ts';
import { PLAIN_ROOM } from '../state/photo.ts';
import { type Homography, homographyOf } from './homography.ts';
import { faceQuad, type Size } from './placing.ts';
import type { WarpWork } from './warpWorker.ts';

/** Where a face of so many pixels comes to lie in a photo of another size; null where three corners are in line. */
export function placeInPhoto(
  { placing, image }: Pick<Photo, 'placing'> & { readonly image: Size },
  size: Size,
  face: Size,
): { readonly toFace: Homography; readonly around: Box } | null {
  const k = size.width / image.width;
  const quad = quadThrough(placing.quad, (p) => scale(p, k));
  const toFace = homographyOf(quad, faceQuad(face.width, face.height));
  if (!toFace) return null;
  const box = boxOfPoints(quad);
  const [x, y] = [Math.max(0, Math.floor(box.x)), Math.max(0, Math.floor(box.y))];
  const w = Math.min(size.width, Math.ceil(box.x + box.w)) - x;
  const h = Math.min(size.height, Math.ceil(box.y + box.h)) - y;
  return w > 0 && h > 0 ? { toFace, around: { x, y, w, h } } : null;
}

/** The photo with the face in it, its longest side so many pixels at the most; null where its corners make no face. */
export async function layIn(
  photo: Photo,
  face: ImageBitmap,
  most: number,
  signal: AbortSignal,
): Promise<ImageBitmap | null> {
  const { image } = photo;
  const k = Math.min(1, most / Math.max(image.width, image.height));
  const size = { width: Math.round(image.width * k), height: Math.round(image.height * k) };
  const place = placeInPhoto(photo, size, face);
  if (!place) return null;
  const worker = new Worker(new URL('./warpWorker.ts', import.meta.url), { type: 'module' });
  const end = () => worker.terminate();
  signal.addEventListener('abort', end);
  try {
    return await wrap<WarpWork>(worker).layIn(
      image,
      face,
      size,
      place.toFace,
      place.around,
      photo.room ?? PLAIN_ROOM,
    );
  } finally {
    signal.removeEventListener('abort', end);
    end();
  }
}
