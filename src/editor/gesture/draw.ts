import type { Edit } from '../../design/edit/edit.ts';
import { withEnds } from '../../design/ends.ts';
import { isLettered } from '../../design/made.ts';
import type { Design, Part } from '../../design/schema.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import type { Grip } from '../../layout/snap/snapping.ts';
import { structureOf } from '../../layout/structure.ts';
import type { Mm } from '../../measure/units.ts';
import { tried } from '../document/document.ts';
import type { Shown } from '../document/shown.ts';
import { createItem, madeAt, stockFor, usualSize } from '../edit/create.ts';
import type { Created } from '../edit/created.ts';
import { laidDown } from '../edit/lay.ts';
import { nameOf } from '../edit/movable.ts';
import { namesFor, type Unnamed } from '../edit/naming.ts';
import { editsToStandOut } from '../edit/standOut.ts';
import { endsMeant, rulesBeside } from '../edit/stopHere.ts';
import { stocksOf } from '../shipped/tables.ts';
import { propose } from '../state/propose.ts';
import { type EditorState, type EditorStore, shownNow } from '../state/store.ts';
import type { DrawTool } from '../state/tools.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { release } from './release.ts';
import { asInHand, edited, groundOf, type InHand, ruleEdits, type Snap, snapInHand } from './snapping.ts';

/** Draws a new part from corner to corner; a plain click places one of usual size. */
export function startDraw(store: EditorStore, start: Touch, kind: DrawTool): Gesture {
  const { edit, stock: chosen, owned } = store.getState();
  const { design } = edit;
  const ground = groundOf(edit.shown);
  const stock = stockFor(design, kind, chosen);
  /** As the hand has it, and with what was typed. */
  let pulled: Drawn | null = null;
  let drawn: Drawn | null = null;
  let last = start;

  const inHand = (box: Box, free: boolean, size: Grip): Drawn => {
    const item = createItem(design, kind, box, owned, stock);
    const hand = handOf(design, item, size);
    const snap = free ? asInHand(hand) : snapInHand(store.getState(), design, ground, hand);
    return { made: item, snap, hand, reach: free ? 0 : STOP_REACH / store.getState().view.scale };
  };
  const show = (next: Drawn) => {
    const made = whereSnapped(next);
    drawn = { ...next, made };
    const text = `${lengthText(design, made.box.w)} × ${lengthText(design, made.box.h)}`;
    const { shown } = holding(store.getState(), drawn);
    propose(store, { shown, guides: next.snap.guides, at: last.px, text });
  };

  return {
    move: (touch) => {
      if (!drawn && !strayed(start.px, touch.px)) return;
      last = touch;
      // A square has its size from the hand; only its place is left to be held.
      const box = spanned(start.face, touch.face, touch.shift);
      pulled = inHand(box, touch.free, touch.shift ? 'move' : 'both');
      show(pulled);
    },
    typed: (mm) => {
      if (!pulled) return;
      const [dx, dy] = [last.face.x - start.face.x, last.face.y - start.face.y];
      // The side along which the hand went farther is the one that is meant; it grows from where the hand began.
      const [axis, way] = Math.abs(dx) >= Math.abs(dy) ? (['x', dx] as const) : (['y', dy] as const);
      const snap = pulled.snap.sized(axis, mm, way < 0 ? 'high' : 'low');
      const moving = [...snap.boxes].map(([id, box]) => ({ id, box }));
      show({ ...pulled, snap, hand: { ...pulled.hand, moving } });
    },
    end: (touch) => {
      clearGesture(store);
      const { w, h } = usualSize(kind, owned);
      const usual = { x: touch.face.x - w / 2, y: touch.face.y - h / 2, w, h };
      finishMade(store, drawn ?? inHand(usual, touch.free, 'move'));
    },
    cancel: () => clearGesture(store),
  };
}

/** What is made, where its snap has it. */
const whereSnapped = ({ made, snap }: Drawn): Created => madeAt(made, boxIn(snap.boxes, made));

/** A new item in the hand: what its stock decides of its size is carried, the rest is drawn. */
export function handOf(design: Design, { id, box, part, keeps }: Created, size: Grip): InHand {
  const stocks = stocksOf(design);
  const grip = (axis: 'x' | 'y') =>
    keeps?.[axis] || (part && structureOf(part, axis, stocks, undefined).fixed !== null) ? 'move' : size;
  return { moving: [{ id, box }], grip: { x: grip('x'), y: grip('y') }, parts: part ? [part] : [] };
}

