import { drawFaceLevels } from '../drawing/drawFaceLevels.ts';
import { type Pen, type Picture, pictureOf } from '../drawing/pen.ts';
import type { Photo, PhotoMode } from '../state/photo.ts';
import { drawSurroundings, type SurroundingsLook } from './drawSurroundings.ts';

/** What lies under the parts. */
export interface GroundLook extends SurroundingsLook {
  readonly photo: Photo | null;
  readonly photoMode: PhotoMode;
  /** The photo as seen squarely, once it is made. */
  readonly straightened: ImageBitmap | null;
}

/**
 * Grid, bed and photo as one picture, drawn when its look is another: where a part moved, what lay beneath it is put
 * back from here. The same picture comes while nothing of it changes.
 */
export function groundPainter() {
  let kept: { readonly look: GroundLook; readonly picture: Picture } | null = null;
  return (look: GroundLook, ratio: number): Picture => {
    if (kept?.look !== look || kept.picture.ratio !== ratio)
      kept = { look, picture: pictureOf(look, ratio, (pen) => drawGround(pen, look), kept?.picture) };
    return kept.picture;
  };
}

function drawGround(ctx: Pen, look: GroundLook): void {
  const { view, face, palette, photo } = look;
  drawSurroundings(ctx, look);
  ctx.save();
  ctx.translate(view.x, view.y);
  ctx.scale(view.scale, -view.scale);
  drawFaceLevels(ctx, face, palette, view.scale);
  if (photo?.shown) drawPhoto(ctx, photo, look);
  ctx.restore();
}

/** The photo under the drawing, in the coordinates of the face; while it is being set it shows as it was taken. */
function drawPhoto(
  ctx: Pen,
  { image, placing, opacity }: Photo,
  { photoMode, straightened, face }: GroundLook,
): void {
  ctx.save();
  ctx.globalAlpha = opacity;
  // The face counts up, pictures count down.
  ctx.scale(1, -1);
  if (straightened && photoMode === 'rest')
    ctx.drawImage(straightened, 0, -face.height, face.width, face.height);
  else {
    const { at, scale } = placing;
    const height = image.height * scale;
    ctx.drawImage(image, at.x, -at.y - height, image.width * scale, height);
  }
  ctx.restore();
}
