import { Shape } from 'react-konva';
import { toScreen, type View } from '../state/store.ts';
import { type Dimension, dimensionOnScreen } from './dimensions.ts';
import type { Palette } from './palette.ts';

/** Dimension lines as drafted: thin, with a slash at each end and extension lines to what they measure. */
export function DimensionLines(props: { dimensions: readonly Dimension[]; view: View; palette: Palette }) {
  const { dimensions, view, palette } = props;
  return (
    <Shape
      perfectDrawEnabled={false}
      sceneFunc={(konva) => {
        const ctx = konva._context;
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
      }}
    />
  );
}
