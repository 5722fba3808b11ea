import type { Placing } from './placing.ts';

/** A photo under the drawing. It belongs to the device, not to the design. */
export interface Photo {
  readonly file: Blob;
  readonly image: ImageBitmap;
  readonly placing: Placing;
  /** 0 to 1. */
  readonly opacity: number;
  readonly shown: boolean;
  /** Not to be moved by hand. */
  readonly locked: boolean;
}

/** What the hand does with the photo: nothing, carry it, set its two marks, or its four corners. */
export type PhotoMode = 'rest' | 'move' | 'scale' | 'straighten';
