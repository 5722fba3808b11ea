import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** How far the halo of a line stands out at each side, in pixels. */
export const HALO = 1.5;

/** How a line that lies over the drawing is drawn: widths and dashes in pixels. */
export interface Stroke {
  readonly color: string;
  readonly width: number;
  readonly dash?: readonly number[];
  /** Units of the context to a pixel; one where nothing else is said. */
  readonly px?: number;
}

/**
 * Strokes the path in hand over the drawing, on a halo without gaps. Line and halo stand at least 9 to 1 against each
 * other, so that one of them stands at least 3 to 1 against any color of paint (WCAG 2.2, 1.4.11): ratios multiply.
 */
export function strokeHaloed(ctx: Pen, palette: Palette, { color, width, dash = [], px = 1 }: Stroke): void {
  ctx.setLineDash([]);
  ctx.strokeStyle = palette.halo;
  ctx.lineWidth = (width + 2 * HALO) * px;
  ctx.stroke();
  ctx.setLineDash(dash.map((length) => length * px));
  ctx.strokeStyle = color;
  ctx.lineWidth = width * px;
  ctx.stroke();
  ctx.setLineDash([]);
}
