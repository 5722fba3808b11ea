import type { ShadowArea } from '../../finish/shadow.ts';
import { traceRegion } from './trace.ts';

/** Shadows on what is seen; they lie beside each other, so one tint over all of them is right. */
export function drawShadows(ctx: CanvasRenderingContext2D, areas: readonly ShadowArea[]): void {
  ctx.beginPath();
  for (const area of areas) traceRegion(ctx, area.region);
  ctx.fillStyle = '#0d0a14';
  ctx.globalAlpha = 0.46;
  ctx.fill('evenodd');
  ctx.globalAlpha = 1;
}
