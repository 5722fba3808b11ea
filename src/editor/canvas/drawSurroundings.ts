import type { Face } from '../../bed/face.ts';
import type { Design } from '../../design/schema.ts';
import { inches } from '../../measure/units.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Pen } from '../drawing/pen.ts';
import { toFace, toScreen, type View } from '../state/store.ts';

export interface SurroundingsLook {
  readonly view: View;
  readonly width: number;
  readonly height: number;
  readonly face: Face;
  readonly bed: Design['bed'];
  readonly unit: Design['measure']['unit'];
  readonly palette: Palette;
}

/** The paper around the face: its grid, the floor under the bed, and the shadow the whole bed throws on it. */
export function drawSurroundings(ctx: Pen, look: SurroundingsLook): void {
  const { view, width, height, face, bed, palette } = look;
  ctx.fillStyle = palette.desk;
  ctx.fillRect(0, 0, width, height);
  grid(ctx, look);
  const floor = Math.round(toScreen(view, { x: 0, y: bed.pivot.aboveEdge - bed.pivot.height }).y) + 0.5;
  const left = toScreen(view, { x: -face.width * 0.32, y: 0 }).x;
  const right = toScreen(view, { x: face.width * 1.32, y: 0 }).x;
  ctx.strokeStyle = palette.floor;
  ctx.lineWidth = 2;
  ctx.beginPath();
  ctx.moveTo(left, floor);
  ctx.lineTo(right, floor);
  ctx.stroke();
  ctx.lineWidth = 1;
  ctx.beginPath();
  for (let x = left; x < right; x += 12) {
    ctx.moveTo(x + 8, floor + 1);
    ctx.lineTo(x, floor + 9);
  }
  ctx.stroke();
  const a = toScreen(view, { x: 0, y: face.height });
  ctx.fillStyle = palette.cast;
  ctx.globalAlpha = 0.16;
  ctx.fillRect(a.x + 6, a.y + 6, face.width * view.scale, face.height * view.scale);
  ctx.globalAlpha = 1;
}

/** Squares of an inch or a centimeter, and of a foot or ten centimeters, as far as they can be told apart. */
function grid(ctx: Pen, { view, width, height, unit, palette }: SurroundingsLook): void {
  const metric = unit === 'mm' || unit === 'cm';
  const fine = metric ? 10 : inches(1);
  const coarse = metric ? 100 : inches(6);
  const low = toFace(view, { x: 0, y: height });
  const high = toFace(view, { x: width, y: 0 });
  for (const [step, color] of [
    [fine, palette.grid],
    [coarse, palette['grid-strong']],
  ] as const) {
    if (step * view.scale < 7) continue;
    ctx.strokeStyle = color;
    ctx.lineWidth = 1;
    ctx.beginPath();
    for (let n = Math.ceil(low.x / step); n * step < high.x; n++) {
      const x = Math.round(view.x + n * step * view.scale) + 0.5;
      ctx.moveTo(x, 0);
      ctx.lineTo(x, height);
    }
    for (let n = Math.ceil(low.y / step); n * step < high.y; n++) {
      const y = Math.round(view.y - n * step * view.scale) + 0.5;
      ctx.moveTo(0, y);
      ctx.lineTo(width, y);
    }
    ctx.stroke();
  }
}
