import type { Box } from '../../geometry/shape.ts';
import { type Pen, type Picture, pictureOf } from './pen.ts';
import { drawTicks, RULER, type RulerLook } from './ticks.ts';

/** The marks of both rulers as pictures: their text is slow to set and changes with the view only. */
interface Kept {
  readonly look: RulerLook;
  readonly top: Picture;
  readonly side: Picture;
}

/** Draws rulers, with the extent of the selection marked on both; it keeps what it need not set again. */
export function rulerPainter() {
  let kept: Kept | null = null;
  return (ctx: Pen, look: RulerLook, marked: Box | null, ratio: number): void => {
    if (!kept || kept.top.ratio !== ratio || !sameLook(kept.look, look)) {
      const band = (width: number, height: number, earlier?: Picture) =>
        pictureOf({ width, height }, ratio, (pen) => drawTicks(pen, look), earlier);
      kept = {
        look,
        top: band(look.width, RULER + 1, kept?.top),
        side: band(RULER + 1, look.height, kept?.side),
      };
    }
    const { view, width, height, palette } = look;
    ctx.fillStyle = palette.sheet;
    ctx.fillRect(0, 0, width, RULER);
    ctx.fillRect(0, 0, RULER, height);
    if (marked) {
      ctx.fillStyle = palette['pencil-soft'];
      ctx.fillRect(view.x + marked.x * view.scale, 0, marked.w * view.scale, RULER);
      ctx.fillRect(0, view.y - (marked.y + marked.h) * view.scale, RULER, marked.h * view.scale);
    }
    for (const { canvas } of [kept.side, kept.top])
      ctx.drawImage(canvas, 0, 0, canvas.width / ratio, canvas.height / ratio);
  };
}

const sameLook = (a: RulerLook, b: RulerLook): boolean =>
  a.view === b.view &&
  a.width === b.width &&
  a.height === b.height &&
  a.unit === b.unit &&
  a.palette === b.palette;
