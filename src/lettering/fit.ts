import { type Look, looksIn } from '../design/look.ts';
import type { Lettering, LetterLine } from '../design/schema.ts';
import type { Box, Point, Region } from '../geometry/shape.ts';
import { FLATNESS } from '../geometry/tolerance.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Font } from './font.ts';
import { shadeVector } from './layers.ts';
import { boxOfPaths, placedPaths, tracksOf } from './placed.ts';
import { type Setting, setText } from './setting.ts';
import type { Track } from './track.ts';

/** The board the letters go on: id and size of its box. */
export interface SignBox {
  readonly id: string;
  readonly w: Mm;
  readonly h: Mm;
}

/** How far the outline and shade reach beyond the ink of the letters. */
export interface Reach {
  readonly left: Mm;
  readonly right: Mm;
  readonly below: Mm;
  readonly above: Mm;
}

/** What a text may fill: the box of what is seen of the sign, less margins and reach; maybe less than nothing. */
const roomFor = ({ margin }: Lettering, seen: Box, reach: Reach): { w: Mm; h: Mm } => ({
  w: seen.w - 2 * margin - reach.left - reach.right,
  h: seen.h - 2 * margin - reach.below - reach.above,
});

/** Sizes of the room that a fit has to fill. */
const neededOf = ({ fit }: Lettering, room: { w: Mm; h: Mm }): readonly Mm[] =>
  ({ none: [], width: [room.w], height: [room.h], both: [room.w, room.h], lines: [room.w] })[fit];

/** The least size of room that a fit has to fill, when it leaves nothing to fill; null when there is room. */
export function lackingRoom(lettering: Lettering, seen: Box, reach: Reach): Mm | null {
  if (lettering.along !== undefined) return null;
  const least = Math.min(...neededOf(lettering, roomFor(lettering, seen, reach)));
  return least <= 0 ? least : null;
}

/**
 * Factor on the cap heights that makes the ink fill the room that what is seen of the sign leaves, less
 * margins and reach; 1 where there is none.
 */
export function factorOf(
  lettering: Lettering,
  fontOf: (line: LetterLine) => Font,
  board: Region,
  seen: Box,
  reach: Reach,
): number {
  const room = roomFor(lettering, seen, reach);
  if (lettering.along !== undefined) return factorAlong(lettering, fontOf, board);
  const inkAt = (factor: number) => {
    const set = setText(lettering, fontOf, factor);
    return boxOfPaths(placedPaths(set, tracksOf(set, lettering, board)));
  };
  const fits = (ink: Box): number => {
    const across = room.w / ink.w;
    const up = room.h / ink.h;
    return lettering.fit === 'width' || lettering.fit === 'lines'
      ? across
      : lettering.fit === 'height'
        ? up
        : Math.min(across, up);
  };
  const ink = inkAt(1);
  const needed = neededOf(lettering, room);
  if (needed.length === 0 || ink.w <= 0 || ink.h <= 0 || needed.some((size) => size <= 0)) return 1;
  // Straight text grows in proportion; bent text does not, since its rise stays as asked.
  return lettering.arcRise === 0 ? fits(ink) : balanced((factor) => fits(inkAt(factor)));
}

/** Letters twice as high have half of their inner outline left at worst: between no step back and a whole one. */
const DAMPED = 2 / 3;
const STEPS_ALONG = 12;

/** Factor at which the line that has least to spare fills its share of the outline. */
function factorAlong(lettering: Lettering, fontOf: (line: LetterLine) => Font, board: Region): number {
  if (lettering.fit === 'none') return 1;
  let factor = 1;
  for (let i = 0; i < STEPS_ALONG; i += 1) {
    const set = setText(lettering, fontOf, factor);
    const tracks = tracksOf(set, lettering, board);
    const shares = set.lines.flatMap(({ left, right }, k) =>
      right > left ? [roomOn(pick(tracks, k), lettering) / (right - left)] : [],
    );
    const by = Math.min(...shares);
    if (!(by > 0 && by < Infinity)) return factor;
    if (Math.abs(by - 1) < 1e-4) break;
    factor *= by ** DAMPED;
  }
  return factor;
}

