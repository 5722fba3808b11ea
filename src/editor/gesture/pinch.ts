import type { Point } from '../../geometry/shape.ts';
import type { EditorStore } from '../state/store.ts';
import { zoomedAt } from '../state/zoom.ts';

/** Two fingers: the points of the face under them stay under them. */
export function startPinch(store: EditorStore, a: Point, b: Point) {
  const { view } = store.getState();
  const spread = Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
  const middle = { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 };
  return (p: Point, q: Point) => {
    const now = { x: (p.x + q.x) / 2, y: (p.y + q.y) / 2 };
    const zoomed = zoomedAt(view, middle, Math.hypot(p.x - q.x, p.y - q.y) / spread);
    store.setState({
      fitted: false,
      view: { ...zoomed, x: zoomed.x + now.x - middle.x, y: zoomed.y + now.y - middle.y },
    });
  };
}
