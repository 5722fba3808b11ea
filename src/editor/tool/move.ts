import type { Edit } from '../../design/edit/edit.ts';
import type { Axis, Design } from '../../design/schema.ts';
import { preview } from '../../design/state.ts';
import { boxAround } from '../../geometry/box.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { editsToLoosen, rulesThatHold } from '../action/loosen.ts';
import { movableBoxes } from '../action/movable.ts';
import { type Boxes, editsToPlace } from '../action/place.ts';
import { selectionName } from '../action/selection.ts';
import { commit } from '../state/commit.ts';
import { layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, say } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { type InHand, NO_SNAP, ruleEdits, type Snap, snapInHand } from './snapping.ts';

/** Pixels along an axis before a drag counts there too. */
const AXIS_SLOP = 5;

/** Carries the selection; parts that depend on it follow live. Null when all of it is locked. */
export function startMove(store: EditorStore, start: Touch): Gesture | null {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const layout = layoutOf(design);
  const before = movableBoxes(design, layout.boxes, selection);
  const around = boxAround(before.values());
  if (!around) {
    say(store, t('say.locked'));
    return null;
  }
  const held = new Set(before.keys());
  const isHeld = [...held].some(
    (id) => rulesThatHold(design, id, 'x').length + rulesThatHold(design, id, 'y').length > 0,
  );
  let edits: readonly Edit[] = [];
  let delta = { x: 0, y: 0 };
  let begun = false;
  let engaged = { x: false, y: false };
  /** The way the hand went: what a typed measure is counted along. */
  let heading: { readonly along: boolean; readonly sign: -1 | 1 } = { along: true, sign: 1 };
  let last: Touch = start;

  const hand = (dx: Mm, dy: Mm): InHand => ({
    moving: [...before].map(([id, box]) => ({ id, box: shifted(box, dx, dy) })),
    grip: { x: dx === 0 ? null : 'move', y: dy === 0 ? null : 'move' },
  });

  const carry = (dx: Mm, dy: Mm, snap: Snap, free: boolean) => {
    delta = { x: dx, y: dy };
    const after: Boxes = new Map([...before].map(([id, box]) => [id, shifted(box, dx, dy)]));
    const loosen = free
      ? [
          ...(dx === 0 ? [] : editsToLoosen(design, held, 'x')),
          ...(dy === 0 ? [] : editsToLoosen(design, held, 'y')),
        ]
      : [];
    const loosened = loosen.length > 0 ? preview(edit, loosen) : design;
    edits = [...loosen, ...editsToPlace(loosened, before, after)];
    edits = [...edits, ...ruleEdits(preview(edit, edits), hand(dx, dy), snap)];
    const text = [wayText(design, 'x', dx), wayText(design, 'y', dy)];
    const hint = isHeld && !free ? t('hud.held') : '';
    propose(store, {
      edits,
      held,
      guides: snap.guides,
      at: last.px,
      text: [...text, hint].filter(Boolean).join('   '),
    });
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
      const snap = touch.free ? NO_SNAP : snapInHand(store.getState(), layout, hand(dx, dy));
      carry(dx + snap.dx, dy + snap.dy, snap, touch.free);
    },
    typed: (mm) => {
      const { along, sign } = heading;
      carry(along ? sign * mm : 0, along ? 0 : sign * mm, NO_SNAP, last.free);
    },
    end: () => {
      clearGesture(store);
      if (!begun || edits.length === 0) return;
      const label = t('did.move', { name: selectionName(design, selection) });
      const by = [wayText(design, 'x', delta.x), wayText(design, 'y', delta.y)].filter(Boolean);
      commit(store, edits, label, { held, say: `${label}: ${by.join(', ')}` });
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