/** What a line may fill: of an outline half, so that one more has room at the foot, of a path all, less a margin at both ends. */
const roomOn = ({ length = Infinity, open }: Track, { margin }: Lettering): Mm =>
  (open ? length : length / 2) - 2 * margin;

/**
 * Factor at which `spare` (room over need, falling) comes to 1. Bent text grows nearly by a straight line
 * over the factor, so false position with halving of the end that stands still finds it in a few steps.
 */
function balanced(spare: (factor: number) => number): number {
  const over = (factor: number) => 1 / spare(factor) - 1;
  let low = 1;
  for (let i = 0; i < 30 && over(low) > 0; i += 1) low /= 2;
  let high = 2 * low;
  for (let i = 0; i < 30 && over(high) < 0; i += 1) high *= 2;
  let [atLow, atHigh] = [over(low), over(high)];
  for (let i = 0; i < 60 && high - low > 1e-9 * high; i += 1) {
    const next = atHigh > atLow ? low - (atLow * (high - low)) / (atHigh - atLow) : (low + high) / 2;
    const at = over(next);
    if (Math.abs(at) < 1e-9) return next;
    if (at < 0) {
      [low, atLow] = [next, at];
      atHigh /= 2;
    } else {
      [high, atHigh] = [next, at];
      atLow /= 2;
    }
  }
  return low;
}

/** The move that puts the text in the middle of what is seen of the sign, and to its place from there. */
export function placeOf(lettering: Lettering, setting: Setting, ink: Box, seen: Box, reach: Reach): Point {
  // Lines along an outline stand where that is.
  if (lettering.along !== undefined) return { x: 0, y: 0 };
  const first = setting.lines[0];
  const last = setting.lines.at(-1);
  const caps =
    first && last ? (first.baseline + first.top + last.baseline + last.foot) / 2 : ink.y + ink.h / 2;
  const fitsHeight = lettering.fit === 'height' || lettering.fit === 'both';
  const fitsWidth = ['width', 'both', 'lines'].includes(lettering.fit);
  const middle = {
    x: ink.x + ink.w / 2 + (fitsWidth ? (reach.right - reach.left) / 2 : 0),
    y: fitsHeight
      ? ink.y + ink.h / 2 + (reach.above - reach.below) / 2
      : lettering.arcRise === 0
        ? caps
        : ink.y + ink.h / 2,
  };
  return {
    x: seen.x + seen.w / 2 - middle.x + lettering.shift.x,
    y: seen.y + seen.h / 2 - middle.y + lettering.shift.y,
  };
}

/** How far a box stands out of the one inside of it. */
export const reachOf = (inner: Box, outer: Box): Reach => ({
  left: Math.max(0, inner.x - outer.x),
  right: Math.max(0, outer.x + outer.w - inner.x - inner.w),
  below: Math.max(0, inner.y - outer.y),
  above: Math.max(0, outer.y + outer.h - inner.y - inner.h),
});

/** Farthest reach of the outlines without sharp corners, and of the shades; corners may run out farther. */
export function expectedReach(lettering: Lettering): Reach {
  const all = looksIn(lettering).map(reachOfLook);
  const most = (side: (typeof SIDES)[number]) => Math.max(...all.map((reach) => reach[side]));
  return { left: most('left'), right: most('right'), below: most('below'), above: most('above') };
}

function reachOfLook({ outline, shade, ribbon }: Look): Reach {
  const around = outline?.width ?? 0;
  const by = shade ? shadeVector(shade) : { x: 0, y: 0 };
  const band = ribbon?.margin ?? 0;
  const ends = band + (ribbon?.notch ?? 0);
  return {
    left: Math.max(ends, around + Math.max(0, -by.x)),
    right: Math.max(ends, around + Math.max(0, by.x)),
    below: Math.max(band, around + Math.max(0, -by.y)),
    above: Math.max(band, around + Math.max(0, by.y)),
  };
}

const SIDES = ['left', 'right', 'below', 'above'] as const;
/** Less than this over a margin is nothing. */
const SAME_PLACE: Mm = 0.001;

/** Whether the reach that was kept free serves: layers are measured a little inside of their true curves. */
export const isEnough = (kept: Reach, needed: Reach): boolean =>
  SIDES.every((side) => needed[side] <= kept[side] + SAME_PLACE && needed[side] >= kept[side] - 2 * FLATNESS);
