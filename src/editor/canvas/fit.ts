import type { Face } from '../../bed/face.ts';
import type { Design } from '../../design/schema.ts';
import type { View } from '../state/store.ts';
import { fittedView } from './zoom.ts';

/** The view that shows the whole face with its dimensions, and the floor below it where there is room. */
export function fitToFace(face: Face, bed: Design['bed'], size: { width: number; height: number }): View {
  const small = size.width < 560;
  const low = size.height < 420;
  const margin = low
    ? { left: 40, right: 64, top: 36, bottom: 52 }
    : small
      ? { left: 34, right: 52, top: 92, bottom: 58 }
      : { left: 60, right: 84, top: 112, bottom: 64 };
  const floor = Math.min(0, bed.pivot.aboveEdge - bed.pivot.height);
  const box = { x: 0, y: floor, w: face.width, h: face.height - floor };
  return fittedView(box, size.width, size.height, margin);
}
