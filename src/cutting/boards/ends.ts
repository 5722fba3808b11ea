import type { Point } from '../../geometry/shape.ts';
import { SAME_LENGTH, SAME_PLACE } from '../../geometry/tolerance.ts';
import type { Piece, PieceEnd } from '../../joinery/piece.ts';
import { lastOf, pick } from '../../list/at.ts';
import type { FlatStock, ShapedStock } from '../../materials/types.ts';
import { type Deg, type Mm, radians } from '../../measure/units.ts';

/** How far an end falls back from the long point, by height across the board; straight between entries. */
type Recess = readonly { readonly y: Mm; readonly back: Mm }[];

/** One end of a piece as it lies on the board. */
export interface LyingEnd {
  readonly recess: Recess;
  /** As shown in `BoardCut`: positive leaves the long point on the upper edge. */
  readonly miter: Deg;
  /** Width of the kerf measured along the board. */
  readonly kerf: Mm;
  /** Saw settings in the order they are cut; equal strings need no turn of the saw. */
  readonly settings: readonly string[];
}

/** Both ends of a piece in one way of lying, and whether it is turned end for end. */
export interface Lying {
  readonly left: LyingEnd;
  readonly right: LyingEnd;
  readonly flipped: boolean;
}

/** A blade at `miter` and `bevel` takes this much along the board. */
const kerfAlong = (kerf: Mm, miter: Deg, bevel: Deg): Mm =>
  kerf / (Math.cos(radians(miter)) * Math.cos(radians(bevel)));

/** Leftmost and rightmost x of the outline at height y. */
function spanAt(outline: readonly Point[], y: Mm): [Mm, Mm] {
  let low = Infinity;
  let high = -Infinity;
  outline.forEach((a, i) => {
    const b = pick(outline, (i + 1) % outline.length);
    if (Math.min(a.y, b.y) > y || Math.max(a.y, b.y) < y) return;
    const flat = Math.abs(b.y - a.y) <= SAME_LENGTH;
    const xs = flat ? [a.x, b.x] : [a.x + ((b.x - a.x) * (y - a.y)) / (b.y - a.y)];
    low = Math.min(low, ...xs);
    high = Math.max(high, ...xs);
  });
  return [low, high];
}

/** The plain trapezoid that the two end settings describe, where a piece has no usable outline. */
function trapezoid(piece: Piece): Point[] {
  const [start, end] = piece.ends;
  const fall = (e: PieceEnd, edge: 'left' | 'right'): Mm =>
    e.second === null && (edge === 'left' ? e.miter < 0 : e.miter > 0)
      ? piece.width * Math.tan(radians(Math.abs(e.miter)))
      : 0;
  return [
    { x: fall(start, 'right'), y: 0 },
    { x: piece.overall - fall(end, 'right'), y: 0 },
    { x: piece.overall - fall(end, 'left'), y: piece.width },
    { x: fall(start, 'left'), y: piece.width },
  ];
}

/**
 * The outline moved to start at (0, 0). A piece that is longer than its outline (an allowance to be
 * measured in place) is taken by its end settings.
 */
export function lyingOutline(piece: Piece): Point[] {
  const xs = piece.outline.map((p) => p.x);
  const ys = piece.outline.map((p) => p.y);
  const x0 = Math.min(...xs);
  const y0 = Math.min(...ys);
  const fits =
    piece.outline.length >= 3 &&
    Math.abs(Math.max(...xs) - x0 - piece.overall) <= SAME_PLACE &&
    Math.max(...ys) - y0 <= piece.width + SAME_PLACE;
  return fits ? piece.outline.map((p) => ({ x: p.x - x0, y: p.y - y0 })) : trapezoid(piece);
}

function recessOf(piece: Piece, outline: readonly Point[], end: 0 | 1, width: Mm): Recess {
  // A tilted cut hides its far face from the outline, and so does any cut of stock that stands on its
  // edge: such an end shares no room with its neighbor.
  const { bevel, second } = piece.ends[end];
  const onEdge = Math.abs(piece.width - width) > SAME_PLACE;
  const tilted = onEdge || bevel !== 0 || (second !== null && second.bevel !== 0);
  const heights = [0, ...outline.map((p) => p.y), piece.width].sort((a, b) => a - b);
  return heights
    .filter((y, i) => i === 0 || y - pick(heights, i - 1) > SAME_LENGTH)
    .map((y) => {
      const [low, high] = spanAt(outline, y);
      const back = end === 0 ? low : piece.overall - high;
      // Where the outline does not reach (a narrowed piece) nothing may intrude either.
      return { y, back: tilted || !Number.isFinite(back) ? 0 : Math.max(0, back) };
    });
}

/** Slope of the cut as the saw sees it: the same number for the two sides of one kerf. */
const setting = (side: 'left' | 'right', miter: Deg, bevel: Deg): string => {
  const turned = (side === 'right' ? miter : -miter).toFixed(6);
  return `${turned === '-0.000000' ? '0.000000' : turned}/${bevel.toFixed(6)}`;
};

