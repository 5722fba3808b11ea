import { distance, midpoint } from '../../geometry/point.ts';
import type { Point } from '../../geometry/shape.ts';
import type { EditorStore } from '../state/store.ts';
import { zoomedAt } from '../state/zoom.ts';

/** Two fingers: the points of the face under them stay under them. */
export function startPinch(store: EditorStore, a: Point, b: Point) {
  const { view } = store.getState();
  const spread = Math.max(1, distance(a, b));
  const middle = midpoint(a, b);
  return (p: Point, q: Point) => {
    const now = midpoint(p, q);
    const zoomed = zoomedAt(view, middle, distance(p, q) / spread);
    store.setState({
      fitted: false,
      view: { ...zoomed, x: zoomed.x + now.x - middle.x, y: zoomed.y + now.y - middle.y },
    });
  };
}
