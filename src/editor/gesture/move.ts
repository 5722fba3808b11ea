import type { Axis, Design } from '../../design/schema.ts';
import { preview } from '../../design/state.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { remembering } from '../../plan/memory.ts';
import { type LaidDown, laidDown } from '../edit/lay.ts';
import { editsToLoosen } from '../edit/loosen.ts';
import { movableBoxes } from '../edit/movable.ts';
import { editsToPlace } from '../edit/place.ts';
import { selectionName } from '../edit/selection.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { release } from './release.ts';
import { asInHand, edited, groundOf, type InHand, ruleEdits, type Snap, snapInHand } from './snapping.ts';

/** Pixels along an axis before a drag counts there too. */
const AXIS_SLOP = 5;

/** Where the hand has the parts, and the edits that a snap of them makes. */
type Carried = Pick<Parameters<typeof release>[1], 'hand' | 'snap' | 'edits' | 'trial'>;

/** Carries the selection; parts that depend on it follow live. Null when all of it is locked. */
export function startMove(store: EditorStore, start: Touch): Gesture | null {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const before = movableBoxes(design, edit.shown.layout.boxes, selection);
  const around = boxAround(before.values());
  if (!around) {
    say(store, t('say.locked'));
    return null;
  }
  const held = new Set(before.keys());
  const parts = design.parts.filter((part) => held.has(part.id));
  const ground = groundOf(edit.shown);
  let down: Pick<LaidDown, 'made' | 'shown'> = { made: edit.shown, shown: edit.shown };
  let carried: Carried | null = null;
  let delta = { x: 0, y: 0 };
  let begun = false;
  let engaged = { x: false, y: false };
  /** The way the hand went: what a typed measure is counted along. */
  let heading: { readonly along: boolean; readonly sign: -1 | 1 } = { along: true, sign: 1 };
  let last: Touch = start;

  /** The design without the rules that going along these axes breaks. */
  const loosened = remembering((x: boolean, y: boolean) => {
    const onX = x ? editsToLoosen(design, held, 'x') : [];
    const half = edited(store.getState(), onX);
    const loosen = [...onX, ...(y ? editsToLoosen(half, held, 'y') : [])];
    return { loosen, design: edited(store.getState(), loosen) };
  });

  const carry = (dx: Mm, dy: Mm, snaps: boolean) => {
    const free = loosened(dx !== 0, dy !== 0);
    const hand: InHand = {
      moving: [...before].map(([id, box]) => ({ id, box: shifted(box, dx, dy) })),
      grip: { x: dx === 0 ? null : 'move', y: dy === 0 ? null : 'move' },
      parts,
    };
    const snap = snaps ? snapInHand(store.getState(), free.design, ground, hand) : asInHand(hand);
    const [first] = before;
    const to = first && snap.boxes.get(first[0]);
    delta = { x: to && first ? to.x - first[1].x : 0, y: to && first ? to.y - first[1].y : 0 };
    const state = store.getState();
    const comesTo = (snap: Snap) => {
      const placed = [...free.loosen, ...editsToPlace(free.design, before, snap.boxes)];
      const rules = ruleEdits(preview(state.edit, placed), hand, snap);
      return laidDown(state.edit, [...placed, ...rules], held, down);
    };
    const trial = comesTo(snap);
    down = trial;
    carried = { hand, snap, trial, edits: (one) => (one === snap ? trial : comesTo(one)).edits };
    const { shown } = down;
    const text = [wayText(design, 'x', delta.x), wayText(design, 'y', delta.y)];
    const hud = { at: last.px, text: text.filter(Boolean).join('   ') };
    propose(store, { shown, guides: snap.guides, ...hud });
  };

  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      last = touch;
      // An axis counts from when the hand clearly went along it: a drag meant across stays in line.
      engaged = {
        x: engaged.x || Math.abs(touch.px.x - start.px.x) > AXIS_SLOP,
        y: engaged.y || Math.abs(touch.px.y - start.px.y) > AXIS_SLOP,
      };
      const raw = { x: touch.face.x - start.face.x, y: touch.face.y - start.face.y };
      const along = Math.abs(raw.x) >= Math.abs(raw.y);
      heading = { along, sign: (along ? raw.x : raw.y) < 0 ? -1 : 1 };
      const dx = engaged.x && (along || !touch.shift) ? raw.x : 0;
      const dy = engaged.y && (!along || !touch.shift) ? raw.y : 0;
      carry(dx, dy, !touch.free);
    },
    typed: (mm) => {
      const { along, sign } = heading;
      carry(along ? sign * mm : 0, along ? 0 : sign * mm, false);
    },
    end: () => {
      clearGesture(store);
      if (!begun || !carried || (delta.x === 0 && delta.y === 0)) return;
      const label = t('did.move', { name: selectionName(design, selection) });
      const by = [wayText(design, 'x', delta.x), wayText(design, 'y', delta.y)].filter(Boolean);
      release(store, {
        ...carried,
        label: () => label,
        detail: by.join(', '),
        options: { held },
      });
    },
    cancel: () => clearGesture(store),
  };
}

/** “2 1/4" to the left”; nothing for no way. */
function wayText(design: Design, axis: Axis, by: Mm): string {
  if (by === 0) return '';
  return t(`moved.${axis}.${by < 0 ? 'low' : 'high'}`, { by: lengthText(design, Math.abs(by)) });
}

const shifted = (box: Box, dx: Mm, dy: Mm): Box => ({ ...box, x: box.x + dx, y: box.y + dy });
