import { useEffect, useState } from 'react';
import type { Design } from '../../design/schema.ts';
import { bytesOfBase64 } from '../../plan/base64.ts';
import { decodePicture } from './decode.ts';

type Images = ReadonlyMap<string, ImageBitmap>;

const NONE: Images = new Map();

/** The photos of a design as pictures for the screen, by their ids, each as soon as it is decoded. */
export function usePhotoImages(photos: Design['photos']): Images {
  const [found, setFound] = useState(NONE);
  useEffect(() => {
    let gone = false;
    setFound(NONE);
    for (const { id, type, data } of photos ?? []) {
      const file = new Blob([bytesOfBase64(data) as BlobPart], { type });
      void decodePicture(file)
        .then((image) => {
          if (!gone) setFound((before) => new Map(before).set(id, image));
        })
        // A damaged one is told by a check.
        .catch(() => undefined);
    }
    return () => {
      gone = true;
    };
  }, [photos]);
  return found;
}
