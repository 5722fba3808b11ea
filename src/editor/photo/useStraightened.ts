import { wrap } from 'comlink';
import { useEffect, useState } from 'react';
import type { Face } from '../../bed/face.ts';
import type { Photo } from '../state/photo.ts';
import { homographyOf } from './homography.ts';
import { faceQuad } from './placing.ts';
import type { WarpWork } from './warpWorker.ts';

/** Longest side of the straightened picture, in pixels. */
const LONGEST = 1600;

/** The photo as seen squarely, one pixel grid over the face; null while it is made and where it is not wanted. */
export function useStraightened(photo: Photo | null, face: Face): ImageBitmap | null {
  const [made, setMade] = useState<{ readonly key: string; readonly image: ImageBitmap } | null>(null);
  const wanted = photo?.placing.straight === true;
  const image = wanted ? photo.image : null;
  const quad = wanted ? photo.placing.quad : null;
  const key = JSON.stringify([quad, face.width, face.height]);
  useEffect(() => {
    if (!image || !quad) return;
    const share = LONGEST / Math.max(face.width, face.height);
    const width = Math.round(face.width * share);
    const height = Math.round(face.height * share);
    const toSource = homographyOf(faceQuad(width, height), quad);
    if (!toSource) return;
    const worker = new Worker(new URL('./warpWorker.ts', import.meta.url), { type: 'module' });
    void wrap<WarpWork>(worker)
      .warp(image, toSource, width, height)
      .then((picture) => setMade({ key, image: picture }))
      .catch(() => undefined)
      .finally(() => worker.terminate());
    return () => worker.terminate();
  }, [image, quad, face.width, face.height, key]);
  return wanted && made?.key === key ? made.image : null;
}
