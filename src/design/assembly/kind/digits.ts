import { add, leftNormal, scale, subtract, unit } from '../../../geometry/point.ts';
import { intersectLines } from '../../../geometry/segment.ts';
import type { Point } from '../../../geometry/shape.ts';
import { pick, under } from '../../../list/at.ts';
import type { Mm } from '../../../measure/units.ts';

/** Shares of the height: a stroke, a figure's width, what its corners are clipped by, and between two. By eye. */
const STROKE = 0.15;
const WIDE = 0.58;
const CLIP = 0.15;
const GAP = 0.13;

type Corner = readonly [x: number, y: number];

/** Middles of the strokes at the left, right, foot and head of a figure 1 high, and half way up. */
const [L, R, F, H, M] = [STROKE / 2, WIDE - STROKE / 2, STROKE / 2, 1 - STROKE / 2, 1 / 2];
/** Of a figure whose side hangs or stands open: how far that end comes down from the head. */
const HOOK = 0.27;

/** The left and the right half of a closed figure; they meet in its middle. */
const LEFT: readonly Corner[] = [
  [WIDE / 2, H],
  [L + CLIP, H],
  [L, H - CLIP],
  [L, F + CLIP],
  [L + CLIP, F],
  [WIDE / 2, F],
];
const mirrored = (line: readonly Corner[]): Corner[] => line.map(([x, y]) => [WIDE - x, y]);
const turnedOver = (line: readonly Corner[]): Corner[] => line.map(([x, y]) => [WIDE - x, 1 - y]);
/** Six: the left half, a hook at its head, and a bowl that begins at its stroke. */
const SIX: readonly (readonly Corner[])[] = [
  LEFT,
  [
    [WIDE / 2, H],
    [R - CLIP, H],
    [R, H - CLIP],
    [R, 1 - HOOK],
  ],
  [
    [STROKE, M],
    [R - CLIP, M],
    [R, M - CLIP],
    [R, F + CLIP],
    [R - CLIP, F],
    [WIDE / 2, F],
  ],
];

/** Figures by the middles of their strokes: lines that are as wide as a stroke, none of which lies on another. */
const LINES: Readonly<Record<string, readonly (readonly Corner[])[]>> = {
  0: [LEFT, mirrored(LEFT)],
  2: [
    [
      [L, 1 - HOOK],
      [L, H - CLIP],
      [L + CLIP, H],
      [R - CLIP, H],
      [R, H - CLIP],
      [R, M + 0.1],
      [L, 0.25],
      [L, F],
      [WIDE, F],
    ],
  ],
  5: [
    [
      [WIDE, H],
      [L, H],
      [L, M + 0.04],
      [R - CLIP, M + 0.04],
      [R, M + 0.04 - CLIP],
      [R, F + CLIP],
      [R - CLIP, F],
      [L + CLIP, F],
      [L, F + CLIP],
      [L, HOOK],
    ],
  ],
  6: SIX,
  9: SIX.map(turnedOver),
};

/** Clipped corners of an outline, outside and inside of a stroke, and how far a waist comes in. */
const [OUT, IN, WAIST] = [CLIP + STROKE * (1 - Math.SQRT1_2), CLIP - STROKE * (1 - Math.SQRT1_2), 0.06];
/** The right side of three and eight from the foot up, with a waist, and back down within, around a bar half way up. */
const WAISTED = (bar: number): { readonly up: readonly Corner[]; readonly down: readonly Corner[] } => ({
  up: [
    [WIDE - OUT, 0],
    [WIDE, OUT],
    [WIDE, M - 0.1],
    [WIDE - WAIST, M],
    [WIDE, M + 0.1],
    [WIDE, 1 - OUT],
    [WIDE - OUT, 1],
  ],
  down: [
    [WIDE - STROKE - IN, 1 - STROKE],
    [WIDE - STROKE, 1 - STROKE - IN],
    [WIDE - STROKE, M + STROKE / 2],
    [bar, M + STROKE / 2],
    [bar, M - STROKE / 2],
    [WIDE - STROKE, M - STROKE / 2],
    [WIDE - STROKE, STROKE + IN],
    [WIDE - STROKE - IN, STROKE],
  ],
});
const [THREE, EIGHT] = [WAISTED(0.2), WAISTED(WIDE / 2)];
const HALF: readonly Corner[] = [
  [WIDE / 2, 0],
  ...EIGHT.up,
  [WIDE / 2, 1],
  [WIDE / 2, 1 - STROKE],
  ...EIGHT.down,
  [WIDE / 2, STROKE],
];

