import { flatten, textCorners } from '../../src/drawing/walk.ts';
import { boxOfPoints } from '../../src/geometry/ring.ts';
import type { Box } from '../../src/geometry/shape.ts';
import type { PdfPage } from '../../src/output/pdf/pdf.ts';

/** Points of PDF (ISO 32000-1, 8.3.2.3: 72 to the inch) in a millimeter. */
const POINTS = 72 / 25.4;
/** At arm's length, 500 mm, capitals of 16 arc minutes are 2.33 mm high (NUREG-0700); on a sheet in the hand less will do. */
export const LEAST = 8;

export interface Told {
  readonly words: string;
  readonly points: number;
  readonly box: Box;
}

export const toldOn = (page: PdfPage): Told[] =>
  flatten(page.drawing.items)
    .texts.filter(({ item }) => item.text.trim() !== '')
    .map((flat) => ({
      words: flat.item.text,
      points: flat.item.size * Math.hypot(flat.matrix.a, flat.matrix.b) * POINTS,
      box: boxOfPoints(textCorners(flat)),
    }));

/** How far two boxes lie in each other, in the direction of the lesser depth. */
const depth = (a: Box, b: Box): number =>
  Math.min(
    Math.min(a.x + a.w, b.x + b.w) - Math.max(a.x, b.x),
    Math.min(a.y + a.h, b.y + b.h) - Math.max(a.y, b.y),
  );

/** Pairs that lie in each other, looked for among those that begin before one ends, from left to right. */
export function overlaps(told: readonly Told[]): string[] {
  const sorted = [...told].sort((a, b) => a.box.x - b.box.x);
  return sorted.flatMap((a, i) => {
    const found: string[] = [];
    for (let k = i + 1; k < sorted.length && sorted[k]!.box.x < a.box.x + a.box.w; k++) {
      const b = sorted[k]!;
      if (depth(a.box, b.box) > 0.1) found.push(`${a.words} / ${b.words}`);
    }
    return found;
  });
}
