import { isLettered } from '../../design/made.ts';
import type { Axis } from '../../design/schema.ts';
import { sharedArea } from '../../geometry/box.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { GRIP, type Handle } from '../drawing/handles.ts';
import { toScreen, type View } from '../state/store.ts';

/** A figure on its dimension line, in pixels of the screen. */
export interface Chip {
  readonly from: Point;
  readonly to: Point;
  readonly axis: Axis;
  readonly text: string;
  /** It stands in the middle of its line whatever is there: the others keep clear of it. */
  readonly fixed: boolean;
}

const HIGH = 26;
const LETTER = 7.5;
const SIDES = 14;
/** Where along its line a figure may stand, and how far beside it, the best first. */
const ALONG = [0.5, 0.3, 0.7, 0.1, 0.9];
const PAST = 20;
const BESIDE = [0, 20, -20, 36, -36, 52, -52, 72, -72];

/** What a figure takes up around its middle. */
export function chipBox(text: string, { x, y }: Point): Box {
  const w = text.length * LETTER + SIDES;
  return { x: x - w / 2, y: y - HIGH / 2, w, h: HIGH };
}

/**
 * The middles of figures: each on its line where it covers neither another nor an obstacle, else
 * as near to it as it can; where there is no such place, where it covers least.
 */
export function placeChips(chips: readonly Chip[], obstacles: readonly Box[]): Point[] {
  const taken: Box[] = [...obstacles];
  const found: Point[] = chips.map(({ from, to }) => pointOn(from, to, 0.5));
  chips.forEach(({ fixed, text }, i) => {
    if (fixed) taken.push(chipBox(text, pick(found, i)));
  });
  chips.forEach((chip, i) => {
    if (chip.fixed) return;
    let least = Number.POSITIVE_INFINITY;
    for (const at of candidates(chip)) {
      const own = chipBox(chip.text, at);
      const covered = taken.reduce((sum, box) => sum + sharedArea(own, box), 0);
      if (covered >= least) continue;
      least = covered;
      found[i] = at;
      if (covered === 0) break;
    }
    taken.push(chipBox(chip.text, pick(found, i)));
  });
  return found;
}

const pointOn = (a: Point, b: Point, share: number): Point => ({
  x: a.x + (b.x - a.x) * share,
  y: a.y + (b.y - a.y) * share,
});

function candidates({ from, to, axis, text }: Chip): Point[] {
  const wide = text.length * LETTER + SIDES;
  const long = Math.hypot(to.x - from.x, to.y - from.y) || 1;
  // Past its ends too, where the line is short and something lies all along it.
  const past = ((axis === 'x' ? wide : HIGH) / 2 + PAST) / long;
  // Beside an upright line a figure has to clear its own width.
  const step = axis === 'y' ? wide / HIGH : 1;
  return BESIDE.flatMap((off) =>
    [...ALONG, 1 + past, -past].map((share) => {
      const at = pointOn(from, to, share);
      return axis === 'x' ? { x: at.x, y: at.y + off } : { x: at.x + off * step, y: at.y };
    }),
  );
}

/** A part narrower than this on the screen would be gone under a figure. */
const THIN = 44;

/** What figures keep clear of: lettering, thin parts that are selected, and the handles of what is selected. */
export function keptClear(
  layout: Layout,
  selected: ReadonlySet<string>,
  handles: readonly Handle[],
  view: View,
): Box[] {
  const parts = layout.parts
    .filter((laid) => {
      const isThin = Math.min(laid.box.w, laid.box.h) * view.scale < THIN;
      return isLettered(laid) || (isThin && selected.has(laid.part));
    })
    .map(({ box }) => {
      const { x, y } = toScreen(view, { x: box.x, y: box.y + box.h });
      return { x, y, w: box.w * view.scale, h: box.h * view.scale };
    });
  return [...parts, ...handles.map(({ px }) => gripOf(px))];
}

export const gripOf = ({ x, y }: Point): Box => ({ x: x - GRIP / 2, y: y - GRIP / 2, w: GRIP, h: GRIP });
