import type { ShadowArea } from '../../finish/shadow.ts';
import type { Pen } from './pen.ts';
import { traceRegion } from './trace.ts';

/** Shadows on what is seen; they lie beside each other, so one tint over all of them is right. */
export function drawShadows(ctx: Pen, areas: readonly ShadowArea[]): void {
  ctx.beginPath();
  for (const area of areas) traceRegion(ctx, area.region);
  ctx.fillStyle = '#0d0a14';
  ctx.globalAlpha = 0.46;
  ctx.fill('evenodd');
  ctx.globalAlpha = 1;
}
