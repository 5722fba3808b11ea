import { expose, transfer } from 'comlink';
import type { Homography } from './homography.ts';
import { warpedPixels } from './warp.ts';

/** Straightens pictures away from the drawing. */
const work = {
  warp(image: ImageBitmap, toSource: Homography, width: number, height: number): ImageBitmap {
    const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
    const sheet = new OffscreenCanvas(width, height);
    const out = sheet.getContext('2d');
    if (!pen || !out) throw new Error('no canvas here');
    pen.drawImage(image, 0, 0);
    const warped = warpedPixels(pen.getImageData(0, 0, image.width, image.height), toSource, width, height);
    out.putImageData(new ImageData(warped.data, width, height), 0, 0);
    const made = sheet.transferToImageBitmap();
    return transfer(made, [made]);
  },
};

export type WarpWork = typeof work;

expose(work);