export interface Drawn {
  readonly made: Created;
  readonly snap: Snap;
  readonly hand: InHand;
  /** How far off a border an end of it may be drawn to stop there; nowhere when left out. */
  readonly reach?: Mm;
}

/** How far off a border the end of a strip may be drawn to stop there, in pixels. */
export const STOP_REACH = 12;

/** An item as it is meant: its ends cut to the borders that they were drawn to, in place of rules that would hold them. */
export function holding(state: EditorState, drawn: Drawn): Held {
  const { made, snap, reach = 0 } = drawn;
  const held = holdingAsDrawn(state, drawn);
  const ends = reach > 0 ? endsMeant(held.shown, made.id, reach) : null;
  const part = ends && held.shown.design.parts.find(({ id }) => id === made.id);
  if (!ends || !part) return held;
  const edits = made.edits.map(
    (edit): Edit =>
      edit.kind === 'insert' && edit.list === 'parts'
        ? { ...edit, item: withEnds(edit.item as Part, ends) }
        : edit,
  );
  const rules = rulesBeside(part, ends, snap.rules);
  return holdingAsDrawn(state, { ...drawn, made: { ...made, edits }, snap: { ...snap, rules } });
}

interface Held {
  readonly edits: readonly Edit[];
  readonly shown: Shown;
}

/** The edits that make an item, hold what its snap offered, lay it on what is under it and let it be seen there. */
function holdingAsDrawn(state: EditorState, { made, snap, hand }: Drawn): Held {
  const { edit } = state;
  const held = new Set([made.id]);
  const edits = [...made.edits, ...ruleEdits(edited(state, made.edits), hand, snap)];
  if (!made.part) return { edits, shown: tried(edit, edits, held, shownNow(state)) };
  const now = shownNow(state);
  const laid = laidDown(edit, edits, held, { made: now, shown: now });
  const more = made.group ? [] : editsToStandOut(laid.shown.design, made.id);
  if (more.length === 0) return laid;
  const all = [...laid.edits, ...more];
  return { edits: all, shown: tried(edit, all, held, laid.shown) };
}

/** Places a part of usual size in the middle of the face, held by nothing: what a key does where a pointer draws. */
export function placeInMiddle(store: EditorStore, kind: DrawTool, stock?: string): void {
  const { edit, owned } = store.getState();
  const { design, shown } = edit;
  const { face } = shown;
  const { w, h } = usualSize(kind, owned);
  const box = { x: (face.width - w) / 2, y: (face.height - h) / 2, w, h };
  const made = createItem(design, kind, box, owned, stock);
  const hand = handOf(design, made, 'move');
  finishMade(store, { made, snap: asInHand(hand), hand }, 'anywhere');
}

/** Puts a new part into the design, selected, and goes back to selecting. */
export function finishMade(store: EditorStore, drawn: Drawn, where: Unnamed['made'] = 'here'): void {
  const { edit } = store.getState();
  const { made, hand, snap } = drawn;
  const before = store.getState();
  const edits = (snap: Snap) => {
    const making = holding(before, { ...drawn, snap, made: whereSnapped({ ...drawn, snap }) });
    return made.part && !made.group
      ? [...making.edits, ...namesFor(making.shown, [{ id: made.id, made: where }])]
      : making.edits;
  };
  const label = (there: Design) => t('did.add', { name: nameOf(there, made.group ?? made.id) });
  const detail = t('say.size', {
    width: lengthText(edit.design, made.box.w),
    height: lengthText(edit.design, made.box.h),
  });
  const options = { selection: [made.group ?? made.id], held: new Set([made.id]) };
  if (release(store, { hand, snap, edits, label, detail, options })) {
    // What a sign says is typed at once where it was drawn.
    const letters = where === 'here' && made.part && isLettered(made.part);
    const field = letters ? ({ kind: 'lettering', part: made.id } as const) : null;
    store.setState((s) => ({ tool: 'select', tab: s.step === 'layout' ? 'part' : s.tab, field }));
  }
}

function spanned(a: Point, b: Point, square: boolean): Box {
  let w = Math.abs(b.x - a.x);
  let h = Math.abs(b.y - a.y);
  if (square) w = h = Math.max(w, h);
  return { x: b.x < a.x ? a.x - w : a.x, y: b.y < a.y ? a.y - h : a.y, w, h };
}
