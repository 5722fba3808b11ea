import { quadThrough } from '../../geometry/ring.ts';
import type { Point } from '../../geometry/shape.ts';
import { onFace, onPicture } from '../photo/placing.ts';
import type { Photo, Placing } from '../state/photo.ts';
import { type EditorStore, toScreen } from '../state/store.ts';
import type { Gesture, Touch } from './gesture.ts';

/** Reach of marks and corners in pixels. */
const REACH = { mouse: 12, finger: 24 } as const;

/** Points of the picture that the hand may pull in the photo's mode, on the face. */
export function photoHandles(photo: Photo, mode: 'move' | 'scale' | 'straighten'): Point[] {
  const { placing, image } = photo;
  const points = mode === 'scale' ? placing.marks : mode === 'straighten' ? placing.quad : [];
  return points.map((p) => onFace(placing, image, p));
}

/** Pulls a mark or corner of the photo; anywhere else it carries the photo. Escape brings it back. */
export function startPhoto(store: EditorStore, start: Touch): Gesture | null {
  const { photo: before, photoMode: mode, view } = store.getState();
  if (!before || mode === 'rest' || before.locked) return null;
  const reach = REACH[start.touch ? 'finger' : 'mouse'];
  const index = photoHandles(before, mode).findIndex((p) => {
    const px = toScreen(view, p);
    return Math.hypot(px.x - start.px.x, px.y - start.px.y) <= reach;
  });
  const { placing, image } = before;
  const put = (next: Placing) => {
    const { photo } = store.getState();
    if (photo) store.setState({ photo: { ...photo, placing: next } });
  };
  return {
    move: ({ face }) => {
      const by = { x: face.x - start.face.x, y: face.y - start.face.y };
      if (index < 0) return put({ ...placing, at: { x: placing.at.x + by.x, y: placing.at.y + by.y } });
      const moved = (p: Point, i: number): Point => {
        if (i !== index) return p;
        const was = onFace(placing, image, p);
        return within(onPicture(placing, image, { x: was.x + by.x, y: was.y + by.y }), image);
      };
      const [a, b] = placing.marks;
      if (mode === 'scale') put({ ...placing, marks: [moved(a, 0), moved(b, 1)] });
      else put({ ...placing, quad: quadThrough(placing.quad, moved) });
    },
    end: () => {},
    cancel: () => put(placing),
  };
}

const within = (p: Point, size: { readonly width: number; readonly height: number }): Point => ({
  x: Math.min(size.width, Math.max(0, p.x)),
  y: Math.min(size.height, Math.max(0, p.y)),
});