/** Where the stem of one, and that of an open four, stand. */
const [ONE, FOUR] = [0.17, WIDE - STROKE - 0.07];

/** Those that are told by their outlines, counterclockwise: slanted strokes end level. */
const OUTLINES: Readonly<Record<string, readonly (readonly Corner[])[]>> = {
  1: [
    [
      [ONE, 0],
      [ONE + STROKE, 0],
      [ONE + STROKE, 1],
      [ONE + 0.03, 1],
      [0, 0.83],
      [0, 0.66],
      [ONE, 0.78],
    ],
  ],
  3: [
    [
      [0, HOOK],
      [0, OUT],
      [OUT, 0],
      ...THREE.up,
      [OUT, 1],
      [0, 1 - OUT],
      [0, 1 - HOOK],
      [STROKE, 1 - HOOK],
      [STROKE, 1 - STROKE - IN],
      [STROKE + IN, 1 - STROKE],
      ...THREE.down,
      [STROKE + IN, STROKE],
      [STROKE, STROKE + IN],
      [STROKE, HOOK],
    ],
  ],
  4: [
    [
      [FOUR, 0],
      [FOUR + STROKE, 0],
      [FOUR + STROKE, 0.24],
      [WIDE, 0.24],
      [WIDE, 0.24 + STROKE],
      [FOUR + STROKE, 0.24 + STROKE],
      [FOUR + STROKE, 0.66],
      [FOUR, 0.66],
      [FOUR, 0.24 + STROKE],
      [STROKE, 0.24 + STROKE],
      [STROKE, 1],
      [0, 1],
      [0, 0.24],
      [FOUR, 0.24],
    ],
  ],
  8: [HALF, mirrored(HALF).reverse()],
  7: [
    [
      [0.12, 0],
      [0.12 + 1.12 * STROKE, 0],
      [WIDE, 1 - STROKE],
      [WIDE, 1],
      [0, 1],
      [0, 1 - STROKE],
      [WIDE - 1.12 * STROKE, 1 - STROKE],
    ],
  ],
};

const widthOf = (digit: string): number => (digit === '1' ? ONE + STROKE : WIDE);

/** One side of a stroke along a line, its corners mitered. */
function besideOf(line: readonly Point[], by: number): Point[] {
  const sides = line.slice(1).map((to, i) => {
    const from = pick(line, i);
    const out = scale(leftNormal(unit(subtract(to, from))), by);
    return [add(from, out), add(to, out)] as const;
  });
  return line.map((_, i) => {
    const [before, after] = [sides[i - 1], sides[i]];
    if (!before || !after) return after ? after[0] : pick(pick(sides, i - 1), 1);
    return intersectLines(...before, ...after) ?? after[0];
  });
}

const pointsOf = (line: readonly Corner[]): Point[] => line.map(([x, y]) => ({ x, y }));

const outlineOf = (line: readonly Corner[]): Point[] => {
  const points = pointsOf(line);
  return [...besideOf(points, -STROKE / 2), ...besideOf(points, STROKE / 2).reverse()];
};

/** The figures of each digit, 1 high, their left and foot at the origin. */
const FIGURES: ReadonlyMap<string, readonly Point[][]> = new Map([
  ...Object.entries(OUTLINES).map(([digit, all]) => [digit, all.map(pointsOf)] as const),
  ...Object.entries(LINES).map(([digit, all]) => [digit, all.map(outlineOf)] as const),
]);

/**
 * An hour in Arabic figures of a height, its middle the origin: block figures with clipped corners, as sign painters draw
 * them, each of parts without a hole that meet and do not overlap: the corners of their outlines.
 */
export function digitsOf(hour: number, height: Mm): Point[][] {
  const digits = [...`${hour}`];
  const all = digits.reduce((sum, digit) => sum + widthOf(digit), GAP * (digits.length - 1));
  let left = -all / 2;
  return digits.flatMap((digit) => {
    const from = left;
    left += widthOf(digit) + GAP;
    return under(FIGURES, digit).map((figure) =>
      figure.map(({ x, y }) => ({ x: (from + x) * height, y: (y - 1 / 2) * height })),
    );
  });
}
