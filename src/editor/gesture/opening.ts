import type { Edit } from '../../design/edit/edit.ts';
import type { Part } from '../../design/schema.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { boxIn } from '../../layout/boxIn.ts';
import { AXES } from '../../layout/span.ts';
import type { Mm } from '../../measure/units.ts';
import { type Trial, tried } from '../document/document.ts';
import type { Guide } from '../document/guide.ts';
import type { Pull } from '../drawing/handles.ts';
import {
  chosenOpening,
  editToOpen,
  editToOpening,
  marginsOf,
  newOpening,
  onlyPart,
  openingPlace,
  openingsOf,
  takesOpenings,
  within,
} from '../edit/openings.ts';
import { commit } from '../state/commit.ts';
import { propose } from '../state/propose.ts';
import { type EditorStore, shownNow } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { clearGesture, type Gesture, strayed, type Touch } from './gesture.ts';
import { LEAST_SIZE, pulled, sizeText } from './resize.ts';
import { snapPoint } from './snapping.ts';

/** What a hand does to an opening: carries it where there is no pull, else pulls sides of it. */
interface InHand {
  readonly hole: Box;
  readonly pull: Pull | null;
}

interface Shaping {
  readonly part: Part;
  readonly box: Box;
  readonly hand: (touch: Touch) => InHand;
  /** With a measure typed in place of the hand; null where that means nothing. */
  readonly typed: (mm: Mm) => Box | null;
  readonly edit: (hole: Box) => Edit;
  readonly text: (hole: Box) => string;
  readonly label: string;
  readonly say: (hole: Box) => string;
  /** Chosen once it is let go. */
  readonly opening: string;
  /** What a plain click makes; nothing where it is left out. */
  readonly click?: Box;
}

/** Carries the chosen opening, or pulls sides of it, within its part. */
export function startOpening(store: EditorStore, start: Touch, pull: Pull | null): Gesture | null {
  const found = chosenOpening(store.getState());
  if (!found || found.part.locked) return null;
  const { part, box, hole, opening, name } = found;
  const { design } = store.getState().edit;
  const size = (to: Box) => sizeText(design, to, pull ?? ALL);
  const place = (to: Box) => [to.x - box.x, to.y - box.y].map((mm) => lengthText(design, mm)).join(' · ');
  return shaped(store, start, {
    part,
    box,
    hand: ({ face }) => {
      const by = { x: face.x - start.face.x, y: face.y - start.face.y };
      return { hole: moved(hole, pull, by), pull };
    },
    typed: (mm) => pull && moved(hole, pull, { x: pull.x * (mm - hole.w), y: pull.y * (mm - hole.h) }),
    edit: (to) => editToOpening(found, { ...opening, margin: marginsOf(to, box) }),
    text: pull ? size : place,
    label: t(pull ? 'did.resize' : 'did.move', { name }),
    say: (to) => (pull ? `${name}: ${sizeText(design, to, ALL)}` : openingPlace(design, name, to, box)),
    opening: opening.id,
  });
}

/** Draws an opening from corner to corner in the selected part; a plain click places one a quarter as wide and high. */
export function startDrawOpening(store: EditorStore, start: Touch): Gesture | null {
  const state = store.getState();
  const { edit } = state;
  const part = onlyPart(edit);
  if (!part || part.locked || !takesOpenings(part)) {
    store.setState({ tool: 'select' });
    return null;
  }
  const box = boxIn(edit.shown.layout.boxes, part);
  const openings = openingsOf(part);
  const openingAt = (hole: Box) => newOpening(openings, marginsOf(hole, box));
  const name = t('opening.of', { number: openings.length + 1, name: part.name });
  const size = { w: box.w / 4, h: box.h / 4 };
  const at = start.face;
  const from = start.free ? { dx: 0, dy: 0 } : snapPoint(state, edit.shown, at, part.id, placesOf(box));
  const corner = { x: at.x + from.dx, y: at.y + from.dy };
  const way = (here: Mm, there: Mm) => (there < here ? -1 : 1);
  return shaped(store, start, {
    part,
    box,
    hand: ({ face }) => ({
      hole: boxOfPoints([corner, face]),
      pull: { x: way(corner.x, face.x), y: way(corner.y, face.y) },
    }),
    typed: () => null,
    edit: (to) => editToOpen(part, openingAt(to)),
    text: (to) => sizeText(edit.design, to, ALL),
    label: t('did.add', { name }),
    say: (to) => `${name}: ${sizeText(edit.design, to, ALL)}`,
    opening: openingAt(box).id,
    click: within({ x: at.x - size.w / 2, y: at.y - size.h / 2, ...size }, box),
  });
}

