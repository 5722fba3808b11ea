import { preview } from '../../design/state.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { createItem, DEFAULT_SIZE } from '../action/create.ts';
import { commit } from '../state/commit.ts';
import { layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import type { EditorStore } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { NO_SNAP, ruleEdits, type Snap, snapBox } from './snapping.ts';
import type { DrawnKind } from './tools.ts';

/** Draws a new part from corner to corner; a plain click places one of usual size. */
export function startDraw(store: EditorStore, start: Touch, kind: DrawnKind): Gesture {
  const { edit } = store.getState();
  const layout = layoutOf(edit.design);
  const first = start.free
    ? NO_SNAP
    : snapBox(store.getState(), layout, { ids: [], box: pointBox(start.face), sides: BOTH });
  const corner = { x: start.face.x + first.dx, y: start.face.y + first.dy };
  let box: Box | null = null;
  let snap: Snap = NO_SNAP;
  let last = start;

  const span = (next: Box) => {
    box = next;
    const made = createItem(edit.design, kind, next);
    const text = `↔ ${lengthText(edit.design, next.w)}   ↕ ${lengthText(edit.design, next.h)}`;
    propose(store, { edits: made.edits, held: new Set([made.id]), guides: snap.guides, at: last.px, text });
  };

  return {
    move: (touch) => {
      if (!box && !strayed(start.px, touch.px)) return;
      last = touch;
      const raw = spanned(corner, touch.face, touch.shift);
      const sides = {
        x: touch.face.x < corner.x ? ('low' as const) : ('high' as const),
        y: touch.face.y < corner.y ? ('low' as const) : ('high' as const),
      };
      snap = touch.free ? NO_SNAP : snapBox(store.getState(), layout, { ids: [], box: raw, sides });
      span(spanned(corner, { x: touch.face.x + snap.dx, y: touch.face.y + snap.dy }, touch.shift));
    },
    typed: (mm) => {
      if (!box) return;
      const wide = box.w >= box.h;
      span(wide ? { ...box, w: mm } : { ...box, h: mm });
    },
    end: (touch) => {
      clearGesture(store);
      const size = DEFAULT_SIZE[kind];
      const final = box ?? {
        x: touch.face.x - size.w / 2,
        y: touch.face.y - size.h / 2,
        w: size.w,
        h: size.h,
      };
      finishDraw(store, kind, final, box ? snap : NO_SNAP);
    },
    cancel: () => clearGesture(store),
  };
}

const BOTH = { x: 'both', y: 'both' } as const;
const pointBox = (p: Point): Box => ({ x: p.x, y: p.y, w: 0, h: 0 });

/** Puts a new part into the design, selected, and goes back to selecting. */
export function finishDraw(store: EditorStore, kind: DrawnKind, box: Box, snap: Snap, stock?: string): void {
  const { edit } = store.getState();
  const made = createItem(edit.design, kind, box, stock);
  const edits = [...made.edits, ...ruleEdits(preview(edit, made.edits), new Set([made.id]), snap, made.id)];
  const label = t('did.add', { name: made.name });
  const size = t('say.size', {
    width: lengthText(edit.design, box.w),
    height: lengthText(edit.design, box.h),
  });
  if (commit(store, edits, label, { selection: [made.id], say: `${label}: ${size}` })) {
    store.setState((s) => ({ tool: 'select', tab: s.step === 'layout' ? 'part' : s.tab }));
  }
}

function spanned(a: Point, b: Point, square: boolean): Box {
  let w = Math.abs(b.x - a.x);
  let h = Math.abs(b.y - a.y);
  if (square) w = h = Math.max(w, h);
  return { x: b.x < a.x ? a.x - w : a.x, y: b.y < a.y ? a.y - h : a.y, w, h };
}
