import type { Box, Point } from '../../geometry/shape.ts';
import { LEAST_SCALE, MOST_SCALE, type View } from './store.ts';

/** The view enlarged by a factor, with the face under a pixel kept under it. */
export function zoomedAt(view: View, px: Point, factor: number): View {
  const scale = Math.min(MOST_SCALE, Math.max(LEAST_SCALE, view.scale * factor));
  const k = scale / view.scale;
  return { scale, x: px.x - (px.x - view.x) * k, y: px.y - (px.y - view.y) * k };
}

export interface Margins {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The view that shows a box whole, centered between margins. */
export function fittedView(box: Box, width: number, height: number, margin: Margins): View {
  const w = Math.max(40, width - margin.left - margin.right);
  const h = Math.max(40, height - margin.top - margin.bottom);
  const scale = Math.min(w / box.w, h / box.h);
  return {
    scale,
    x: margin.left + (w - box.w * scale) / 2 - box.x * scale,
    y: margin.top + (h + box.h * scale) / 2 + box.y * scale,
  };
}
