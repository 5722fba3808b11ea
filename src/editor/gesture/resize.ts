import type { Edit } from '../../design/edit/edit.ts';
import { type Ends, endAt, withEnds } from '../../design/ends.ts';
import type { Axis, Design, Part } from '../../design/schema.ts';
import { preview } from '../../design/state.ts';
import type { Box } from '../../geometry/shape.ts';
import { AXES } from '../../layout/span.ts';
import type { Mm } from '../../measure/units.ts';
import type { Pull } from '../drawing/handles.ts';
import { type LaidDown, laidDown } from '../edit/lay.ts';
import { editsToLoosen, isPlacedBy } from '../edit/loosen.ts';
import { movableBoxes } from '../edit/movable.ts';
import { editsToPlace } from '../edit/place.ts';
import { selectionName } from '../edit/selection.ts';
import { editsToUnstop, endsMeant, rulesBeside } from '../edit/stopHere.ts';
import { propose } from '../state/propose.ts';
import type { EditorStore } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { STOP_REACH } from './draw.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { release } from './release.ts';
import { asInHand, edited, groundOf, type InHand, ruleEdits, type Snap, snapInHand } from './snapping.ts';

/** Nothing is pulled smaller. */
export const LEAST_SIZE: Mm = 1;

/** Pulls one or two sides of the selected part or keep-clear. */
export function startResize(store: EditorStore, start: Touch, pull: Pull): Gesture | null {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const before = movableBoxes(design, edit.shown.layout.boxes, selection);
  const entry = [...before][0];
  if (!entry || before.size !== 1) return null;
  const [id, box] = entry;
  const held = new Set([id]);
  const part = design.parts.find((one) => one.id === id);
  const ground = groundOf(edit.shown);
  let down: Pick<LaidDown, 'made' | 'shown'> = { made: edit.shown, shown: edit.shown };
  let stretched: Pick<Parameters<typeof release>[1], 'hand' | 'snap' | 'edits' | 'trial'> | null = null;
  let now = box;
  let begun = false;
  let last = start;

  const sides = { x: sideOf(pull.x), y: sideOf(pull.y) };
  const loosen: Edit[] = [];
  for (const axis of AXES) {
    const side = sides[axis];
    if (!side) continue;
    loosen.push(...editsToLoosen(edited(store.getState(), loosen), held, axis, side));
    loosen.push(...editsToUnstop(edited(store.getState(), loosen), id, axis, side));
  }
  const free = edited(store.getState(), loosen);
  const pulledEnds = AXES.flatMap((axis) => (part && sides[axis] && endAt(part, axis, sides[axis])) || []);
  // Where something else says where the part is, its edge has no say.
  const grip = (axis: Axis) => (isPlacedBy(free, id, axis) ? null : sides[axis]);

  const stretch = (next: Box, snaps: boolean) => {
    const hand: InHand = {
      moving: [{ id, box: next }],
      grip: { x: grip('x'), y: grip('y') },
      parts: part ? [part] : [],
    };
    const snap = snaps ? snapInHand(store.getState(), free, ground, hand) : asInHand(hand);
    now = snap.boxes.get(id) ?? next;
    const state = store.getState();
    const asPulled = (snap: Snap, ends?: Ends) => {
      // A margin all around is all there is to say of where a part is.
      const [design, before] = isMargin(snap) ? looseAllAround(store, free, loosen, held) : [free, loosen];
      const to = new Map([[id, snap.boxes.get(id) ?? next]]);
      const placed = [...before, ...editsToPlace(design, new Map([[id, box]]), to)].map((edit) =>
        ends && edit.kind === 'replace' && edit.list === 'parts' && edit.id === id
          ? { ...edit, item: withEnds(edit.item as Part, ends) }
          : edit,
      );
      const rules = ruleEdits(preview(state.edit, placed), hand, snap);
      return laidDown(state.edit, [...placed, ...rules], held, down);
    };
    const comesTo = (snap: Snap) => {
      const plain = asPulled(snap);
      const ends = snaps ? endsMeant(plain.shown, id, STOP_REACH / state.view.scale, pulledEnds) : null;
      if (!ends || !part) return plain;
      return asPulled({ ...snap, rules: rulesBeside(part, ends, snap.rules) }, ends);
    };
    const trial = comesTo(snap);
    down = trial;
    stretched = { hand, snap, trial, edits: (one) => (one === snap ? trial : comesTo(one)).edits };
    propose(store, {
      shown: down.shown,
      guides: snap.guides,
      at: last.px,
      text: sizeText(design, now, pull),
    });
  };

  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      last = touch;
      const dx = touch.face.x - start.face.x;
      const dy = touch.face.y - start.face.y;
      stretch(pulled(box, pull, dx, dy), !touch.free);
    },
    typed: (mm) => {
      const dx = pull.x * (mm - box.w);
      const dy = pull.y * (mm - box.h);
      stretch(pulled(box, pull, pull.x === 0 ? 0 : dx, pull.x !== 0 ? 0 : dy), false);
    },
    end: () => {
      clearGesture(store);
      if (!begun || !stretched) return;
      const label = t('did.resize', { name: selectionName(design, selection) });
      const detail = sizeText(design, now, { x: 1, y: 1 });
      release(store, { ...stretched, label: () => label, detail, options: { held } });
    },
    cancel: () => clearGesture(store),
  };
}

const isMargin = ({ held }: Snap) =>
  AXES.some((axis) => held[axis]?.offers.some((offer) => offer.reading === 'margin'));

function looseAllAround(
  store: EditorStore,
  free: Design,
  loosen: readonly Edit[],
  held: ReadonlySet<string>,
): readonly [Design, readonly Edit[]] {
  const x = [...loosen, ...editsToLoosen(free, held, 'x')];
  const all = [...x, ...editsToLoosen(edited(store.getState(), x), held, 'y')];
  return [edited(store.getState(), all), all];
}

const sideOf = (pull: -1 | 0 | 1) => (pull === 0 ? null : pull < 0 ? ('low' as const) : ('high' as const));

/** A box with sides pulled so far. */
export function pulled(box: Box, pull: Pull, dx: Mm, dy: Mm): Box {
  const x = pulledSpan(box.x, box.w, pull.x, dx);
  const y = pulledSpan(box.y, box.h, pull.y, dy);
  return { x: x.start, w: x.size, y: y.start, h: y.size };
}

function pulledSpan(start: Mm, size: Mm, pull: -1 | 0 | 1, by: Mm): { start: Mm; size: Mm } {
  if (pull === 0) return { start, size };
  const next = Math.max(LEAST_SIZE, size + pull * by);
  return { start: pull < 0 ? start + size - next : start, size: next };
}

/** The sizes that a pull changes. */
export function sizeText(design: Design, box: Box, pull: Pull): string {
  const w = pull.x === 0 ? '' : lengthText(design, box.w);
  const h = pull.y === 0 ? '' : lengthText(design, box.h);
  return [w, h].filter(Boolean).join(' × ');
}
