import { toScreen, type View } from '../state/store.ts';
import { type Dimension, dimensionOnScreen } from './dimensions.ts';
import { drawPlate } from './figure.ts';
import type { Palette } from './palette.ts';

/** Dimension lines as drafted: thin, with a slash at each end and extension lines to what they measure. */
export function drawDimensions(
  ctx: CanvasRenderingContext2D,
  dimensions: readonly Dimension[],
  view: View,
  palette: Palette,
): void {
  for (const d of dimensions) {
    const { foot, from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
    ctx.strokeStyle = d.role === 'face' ? palette['ink-2'] : palette.pencil;
    ctx.lineWidth = d.role === 'gap' ? 1 : 1.25;
    ctx.setLineDash(d.role === 'gap' ? [4, 3] : []);
    ctx.beginPath();
    if (d.off !== 0) {
      const ext = d.axis === 'x' ? { x: 0, y: 5 } : { x: 5, y: 0 };
      const gap = d.axis === 'x' ? { x: 0, y: 3 } : { x: 3, y: 0 };
      for (const [f, e] of [
        [foot[0], from],
        [foot[1], to],
      ] as const) {
        ctx.moveTo(f.x + gap.x, f.y + gap.y);
        ctx.lineTo(e.x + ext.x, e.y + ext.y);
      }
    }
    ctx.moveTo(from.x, from.y);
    ctx.lineTo(to.x, to.y);
    ctx.stroke();
    ctx.setLineDash([]);
    ctx.lineWidth = 2;
    ctx.beginPath();
    for (const p of [from, to]) {
      ctx.moveTo(p.x - 4, p.y + 4);
      ctx.lineTo(p.x + 4, p.y - 4);
    }
    ctx.stroke();
  }
}

/**
 * Their figures, while something is dragged: labels of the page would have to be laid out anew in each frame.
 * They look alike.
 */
export function drawFigures(
  ctx: CanvasRenderingContext2D,
  dimensions: readonly Dimension[],
  view: View,
  palette: Palette,
  textOf: (d: Dimension) => string,
): void {
  const looks = {
    face: { fill: palette.desk, ink: palette['ink-2'] },
    gap: { fill: palette.sheet, ink: palette.pencil, edge: palette.pencil },
    size: { fill: palette.pencil, ink: palette['pencil-ink'] },
    rule: { fill: palette.pencil, ink: palette['pencil-ink'] },
  };
  for (const d of dimensions) {
    const { middle } = dimensionOnScreen(d, (p) => toScreen(view, p));
    drawPlate(ctx, { text: textOf(d), size: 14, ...looks[d.role] }, middle, 'middle');
  }
}
