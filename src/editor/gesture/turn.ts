import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Strip } from '../../design/schema.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { snapAngle } from '../../layout/snap/angle.ts';
import type { Deg } from '../../measure/units.ts';
import { degrees } from '../../measure/units.ts';
import { type Trial, tried } from '../document/document.ts';
import { angleOfStrip } from '../edit/stripAngle.ts';
import { commit } from '../state/commit.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, shownNow } from '../state/store.ts';
import { t } from '../words/t.ts';
import { angleText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';

/** How near a turn stops at every 15 degrees and at the angles of other strips. */
const STOP_WITHIN: Deg = 2.5;

/** Turns the selected strip about its middle. */
export function startTurn(store: EditorStore, start: Touch): Gesture | null {
  const { edit } = store.getState();
  const { design, selection } = edit;
  const strip = design.parts.find((p): p is Strip => p.id === selection[0] && p.kind === 'strip');
  if (!strip || strip.locked) return null;
  const { boxes } = edit.shown.layout;
  const box = boxIn(boxes, strip);
  const others = design.parts.flatMap((part) =>
    part.kind === 'strip' && part.id !== strip.id ? [angleOfStrip(part, boxIn(boxes, part))] : [],
  );
  const center = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  const begin = angleOfStrip(strip, box);
  const length = lengthOfStrip(strip, box);
  const angleTo = (touch: Touch): Deg =>
    degrees(Math.atan2(touch.face.y - center.y, touch.face.x - center.x));
  const grabbed = angleTo(start);
  const held = new Set([strip.id]);
  let edits: readonly Edit[] = [];
  let angle = begin;
  let trial: Trial | undefined;
  let begun = false;

  return {
    move: (touch) => {
      if (!begun && !strayed(start.px, touch.px)) return;
      begun = true;
      const raw = normal(begin + angleTo(touch) - grabbed);
      const stop = touch.free ? null : snapAngle(raw, others, STOP_WITHIN);
      angle = stop === null ? Math.round(raw * 10) / 10 : normal(stop);
      edits = [replacing('parts', turned(strip, box, length, angle))];
      const state = store.getState();
      const shown = tried(state.edit, edits, held, shownNow(state));
      trial = { doc: state.edit, edits, shown };
      propose(store, { shown, guides: [], at: touch.px, text: angleText(angle) });
    },
    end: () => {
      clearGesture(store);
      if (!begun || edits.length === 0) return;
      const label = t('did.turn', { name: strip.name });
      commit(store, edits, label, { held, trial, say: `${label}: ${angleText(angle)}` });
    },
    cancel: () => clearGesture(store),
  };
}

type BoxOf = Strip['box'];

function lengthOfStrip(strip: Strip, box: BoxOf): number {
  switch (strip.lie) {
    case 'across':
      return box.w;
    case 'up':
      return box.h;
    case 'turned':
      return strip.length;
    case 'rising':
    case 'falling':
      return Math.hypot(box.w, box.h);
  }
}

/** The strip at an angle; square positions become plain strips again, so that their box says it all. */
function turned(strip: Strip, box: BoxOf, length: number, angle: Deg): Strip {
  const cx = box.x + box.w / 2;
  const cy = box.y + box.h / 2;
  const width = strip.lie === 'up' ? box.w : strip.lie === 'across' ? box.h : Math.min(box.w, box.h);
  const flat = Math.abs(angle) === 0 || Math.abs(angle) === 180;
  if (flat)
    return {
      ...strip,
      lie: 'across',
      angle: 0,
      box: { x: cx - length / 2, y: cy - width / 2, w: length, h: width },
    };
  if (Math.abs(angle) === 90) {
    return {
      ...strip,
      lie: 'up',
      angle: 0,
      box: { x: cx - width / 2, y: cy - length / 2, w: width, h: length },
    };
  }
  return { ...strip, lie: 'turned', angle, length, box };
}

function normal(angle: Deg): Deg {
  const a = ((angle % 360) + 360) % 360;
  return a > 180 ? a - 360 : a;
}
