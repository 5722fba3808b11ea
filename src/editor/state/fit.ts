import type { Face } from '../../bed/face.ts';
import type { Design } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { View } from './store.ts';
import { fittedView, type Margins } from './zoom.ts';

/** The drawing's own size, and what lies over it: tools and the like, all in its pixels. */
export interface Shown {
  readonly width: number;
  readonly height: number;
  readonly covers: readonly Box[];
}

/** Room for rulers and dimensions around what is shown, in pixels. */
function roomFor({ width, height }: Shown): Margins {
  if (height < 420) return { left: 40, right: 64, top: 36, bottom: 52 };
  return width < 560
    ? { left: 34, right: 52, top: 60, bottom: 58 }
    : { left: 60, right: 84, top: 60, bottom: 64 };
}

/** Between what covers the drawing and what is shown; above the face stand its dimensions. */
const BESIDE = 8;
const BENEATH = 30;
/** Of either side no more than this part is left free, however much covers it. */
const MOST = 0.4;

/** What is left free at each side: each cover is gone around at the side where that costs the least. */
function marginFor(shown: Shown): Margins {
  const { width, height } = shown;
  const margin = { ...roomFor(shown) };
  for (const { x, y, w, h } of shown.covers) {
    const ways = [
      { side: 'left', free: x + w + BESIDE, cost: (x + w) * height, most: width * MOST },
      { side: 'right', free: width - x + BESIDE, cost: (width - x) * height, most: width * MOST },
      { side: 'top', free: y + h + BENEATH, cost: (y + h) * width, most: height * MOST },
      { side: 'bottom', free: height - y + BESIDE, cost: (height - y) * width, most: height * MOST },
    ] as const;
    const way = ways.reduce((least, one) => (one.cost < least.cost ? one : least));
    margin[way.side] = Math.max(margin[way.side], Math.min(way.free, way.most));
  }
  return margin;
}

/** The view that shows the whole face with its dimensions, and the floor below it where there is room. */
export function fitToFace(face: Face, bed: Design['bed'], shown: Shown): View {
  const floor = Math.min(0, bed.pivot.aboveEdge - bed.pivot.height);
  const box = { x: 0, y: floor, w: face.width, h: face.height - floor };
  return fittedView(box, shown.width, shown.height, marginFor(shown));
}

/** The view that shows a box whole, such as a photo that reaches beyond the face. */
export const fitToBox = (box: Box, shown: Shown): View =>
  fittedView(box, shown.width, shown.height, marginFor(shown));
