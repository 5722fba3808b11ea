import type { Box } from '../../geometry/shape.ts';
import { drawTicks, RULER, type RulerLook } from './ticks.ts';

/** The marks of both rulers as pictures: their text is slow to set and changes with the view only. */
interface Kept {
  readonly look: RulerLook;
  readonly ratio: number;
  readonly top: HTMLCanvasElement;
  readonly side: HTMLCanvasElement;
}

/** Draws rulers, with the extent of the selection marked on both; it keeps what it need not set again. */
export function rulerPainter() {
  let kept: Kept | null = null;
  return (ctx: CanvasRenderingContext2D, look: RulerLook, marked: Box | null, ratio: number): void => {
    if (!kept || kept.ratio !== ratio || !sameLook(kept.look, look)) {
      const band = (w: number, h: number) => picture(w, h, ratio, (pen) => drawTicks(pen, look));
      kept = { look, ratio, top: band(look.width, RULER + 1), side: band(RULER + 1, look.height) };
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
    ctx.drawImage(kept.side, 0, 0, RULER + 1, height);
    ctx.drawImage(kept.top, 0, 0, width, RULER + 1);
  };
}

const sameLook = (a: RulerLook, b: RulerLook): boolean =>
  a.view === b.view &&
  a.width === b.width &&
  a.height === b.height &&
  a.unit === b.unit &&
  a.palette === b.palette;

function picture(
  width: number,
  height: number,
  ratio: number,
  draw: (pen: CanvasRenderingContext2D) => void,
): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = Math.ceil(width * ratio);
  canvas.height = Math.ceil(height * ratio);
  const pen = canvas.getContext('2d');
  if (pen) {
    pen.scale(canvas.width / width, canvas.height / height);
    draw(pen);
  }
  return canvas;
}
