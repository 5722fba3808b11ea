import type { Edit } from '../../design/edit/edit.ts';
import { preview } from '../../design/state.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';
import { movableBoxes } from '../action/movable.ts';
import { editsToPlace } from '../action/place.ts';
import { selectionName } from '../action/selection.ts';
import { commit } from '../state/commit.ts';
import { layoutOf } from '../state/derive.ts';
import { propose } from '../state/propose.ts';
import type { EditorStore } from '../state/store.ts';
import { lengthText } from '../state/text.ts';
import { t } from '../words/t.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';

import { type InHand, NO_SNAP, ruleEdits, type Snap, snapInHand } from './snapping.ts';

/** Which sides a handle pulls: -1 the low one, 1 the high one, 0 none. */
export interface Pull {
  readonly x: -1 | 0 | 1;
  readonly y: -1 | 0 | 1;
}

const LEAST_SIZE: Mm = 1;

/** Pulls one or two sides of the selected part or keep-clear. */
export function startResize(store: EditorStore, start: Touch, pull: Pull): Gesture | null {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const layout = layoutOf(design);
  const before = movableBoxes(design, layout.boxes, selection);
  const entry = [...before][0];
  if (!entry || before.size !== 1) return null;
  const [id, box] = entry;
  const held = new Set([id]);
  let edits: readonly Edit[] = [];
  let now = box;
  let begun = false;
  let last = start;

  const hand = (now: Box): InHand => ({
    moving: [{ id, box: now }],
    grip: { x: sideOf(pull.x), y: sideOf(pull.y) },
  });

  const stretch = (next: Box, snap: Snap) => {
    now = next;
    edits = editsToPlace(design, before, new Map([[id, next]]));
    edits = [...edits, ...ruleEdits(preview(edit, edits), hand(next), snap)];
    propose(store, { edits, held, guides: snap.guides, at: last.px, text: sizeText(design, next, pull) });
  };

  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      last = touch;
      const dx = touch.face.x - start.face.x;
      const dy = touch.face.y - start.face.y;
      const raw = pulled(box, pull, dx, dy);
      const snap = touch.free ? NO_SNAP : snapInHand(store.getState(), layout, hand(raw));
      stretch(pulled(box, pull, dx + snap.dx, dy + snap.dy), snap);
    },
    typed: (mm) => {
      const dx = pull.x * (mm - box.w);
      const dy = pull.y * (mm - box.h);
      stretch(pulled(box, pull, pull.x === 0 ? 0 : dx, pull.x !== 0 ? 0 : dy), NO_SNAP);
    },
    end: () => {
      clearGesture(store);
      if (!begun || edits.length === 0) return;
      const label = t('did.resize', { name: selectionName(design, selection) });
      commit(store, edits, label, { held, say: `${label}: ${sizeText(design, now, { x: 1, y: 1 })}` });
    },
    cancel: () => clearGesture(store),
  };
}

const sideOf = (pull: -1 | 0 | 1) => (pull === 0 ? null : pull < 0 ? ('low' as const) : ('high' as const));

function pulled(box: Box, pull: Pull, dx: Mm, dy: Mm): Box {
  const x = pulledSpan(box.x, box.w, pull.x, dx);
  const y = pulledSpan(box.y, box.h, pull.y, dy);
  return { x: x.start, w: x.size, y: y.start, h: y.size };
}

function pulledSpan(start: Mm, size: Mm, pull: -1 | 0 | 1, by: Mm): { start: Mm; size: Mm } {
  if (pull === 0) return { start, size };
  const next = Math.max(LEAST_SIZE, size + pull * by);
  return { start: pull < 0 ? start + size - next : start, size: next };
}

function sizeText(design: Parameters<typeof lengthText>[0], box: Box, pull: Pull): string {
  const w = pull.x === 0 ? '' : lengthText(design, box.w);
  const h = pull.y === 0 ? '' : lengthText(design, box.h);
  return [w, h].filter(Boolean).join(' × ');
}
