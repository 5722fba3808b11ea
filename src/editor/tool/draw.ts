import type { Edit } from '../../design/edit/edit.ts';
import type { Design } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Grip } from '../../layout/snap/snapping.ts';
import { structureOf } from '../../layout/structure.ts';
import { type Created, createItem, DEFAULT_SIZE, madeAt, stockFor } from '../action/create.ts';
import { editsToLay } from '../action/lay.ts';
import { faceFor, layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import type { EditorState, EditorStore } from '../state/store.ts';
import { stocksOf } from '../state/tables.ts';
import { lengthText } from '../state/text.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { release } from './release.ts';
import { asInHand, edited, type InHand, ruleEdits, type Snap, snapInHand } from './snapping.ts';
import type { DrawnKind } from './tools.ts';

/** Draws a new part from corner to corner; a plain click places one of usual size. */
export function startDraw(store: EditorStore, start: Touch, kind: DrawnKind): Gesture {
  const { edit, stock: chosen } = store.getState();
  const { design } = edit;
  const layout = layoutOf(design);
  const stock = stockFor(design, kind, chosen);
  let drawn: { readonly made: Created; readonly snap: Snap; readonly hand: InHand } | null = null;
  let last = start;
  /** Whether the drag went more across than up: the side that a typed measure means. */
  let wide = true;

  const show = (box: Box, free: boolean, size: Grip) => {
    const item = createItem(design, kind, box, stock);
    const hand = handOf(design, item, size);
    const snap = free ? asInHand(hand) : snapInHand(store.getState(), design, layout, hand);
    const made = madeAt(item, snap.boxes.get(item.id) ?? item.box);
    drawn = { made, snap, hand };
    const text = `${lengthText(design, made.box.w)} × ${lengthText(design, made.box.h)}`;
    const edits = holding(store.getState(), drawn);
    propose(store, { edits, held: new Set([made.id]), guides: snap.guides, at: last.px, text });
  };

  return {
    move: (touch) => {
      if (!drawn && !strayed(start.px, touch.px)) return;
      last = touch;
      wide = Math.abs(touch.face.x - start.face.x) >= Math.abs(touch.face.y - start.face.y);
      // A square has its size from the hand; only its place is left to be held.
      show(spanned(start.face, touch.face, touch.shift), touch.free, touch.shift ? 'move' : 'both');
    },
    typed: (mm) => {
      if (!drawn) return;
      const { box } = drawn.made;
      const made = madeAt(drawn.made, wide ? { ...box, w: mm } : { ...box, h: mm });
      const hand = handOf(design, made, 'both');
      drawn = { made, snap: asInHand(hand), hand };
      const text = `${lengthText(design, made.box.w)} × ${lengthText(design, made.box.h)}`;
      propose(store, { edits: made.edits, held: new Set([made.id]), guides: [], at: last.px, text });
    },
    end: (touch) => {
      clearGesture(store);
      const size = DEFAULT_SIZE[kind];
      const box = { x: touch.face.x - size.w / 2, y: touch.face.y - size.h / 2, ...size };
      if (drawn) finishMade(store, drawn);
      else place(store, kind, box, stock);
    },
    cancel: () => clearGesture(store),
  };
}

/** A new item in the hand: what its stock decides of its size is carried, the rest is drawn. */
export function handOf(design: Design, { id, box, part }: Created, size: Grip): InHand {
  const stocks = stocksOf(design);
  const grip = (axis: 'x' | 'y') =>
    part && structureOf(part, axis, stocks, undefined).fixed !== null ? 'move' : size;
  return { moving: [{ id, box }], grip: { x: grip('x'), y: grip('y') }, parts: part ? [part] : [] };
}

export interface Drawn {
  readonly made: Created;
  readonly snap: Snap;
  readonly hand: InHand;
}

/** The edits that make an item, hold what its snap offered and lay it on what is under it. */
export function holding(state: EditorState, { made, snap, hand }: Drawn): Edit[] {
  const edits = [...made.edits, ...ruleEdits(edited(state, made.edits), hand, snap)];
  return made.part ? [...edits, ...editsToLay(edited(state, edits), new Set([made.id]))] : edits;
}

/** Places a part of usual size in the middle of the face: what a key does where a pointer draws. */
export function placeInMiddle(store: EditorStore, kind: DrawnKind, stock?: string): void {
  const face = faceFor(store.getState().edit.design.bed);
  const { w, h } = DEFAULT_SIZE[kind];
  place(store, kind, { x: (face.width - w) / 2, y: (face.height - h) / 2, w, h }, stock);
}

/** Puts a new part into a box, held by nothing. */
function place(store: EditorStore, kind: DrawnKind, box: Box, stock: string | undefined): void {
  const { design } = store.getState().edit;
  const made = createItem(design, kind, box, stock);
  const hand = handOf(design, made, 'move');
  finishMade(store, { made, snap: asInHand(hand), hand });
}

/** Puts a new part into the design, selected, and goes back to selecting. */
export function finishMade(store: EditorStore, drawn: Drawn): void {
  const { edit } = store.getState();
  const { made, hand, snap } = drawn;
  const label = t('did.add', { name: made.name });
  const size = t('say.size', {
    width: lengthText(edit.design, made.box.w),
    height: lengthText(edit.design, made.box.h),
  });
  const options = { selection: [made.id], say: `${label}: ${size}`, held: new Set([made.id]) };
  const before = store.getState();
  const edits = (snap: Snap) =>
    holding(before, { ...drawn, snap, made: madeAt(made, snap.boxes.get(made.id) ?? made.box) });
  if (release(store, { hand, snap, edits, label, options })) {
    store.setState((s) => ({ tool: 'select', tab: s.step === 'layout' ? 'part' : s.tab }));
  }
}

function spanned(a: Point, b: Point, square: boolean): Box {
  let w = Math.abs(b.x - a.x);
  let h = Math.abs(b.y - a.y);
  if (square) w = h = Math.max(w, h);
  return { x: b.x < a.x ? a.x - w : a.x, y: b.y < a.y ? a.y - h : a.y, w, h };
}
