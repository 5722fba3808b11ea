import { grownBox } from '../../geometry/box.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import { toScreen, type View } from '../state/store.ts';
import { type Dimension, dimensionOnScreen } from './dimensions.ts';
import { drawPlates } from './figure.ts';
import { strokeHaloed } from './haloed.ts';
import type { Above } from './paintParts.ts';
import type { Palette } from './palette.ts';
import type { Pen } from './pen.ts';

/** Dimension lines as drafted: thin, with a slash at each end and extension lines to what they measure. */
export function drawDimensions(
  ctx: Pen,
  dimensions: readonly Dimension[],
  view: View,
  palette: Palette,
): void {
  for (const d of dimensions) {
    const { foot, from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
    const color = d.role === 'face' ? palette.ink : palette.over;
    ctx.beginPath();
    if (d.off !== 0) {
      const out = Math.sign(d.off);
      const ext = d.axis === 'x' ? { x: 0, y: 5 * out } : { x: 5 * out, y: 0 };
      const gap = d.axis === 'x' ? { x: 0, y: 3 * out } : { x: 3 * out, y: 0 };
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
    const line = d.role === 'gap' ? { width: 1, dash: [4, 3] } : { width: 1.25 };
    strokeHaloed(ctx, palette, { color, ...line });
    ctx.beginPath();
    for (const p of [from, to]) {
      ctx.moveTo(p.x - 4, p.y + 4);
      ctx.lineTo(p.x + 4, p.y - 4);
    }
    strokeHaloed(ctx, palette, { color, width: 2 });
  }
}

/** More than lines, slashes and halos reach beyond the ends of a dimension, in pixels. */
const REACH = 9;

/** Dimensions that stay while parts move, such as those of the face. */
export const dimensionsAbove = (
  dimensions: readonly Dimension[],
  view: View,
  palette: Palette,
): readonly Above[] =>
  dimensions.map((d) => {
    const { foot, from, to } = dimensionOnScreen(d, (p) => toScreen(view, p));
    return {
      box: grownBox(boxOfPoints([...foot, from, to]), REACH),
      draw: (ctx) => drawDimensions(ctx, [d], view, palette),
    };
  });

/**
 * Their figures, while something is dragged: labels of the page would have to be laid out anew in each frame.
 * They look alike.
 */
export function drawFigures(
  ctx: Pen,
  dimensions: readonly Dimension[],
  view: View,
  palette: Palette,
  textOf: (d: Dimension) => string,
): void {
  const { halo } = palette;
  const looks = {
    face: { fill: palette.desk, ink: palette.ink },
    gap: { fill: palette.halo, ink: palette.over, edge: palette.over, halo },
    size: { fill: palette.over, ink: palette.halo, halo },
    rule: { fill: palette.over, ink: palette.halo, halo },
  };
  drawPlates(
    ctx,
    dimensions.map((d) => ({
      ...{ text: textOf(d), size: 14, ...looks[d.role] },
      ...{ at: dimensionOnScreen(d, (p) => toScreen(view, p)).middle, anchor: 'middle' },
    })),
  );
}