function lyingEnd(piece: Piece, recess: Recess, end: 0 | 1, kerf: Mm, flipped: boolean): LyingEnd {
  const { miter, bevel, second } = piece.ends[end];
  const sign = flipped ? -1 : 1;
  const cuts = second === null ? [{ miter, bevel }] : [{ miter, bevel }, second];
  const side = (end === 0) === flipped ? 'right' : 'left';
  return {
    recess: flipped ? [...recess].reverse().map(({ y, back }) => ({ y: piece.width - y, back })) : recess,
    miter: miter === 0 ? 0 : sign * miter,
    kerf: Math.max(...cuts.map((c) => kerfAlong(kerf, c.miter, c.bevel))),
    settings: cuts.map((c) => setting(side, sign * c.miter, c.bevel)),
  };
}

/**
 * The ways a piece may lie. Turned end for end it stays show face up and its upper edge comes to lie
 * below: a plain rectangle in section does not mind, a molding does.
 */
export function lyings(piece: Piece, kerf: Mm, stock: FlatStock | ShapedStock): Lying[] {
  const outline = lyingOutline(piece);
  const start = recessOf(piece, outline, 0, stock.width);
  const end = recessOf(piece, outline, 1, stock.width);
  const straight: Lying = {
    left: lyingEnd(piece, start, 0, kerf, false),
    right: lyingEnd(piece, end, 1, kerf, false),
    flipped: false,
  };
  if (stock.form === 'shaped') return [straight];
  const turned: Lying = {
    left: lyingEnd(piece, end, 1, kerf, true),
    right: lyingEnd(piece, start, 0, kerf, true),
    flipped: true,
  };
  return keyOf(turned) === keyOf(straight) ? [straight] : [straight, turned];
}

/** Equal for two ends that are alike: same cuts, same outline. */
export const endKey = (e: LyingEnd): string =>
  `${e.settings.join('+')};${e.recess.map((r) => `${r.y.toFixed(5)}:${r.back.toFixed(5)}`).join(',')}`;

/** Equal for two lyings whose ends are alike, whatever the length between them. */
export const keyOf = (l: Lying): string => `${endKey(l.left)}|${endKey(l.right)}`;

function backAt(recess: Recess, y: Mm): Mm {
  for (let i = 1; i < recess.length; i++) {
    const low = pick(recess, i - 1);
    const high = pick(recess, i);
    if (y > high.y) continue;
    const share = high.y === low.y ? 1 : (y - low.y) / (high.y - low.y);
    return low.back + (high.back - low.back) * Math.min(1, Math.max(0, share));
  }
  return lastOf(recess).back;
}

/** Least and most room that two neighbors' ends leave each other: where either changes direction. */
function rooms(right: Recess, left: Recess): { readonly least: Mm; readonly most: Mm } {
  let least = Infinity;
  let most = -Infinity;
  for (const recess of [right, left]) {
    for (const { y } of recess) {
      const room = backAt(right, y) + backAt(left, y);
      if (room < least) least = room;
      if (room > most) most = room;
    }
  }
  return { least, most };
}

/**
 * Distance from the long point of a piece to the long point of its right neighbor; negative where slanted
 * ends lie side by side. Each blade must clear the other piece at every height, so the wider of the two
 * kerfs separates them where they come closest. Parallel ends come closest everywhere: one cut serves both.
 */
export function gapBetween(right: LyingEnd, left: LyingEnd): Mm {
  return Math.max(right.kerf, left.kerf) - rooms(right.recess, left.recess).least;
}

/** Whether one pass of the saw makes both ends. */
export function shareCut(right: LyingEnd, left: LyingEnd): boolean {
  if (right.settings.length > 1 || right.settings[0] !== left.settings[0]) return false;
  if (left.settings.length > 1) return false;
  const { least, most } = rooms(right.recess, left.recess);
  const bevelled = !right.settings.every((s) => s.endsWith('/0.000000'));
  return !bevelled && most - least <= 1e-4;
}

/**
 * An end put as a point on a line: two ends beside each other take at least the sum of their shares and the
 * distance between their slants.
 */
interface EndPoint {
  readonly share: Mm;
  readonly slant: Mm;
}

/**
 * Neighbors leave each other no more room than at the two edges of the board. With `a`, `b` how far each end
 * falls back at the lower and at the upper edge, the lesser of the two sums is their mean less half their
 * difference, and the wider kerf is no less than half of both. A piece turned end for end keeps both figures.
 */
function pointOf({ recess, kerf }: LyingEnd, side: 'left' | 'right'): EndPoint {
  const low = pick(recess, 0).back;
  const high = lastOf(recess).back;
  return { share: kerf / 2 - (low + high) / 2, slant: (side === 'right' ? low - high : high - low) / 2 };
}

export const rightPoint = (end: LyingEnd): EndPoint => pointOf(end, 'right');
export const leftPoint = (end: LyingEnd): EndPoint => pointOf(end, 'left');
