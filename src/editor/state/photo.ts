import type { Point, Quad } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** How a photo lies on the face. Points of the picture are pixels, x right, y down. */
export interface Placing {
  /** Of its lower left corner on the face. */
  readonly at: Point;
  /** Millimeters that a pixel covers. */
  readonly scale: Mm;
  /** Two points of the picture that a known length lies between. */
  readonly marks: readonly [Point, Point];
  /** Where the picture shows the bed's corners: lower left, lower right, upper right, upper left. */
  readonly quad: Quad;
  /** Shown as seen squarely from the front, by those corners. */
  readonly straight: boolean;
}

/** How a face is laid into the photo: its light, and what stands before it. */
export interface InRoom {
  /** As shares of how it looks by itself. */
  readonly brightness: number;
  /** -1 as blue as it gets, 1 as yellow. */
  readonly warmth: number;
  /** Around what of the photo stands before the bed, pixels of the picture. */
  readonly before: readonly (readonly Point[])[];
}

export const PLAIN_ROOM: InRoom = { brightness: 1, warmth: 0, before: [] };

/** A photo under the drawing. It belongs to the device, not to the design. */
export interface Photo {
  readonly file: Blob;
  readonly image: ImageBitmap;
  readonly placing: Placing;
  /** Absent: the face was never laid into it. */
  readonly room?: InRoom;
  /** 0 to 1. */
  readonly opacity: number;
  readonly shown: boolean;
  /** Not to be moved by hand. */
  readonly locked: boolean;
}

/** What the hand does with the photo: nothing, carry it, set its two marks, or its four corners. */
export type PhotoMode = 'rest' | 'move' | 'scale' | 'straighten';
