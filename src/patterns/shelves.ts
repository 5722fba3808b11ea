import type { Point } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';

interface Sized {
  readonly w: Mm;
  readonly h: Mm;
}

/** A thing on a page, by its lower left corner. */
export interface Shelved<T> {
  readonly one: T;
  readonly at: Point;
}

/** Things in rows on pages, the tallest first, each as far left and down as there is room. */
export function onShelves<T extends Sized>(all: readonly T[], room: Sized, apart: Mm): Shelved<T>[][] {
  const pages: Shelved<T>[][] = [];
  let [x, y, row] = [0, 0, 0];
  for (const one of all.toSorted((a, b) => b.h - a.h || b.w - a.w)) {
    if (pages.length > 0 && x + one.w > room.w) [x, y, row] = [0, y + row + apart, 0];
    if (pages.length === 0 || y + one.h > room.h) {
      pages.push([]);
      [x, y, row] = [0, 0, 0];
    }
    pages.at(-1)?.push({ one, at: { x, y } });
    x += one.w + apart;
    row = Math.max(row, one.h);
  }
  return pages;
}
