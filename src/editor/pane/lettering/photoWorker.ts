import { expose } from 'comlink';
import { MOST_PHOTO, MOST_PHOTO_PIXELS } from '../../../design/limits.ts';
import type { Photo } from '../../../design/schema.ts';
import { barePhoto } from '../../../lettering/photo/bare.ts';
import { faultOf } from '../../../lettering/photo/fault.ts';
import type { PictureHead } from '../../../lettering/photo/head.ts';
import { at } from '../../../list/at.ts';
import { base64Of } from '../../../plan/base64.ts';

/** A photo as a design keeps it. */
export interface ReadPhoto extends Pick<Photo, 'type' | 'width' | 'height' | 'data'> {
  /** It has fewer pixels than its file. */
  readonly smaller: boolean;
}

const QUALITY = [0.92, 0.85, 0.75] as const;
/** Each time that a photo is still too large, its sides are made so much shorter. */
const SHORTER = 0.8;

/** Opens photos apart from everything else: whatever is in the file, the page and the plan go on. */
const work = {
  /**
   * The photo of a file. JPEG and PNG that print as they are stay as they are, without what else is written in them; others
   * are redrawn upright. Rejects what does not decode to its end.
   */
  async read(file: Blob, { type }: PictureHead): Promise<ReadPhoto> {
    const image = await createImageBitmap(file);
    const { width, height } = image;
    if (type !== 'image/webp') {
      // Browsers draw what they have of a file that is cut off.
      const bare = barePhoto(new Uint8Array(await file.arrayBuffer()), type);
      if (!bare) throw new Error('the photo is damaged');
      const kept = keptAs(bare, { type, width, height });
      if (kept) return { ...kept, smaller: false };
    }
    const clear = type !== 'image/jpeg' && hasClearPixels(image);
    const into = clear ? 'image/png' : 'image/jpeg';
    let share = Math.min(1, Math.sqrt(MOST_PHOTO_PIXELS / (width * height)));
    for (;;) {
      const drawn = onCanvas(image, share);
      for (const quality of clear ? [1] : QUALITY) {
        const blob = await drawn.convertToBlob({ type: into, quality });
        const size = { type: into, width: drawn.width, height: drawn.height } as const;
        const kept = keptAs(new Uint8Array(await blob.arrayBuffer()), size);
        if (kept) return { ...kept, smaller: share < 1 };
      }
      if (drawn.width * drawn.height < 10_000) throw new Error('the photo does not get small enough');
      share *= SHORTER;
    }
  },
};

/** Bytes as a design keeps them; null where they are too many, or cannot be printed as they are. */
function keptAs(bytes: Uint8Array, size: Pick<Photo, 'type' | 'width' | 'height'>) {
  const bare = barePhoto(bytes, size.type);
  if (!bare || Math.ceil(bare.length / 3) * 4 > MOST_PHOTO || faultOf(bare, size) !== null) return null;
  return { ...size, data: base64Of(bare) };
}

function onCanvas(image: ImageBitmap, share: number): OffscreenCanvas {
  const [w, h] = [image.width, image.height].map((side) => Math.max(1, Math.floor(side * share))) as [
    number,
    number,
  ];
  const canvas = new OffscreenCanvas(w, h);
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('no canvas here');
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(image, 0, 0, w, h);
  return canvas;
}

/** Whether paper shows through somewhere; looked for on a smaller copy, which blends what is clear into its pixels. */
function hasClearPixels(image: ImageBitmap): boolean {
  const canvas = onCanvas(image, Math.min(1, 1000 / Math.max(image.width, image.height)));
  const pen = canvas.getContext('2d');
  const { data } = pen ? pen.getImageData(0, 0, canvas.width, canvas.height) : { data: [] };
  for (let i = 3; i < data.length; i += 4) if (at(data, i) < 250) return true;
  return false;
}

export type PhotoWork = typeof work;

expose(work);
