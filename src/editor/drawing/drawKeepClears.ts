import type { KeepClear } from '../../bed/bed.ts';
import { strokeHaloed } from './haloed.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** From line to line of the hatching, along the edge, in pixels: halos leave more than half of the face in sight. */
const HATCH = 16;

/** What must stay free, hatched as on a drawing. */
export function drawKeepClears(ctx: Pen, items: readonly KeepClear[], palette: Palette, scale: number): void {
  for (const { box } of items) {
    ctx.save();
    ctx.beginPath();
    ctx.rect(box.x, box.y, box.w, box.h);
    ctx.clip();
    ctx.beginPath();
    const step = HATCH / scale;
    for (let d = -box.h; d < box.w; d += step) {
      ctx.moveTo(box.x + d, box.y);
      ctx.lineTo(box.x + d + box.h, box.y + box.h);
    }
    strokeHaloed(ctx, palette, { color: palette.bad, width: 1, px: 1 / scale });
    // Half of the line is clipped away.
    ctx.beginPath();
    ctx.rect(box.x, box.y, box.w, box.h);
    strokeHaloed(ctx, palette, { color: palette.bad, width: 3, dash: [6, 4], px: 1 / scale });
    ctx.restore();
  }
}
