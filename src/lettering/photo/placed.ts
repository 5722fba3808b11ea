import type { LyingPhoto, Photo } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** A photo in place on its sign, in the sign's coordinates. */
export interface PlacedPhoto {
  readonly photo: Photo;
  /** All of it. */
  readonly frame: Box;
  /** What is left of it once its sides are cut off; the board with its bleed ends it besides. */
  readonly shown: Box;
  /** Pixels to an inch on the paper. */
  readonly dpi: number;
}

/**
 * Fewer pixels to an inch than this look coarse. Common practice asks for 150 at arm's length and 300 in the hand; it is
 * also what an eye that tells a minute of arc apart (20/20) sees of paper 23 in off: 1 / (23 in times tan 1') = 149.5.
 */
export const LEAST_DPI = 150;

const WHOLE = { left: 0, right: 0, bottom: 0, top: 0 } as const;
const INCH: Mm = 25.4;

/** Shares of a photo that two opposite cuts leave: at least a hundredth, however they were set. */
const left = (a: number, b: number): number => Math.max(0.01, 1 - a - b);

/** A photo as it lies on a board of some box: its scale by how it fits, its place by what is shown of it. */
export function placedPhoto(
  photo: Photo,
  { fit, width, crop = WHOLE, shift }: LyingPhoto,
  board: Box,
  { bleed, margin }: { readonly bleed: Mm; readonly margin: Mm },
): PlacedPhoto {
  const cut = {
    w: photo.width * left(crop.left, crop.right),
    h: photo.height * left(crop.bottom, crop.top),
  };
  const by = (beyond: Mm) => [(board.w + 2 * beyond) / cut.w, (board.h + 2 * beyond) / cut.h] as const;
  const inside = Math.min(...by(-margin));
  /** Millimeters that a pixel takes, by the way it fits. A margin that leaves no room is none. */
  const k = {
    sized: width / photo.width,
    cover: Math.max(...by(bleed)),
    inside: inside > 0 ? inside : Math.min(...by(0)),
  }[fit];
  const [w, h] = [cut.w * k, cut.h * k];
  // What covers is moved no farther than it still does.
  const far = (over: Mm, to: Mm) => (fit === 'cover' ? Math.min(over / 2, Math.max(-over / 2, to)) : to);
  const shown = {
    x: board.x + (board.w - w) / 2 + far(w - board.w - 2 * bleed, shift.x),
    y: board.y + (board.h - h) / 2 + far(h - board.h - 2 * bleed, shift.y),
    ...{ w, h },
  };
  const frame = {
    x: shown.x - crop.left * photo.width * k,
    y: shown.y - crop.bottom * photo.height * k,
    w: photo.width * k,
    h: photo.height * k,
  };
  return { photo, frame, shown, dpi: INCH / k };
}