const ALL: Pull = { x: 1, y: 1 };

/** Corners and middle of a part's box: what is in line with them is in line with the part. */
export const placesOf = ({ x, y, w, h }: Box): Point[] => [
  { x, y },
  { x: x + w / 2, y: y + h / 2 },
  { x: x + w, y: y + h },
];

const moved = (hole: Box, pull: Pull | null, by: Point): Box =>
  pull ? pulled(hole, pull, by.x, by.y) : { ...hole, x: hole.x + by.x, y: hole.y + by.y };

function shaped(store: EditorStore, start: Touch, how: Shaping): Gesture {
  const { part, box } = how;
  const held = new Set([part.id]);
  let last = start;
  let now: { readonly hole: Box; readonly edits: readonly Edit[]; readonly trial: Trial } | null = null;

  const show = (hole: Box, guides: readonly Guide[]) => {
    const edits = [how.edit(hole)];
    const state = store.getState();
    const shown = tried(state.edit, edits, held, shownNow(state));
    now = { hole, edits, trial: { doc: state.edit, edits, shown } };
    propose(store, { shown, guides, at: last.px, text: how.text(hole) });
  };

  return {
    move: (touch) => {
      if (!now && !strayed(start.px, touch.px)) return;
      last = touch;
      const hand = how.hand(touch);
      const { by, guides } = touch.free ? FREE : drawnTo(store, part, box, hand);
      const hole = moved(hand.hole, hand.pull, by);
      show(hand.pull ? cutTo(hole, box) : within(hole, box), guides);
    },
    typed: (mm) => {
      const hole = how.typed(mm);
      if (hole) show(cutTo(hole, box), []);
    },
    end: () => {
      if (!now && how.click) show(how.click, []);
      clearGesture(store);
      if (!now) return;
      const { edits, trial, hole } = now;
      commit(store, edits, how.label, { held, trial, say: how.say(hole) });
      store.setState({ tool: 'select', opening: how.opening, corner: null });
    },
    cancel: () => clearGesture(store),
  };
}

const FREE = { by: { x: 0, y: 0 }, guides: [] as readonly Guide[] };

/**
 * What the sides in the hand are drawn to: other things on the face, and lines of the part. What is carried is drawn by
 * its sides and its middle, whichever is nearest.
 */
function drawnTo(store: EditorStore, part: Part, box: Box, { hole, pull }: InHand) {
  const state = store.getState();
  const middle = { x: hole.x + hole.w / 2, y: hole.y + hole.h / 2 };
  const half = { x: hole.w / 2, y: hole.h / 2 };
  const by = { x: 0, y: 0 };
  const guides: Guide[] = [];
  for (const axis of AXES) {
    const sides = !pull ? [-1, 0, 1] : pull[axis] === 0 ? [] : [pull[axis]];
    const found = sides.map((side) => {
      const p = { ...middle, [axis]: middle[axis] + side * half[axis] };
      const snap = snapPoint(state, state.edit.shown, p, part.id, placesOf(box));
      const lines = snap.guides.filter((guide) => guide.axis === axis);
      return { delta: axis === 'x' ? snap.dx : snap.dy, lines };
    });
    const nearest = found
      .filter(({ lines }) => lines.length > 0)
      .reduce<(typeof found)[number] | undefined>(
        (best, one) => (best && Math.abs(best.delta) <= Math.abs(one.delta) ? best : one),
        undefined,
      );
    const best = nearest ?? found[0];
    if (!best) continue;
    by[axis] = best.delta;
    guides.push(...best.lines);
  }
  return { by, guides };
}

/** As much of a box as lies in another one, and something of it always. */
function cutTo(hole: Box, box: Box): Box {
  const span = (from: Mm, size: Mm, low: Mm, room: Mm) => {
    const start = Math.max(low, Math.min(from, low + room - LEAST_SIZE));
    return { start, size: Math.max(start + LEAST_SIZE, Math.min(from + size, low + room)) - start };
  };
  const [x, y] = [span(hole.x, hole.w, box.x, box.w), span(hole.y, hole.h, box.y, box.h)];
  return { x: x.start, y: y.start, w: x.size, h: y.size };
}
