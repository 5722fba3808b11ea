import type { Box } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { sameValue } from '../list/sameValue.ts';
import type { Mm } from '../measure/units.ts';
import type { Layout } from './laid.ts';

/** What became of a part between two layouts. */
export interface Moved {
  readonly part: string;
  readonly what: 'moved' | 'resized' | 'added' | 'gone';
  readonly before: Box | null;
  readonly after: Box | null;
  /** Of its center. */
  readonly by: { readonly x: Mm; readonly y: Mm };
  readonly grown: { readonly w: Mm; readonly h: Mm };
}

const NOTHING = { by: { x: 0, y: 0 }, grown: { w: 0, h: 0 } };

/** The parts that are elsewhere or of another size, in the order of the layout after; those gone last. */
export function whatMoved(before: Layout, after: Layout): Moved[] {
  const found: Moved[] = [];
  for (const [part, box] of after.boxes) {
    const was = before.boxes.get(part);
    if (!was) {
      found.push({ part, what: 'added', before: null, after: box, ...NOTHING });
      continue;
    }
    const grown = { w: box.w - was.w, h: box.h - was.h };
    const by = { x: box.x + box.w / 2 - (was.x + was.w / 2), y: box.y + box.h / 2 - (was.y + was.h / 2) };
    const resized = Math.max(Math.abs(grown.w), Math.abs(grown.h)) > SAME_LENGTH;
    const moved = Math.max(Math.abs(by.x), Math.abs(by.y)) > SAME_LENGTH;
    if (resized || moved)
      found.push({ part, what: resized ? 'resized' : 'moved', before: was, after: box, by, grown });
  }
  for (const [part, box] of before.boxes) {
    if (!after.boxes.has(part)) found.push({ part, what: 'gone', before: box, after: null, ...NOTHING });
  }
  return found;
}

/** Parts that stay where they are, with pieces of another outline: what follows the real edges. */
export function whatFits(before: Layout, after: Layout): string[] {
  const outlines = (layout: Layout) => new Map(layout.parts.map((laid) => [laid.id, laid.region] as const));
  const was = outlines(before);
  const moved = new Set(whatMoved(before, after).map(({ part }) => part));
  const fits = after.parts.filter(
    ({ id, part, region }) => !moved.has(part) && was.has(id) && !sameValue(was.get(id), region),
  );
  return [...new Set(fits.map(({ part }) => part))];
}
