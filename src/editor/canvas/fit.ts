import type { Face } from '../../bed/face.ts';
import type { Design } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { View } from '../state/store.ts';
import { fittedView, type Margins } from './zoom.ts';

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Room for rulers, tools and dimensions around what is shown, in pixels. */
function marginFor(size: Size): Margins {
  const small = size.width < 560;
  const low = size.height < 420;
  return low
    ? { left: 40, right: 64, top: 36, bottom: 52 }
    : small
      ? { left: 34, right: 52, top: 92, bottom: 58 }
      : { left: 60, right: 84, top: 112, bottom: 64 };
}

/** The view that shows the whole face with its dimensions, and the floor below it where there is room. */
export function fitToFace(face: Face, bed: Design['bed'], size: Size): View {
  const floor = Math.min(0, bed.pivot.aboveEdge - bed.pivot.height);
  const box = { x: 0, y: floor, w: face.width, h: face.height - floor };
  return fittedView(box, size.width, size.height, marginFor(size));
}

/** The view that shows a box whole, such as a photo that reaches beyond the face. */
export const fitToBox = (box: Box, size: Size): View =>
  fittedView(box, size.width, size.height, marginFor(size));
