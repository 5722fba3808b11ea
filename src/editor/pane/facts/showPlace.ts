import type { Design } from '../../../design/schema.ts';
import { boxAround } from '../../../geometry/box.ts';
import type { Point } from '../../../geometry/shape.ts';
import { designPart } from '../../../layout/reference.ts';
import { select } from '../../state/commit.ts';
import { type EditorStore, toScreen } from '../../state/store.ts';
import { fittedView } from '../../state/zoom.ts';

/** Parts and keep-clears of the design behind ids of a plan: `battens[2,0]` is the array `battens`. */
export function knownParts(design: Design, ids: readonly string[]): string[] {
  const known = new Set([...design.parts, ...design.keepClears].map((p) => p.id));
  const own = ids.map((id) => designPart(id.replace(/^keep:/, '')));
  return [...new Set(own)].filter((id) => known.has(id));
}

/** Selects parts of a plan and brings them, or the place meant, into sight on the drawing. */
export function showParts(store: EditorStore, laid: readonly string[], place?: Point): void {
  const { design, shown } = store.getState().edit;
  const ids = knownParts(design, laid);
  select(store, ids);
  store.setState({ tool: 'select' });
  const { boxes } = shown.layout;
  const around = boxAround(
    ids.flatMap((id) => boxes.get(id) ?? design.keepClears.find((k) => k.id === id)?.box ?? []),
  );
  const at = place ?? (around ? { x: around.x + around.w / 2, y: around.y + around.h / 2 } : null);
  if (at) bringIntoSight(store, at);
}

/** Leaves the view alone where the place can be seen; else shows the whole face, or moves to the place. */
function bringIntoSight(store: EditorStore, at: Point): void {
  const { canvas, view, edit } = store.getState();
  if (!canvas) return;
  const { clientWidth: width, clientHeight: height } = canvas;
  const px = toScreen(view, at);
  const edge = 40;
  if (px.x > edge && px.x < width - edge && px.y > edge && px.y < height - edge) return;
  const { box } = edit.shown.face;
  const onFace = at.x >= 0 && at.y >= 0 && at.x <= box.w && at.y <= box.h;
  if (onFace) store.setState({ fitted: true });
  else {
    const around = { x: at.x - box.w / 2, y: at.y - box.w / 2, w: box.w, h: box.w };
    const margin = { left: 40, right: 40, top: 90, bottom: 40 };
    store.setState({ fitted: false, view: fittedView(around, width, height, margin) });
  }
}
