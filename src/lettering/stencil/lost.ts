import { intersect } from '../../geometry/clip.ts';
import { areaOf, boxesMeet, boxOf } from '../../geometry/region.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Bridge, PlacedGlyph, Stencil } from '../result.ts';

/** A letter of which bridges leave less than this share is not read any more. Common practice, no source. */
const LEAST_LEFT = 0.5;

/** Characters that bridges cover by more than half, each once, in reading order. */
export function lostLetters(glyphs: readonly PlacedGlyph[], { cut, bridges }: Stencil): string[] {
  const lost = glyphs.filter(({ region }) => {
    const box = boxOf(region);
    const ink = areaOf(region);
    if (!box || mostCovered(bridges, box) < (1 - LEAST_LEFT) * ink) return false;
    const near = cut.filter(({ outer }) => boxesMeet(boxOfPoints(outer), box));
    return areaOf(intersect(region, near)) < LEAST_LEFT * ink;
  });
  return [...new Set(lost.map(({ character }) => character))];
}

/** More than the bridges on a letter can cover, reckoned without its outline: most letters are let off with that. */
function mostCovered(bridges: readonly Bridge[], { x, y, w, h }: Box): number {
  return bridges.reduce((sum, { at, width, length }) => {
    const reach = Math.hypot(width, length) / 2;
    const meets = at.x > x - reach && at.x < x + w + reach && at.y > y - reach && at.y < y + h + reach;
    return meets ? sum + width * (length + 3 * width) : sum;
  }, 0);
}
