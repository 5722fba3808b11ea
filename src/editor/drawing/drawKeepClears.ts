import type { KeepClear } from '../../bed/bed.ts';
import { strokeHaloed } from './haloed.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** What must stay free, hatched as on a drawing. */
export function drawKeepClears(ctx: Pen, items: readonly KeepClear[], palette: Palette, scale: number): void {
  for (const { box } of items) {
    ctx.save();
    ctx.beginPath();
    ctx.rect(box.x, box.y, box.w, box.h);
    ctx.fillStyle = palette.bad;
    ctx.globalAlpha = 0.12;
    ctx.fill();
    ctx.globalAlpha = 0.85;
    ctx.clip();
    ctx.beginPath();
    const step = 8 / scale;
    for (let d = -box.h; d < box.w; d += step) {
      ctx.moveTo(box.x + d, box.y);
      ctx.lineTo(box.x + d + box.h, box.y + box.h);
    }
    ctx.lineWidth = 1 / scale;
    ctx.strokeStyle = palette.bad;
    ctx.stroke();
    // Half of the line is clipped away.
    ctx.globalAlpha = 1;
    ctx.beginPath();
    ctx.rect(box.x, box.y, box.w, box.h);
    strokeHaloed(ctx, palette, { color: palette.bad, width: 3, dash: [6, 4], px: 1 / scale });
    ctx.restore();
  }
}
