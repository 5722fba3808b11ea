import { expose, transfer } from 'comlink';
import type { Box } from '../../geometry/shape.ts';
import type { InRoom } from '../state/photo.ts';
import type { Homography } from './homography.ts';
import type { Size } from './placing.ts';
import { litPixels, warpedPixels } from './warp.ts';

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

  /**
   * The face laid into a photo, as large as the photo is told to be: by the map from the photo's pixels to the face's,
   * in the light of the room, behind what stands before it.
   */
  layIn(
    photo: ImageBitmap,
    face: ImageBitmap,
    size: Size,
    toFace: Homography,
    around: Box,
    room: InRoom,
  ): ImageBitmap {
    const sheet = new OffscreenCanvas(size.width, size.height);
    const out = sheet.getContext('2d');
    const pen = new OffscreenCanvas(face.width, face.height).getContext('2d');
    if (!out || !pen) throw new Error('no canvas here');
    const k = size.width / photo.width;
    out.drawImage(photo, 0, 0, size.width, size.height);
    pen.drawImage(face, 0, 0);
    const lit = litPixels(pen.getImageData(0, 0, face.width, face.height), room);
    const warped = warpedPixels(lit, toFace, around.w, around.h, around);
    const laid = new OffscreenCanvas(around.w, around.h);
    laid.getContext('2d')?.putImageData(new ImageData(warped.data, around.w, around.h), 0, 0);
    out.drawImage(laid, around.x, around.y);
    for (const ring of room.before) {
      out.save();
      out.beginPath();
      for (const { x, y } of ring) out.lineTo(x * k, y * k);
      out.clip();
      out.drawImage(photo, 0, 0, size.width, size.height);
      out.restore();
    }
    const made = sheet.transferToImageBitmap();
    return transfer(made, [made]);
  },
};

export type WarpWork = typeof work;

expose(work);
