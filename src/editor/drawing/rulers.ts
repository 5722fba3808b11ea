import type { Box } from '../../geometry/shape.ts';
import { type Above, onPixels } from './paintParts.ts';
import { drawCut, type Pen, type Picture, pictureOf } from './pen.ts';
import { drawTicks, RULER, type RulerLook } from './ticks.ts';

/** The marks of both rulers as pictures: their text is slow to set and changes with the view only. */
interface Kept {
  readonly look: RulerLook;
  readonly top: Picture;
  readonly side: Picture;
}

/** Of both bands the line along them too. */
const BAND = RULER + 1;

/** Rulers, and how far the selection reaches on both; what need not be set again is kept. */
export interface Rulers {
  readonly bands: (look: RulerLook) => readonly Above[];
  /** Draws the reach of the selection beneath the ticks, on a pen that lies over the bands. */
  readonly mark: (ctx: Pen, look: RulerLook, marked: Box, ratio: number) => void;
}

export function rulerPainter(): Rulers {
  let kept: Kept | null = null;
  const ticksFor = (look: RulerLook, ratio: number): Kept => {
    if (!kept || kept.top.ratio !== ratio || !sameLook(kept.look, look)) {
      const band = (width: number, height: number, earlier?: Picture) =>
        pictureOf({ width, height }, ratio, (pen) => drawTicks(pen, look), earlier);
      kept = {
        look,
        top: band(look.width, BAND, kept?.top),
        side: band(BAND, look.height, kept?.side),
      };
    }
    return kept;
  };
  return {
    bands: (look) =>
      (['side', 'top'] as const).map((at) => {
        const box = { x: 0, y: 0, w: at === 'top' ? look.width : BAND, h: at === 'top' ? BAND : look.height };
        return {
          box,
          draw: (ctx, ratio) => {
            ctx.fillStyle = look.palette.sheet;
            ctx.fillRect(0, 0, at === 'top' ? box.w : RULER, at === 'top' ? RULER : box.h);
            const { canvas } = ticksFor(look, ratio)[at];
            ctx.drawImage(canvas, 0, 0, canvas.width / ratio, canvas.height / ratio);
          },
        };
      }),
    mark: (ctx, look, marked, ratio) => {
      const { view, palette } = look;
      const ticks = ticksFor(look, ratio);
      const [x, y] = [view.x + marked.x * view.scale, view.y - (marked.y + marked.h) * view.scale];
      const reaches = [
        { picture: ticks.side, reach: { x: 0, y, w: RULER, h: marked.h * view.scale } },
        { picture: ticks.top, reach: { x, y: 0, w: marked.w * view.scale, h: RULER } },
      ];
      for (const { picture, reach } of reaches) {
        // The band and its ticks anew, on whole pixels: nothing of the one beneath shines through.
        const { x, y, w, h } = onPixels(reach, ratio);
        ctx.fillStyle = palette.sheet;
        ctx.fillRect(x, y, w, h);
        ctx.fillStyle = palette['pencil-soft'];
        ctx.fillRect(reach.x, reach.y, reach.w, reach.h);
        drawCut(ctx, picture, { x, y, w, h });
      }
    },
  };
}

const sameLook = (a: RulerLook, b: RulerLook): boolean =>
  a.view === b.view &&
  a.width === b.width &&
  a.height === b.height &&
  a.unit === b.unit &&
  a.palette === b.palette;
