import type { Point } from '../../../geometry/shape.ts';
import { pick } from '../../../list/at.ts';
import type { Mm } from '../../../measure/units.ts';

export const HOURS = 12;

/** As dials have them: four is IIII there, against VIII. Common practice, no source. */
const NUMERALS = ['I', 'II', 'III', 'IIII', 'V', 'VI', 'VII', 'VIII', 'IX', 'X', 'XI', 'XII'] as const;

/** Shares of the height: a stroke, the width of V and X, and between two letters. By eye: no two numerals meet. */
const STROKE = 0.12;
const WIDE = 0.5;
const GAP = 0.075;

/**
 * The strokes of an hour's numeral over the middle of a clock, between two heights: each letter as the corners of its
 * outline, counterclockwise.
 */
export function numeralOf(hour: number, low: Mm, high: Mm): Point[][] {
  const letters = [...pick(NUMERALS, hour - 1)];
  const height = high - low;
  const widthOf = (letter: string) => (letter === 'I' ? STROKE : WIDE);
  const all = letters.reduce((sum, letter) => sum + widthOf(letter), GAP * (letters.length - 1));
  let left = -all / 2;
  return letters.map((letter) => {
    const at = left;
    left += widthOf(letter) + GAP;
    return outlineOf(letter).map(([x, y]) => ({ x: (at + x) * height, y: low + y * height }));
  });
}

/** A letter 1 high; strokes of V and X are as wide across as those of I. */
function outlineOf(letter: string): readonly (readonly [x: number, y: number])[] {
  const [q, w] = [STROKE, WIDE];
  if (letter === 'I') {
    return [
      [0, 0],
      [q, 0],
      [q, 1],
      [0, 1],
    ];
  }
  if (letter === 'V') {
    return [
      [(w - q) / 2, 0],
      [(w + q) / 2, 0],
      [w, 1],
      [w - q, 1],
      [w / 2, q / (w - q)],
      [q, 1],
      [0, 1],
    ];
  }
  const notch = w / 2 / (w - q);
  return [
    [0, 0],
    [q, 0],
    [w / 2, 1 - notch],
    [w - q, 0],
    [w, 0],
    [(w + q) / 2, 1 / 2],
    [w, 1],
    [w - q, 1],
    [w / 2, notch],
    [q, 1],
    [0, 1],
    [(w - q) / 2, 1 / 2],
  ];
}
