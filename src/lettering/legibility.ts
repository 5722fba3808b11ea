import { intersect } from '../geometry/clip.ts';
import { boxOfPath } from '../geometry/path.ts';
import { ringsOf } from '../geometry/region.ts';
import { distanceToSegment } from '../geometry/segment.ts';
import type { Region } from '../geometry/shape.ts';
import { cyclic } from '../list/at.ts';
import { inches, MM_PER_INCH, type Mm } from '../measure/units.ts';
import type { Font } from './font.ts';
import type { PlacedGlyph } from './result.ts';

/**
 * Help in judging whether lettering can be read, as information: a wall bed's face is no sign that the
 * standard governs.
 */

/** A proportion with the limits of the standard, all as shares of the letter height. */
export interface Proportion {
  readonly what: 'width' | 'stroke' | 'gap' | 'line-space';
  readonly share: number;
  readonly least: number;
  readonly most: number;
  readonly within: boolean;
  /** Clause of the 2010 ADA Standards for Accessible Design. */
  readonly source: string;
}

/** 2010 ADA Standards, visual characters: 703.5.4, 703.5.7, 703.5.8, 703.5.9. */
const LIMITS = {
  width: { least: 0.55, most: 1.1, source: '703.5.4' },
  stroke: { least: 0.1, most: 0.3, source: '703.5.7' },
  gap: { least: 0.1, most: 0.35, source: '703.5.8' },
  'line-space': { least: 1.35, most: 1.7, source: '703.5.9' },
} as const;

const proportion = (what: Proportion['what'], share: number): Proportion => {
  const { least, most, source } = LIMITS[what];
  return { what, share, least, most, within: share >= least && share <= most, source: `ADA ${source}` };
};

/**
 * A font's proportions against the standard: width of the O and stroke of the I over the height of the I,
 * measured on their outlines. Empty for fonts without these letters.
 */
export function fontProportions(font: Font): Proportion[] {
  const o = font.outline('O');
  const i = font.outline('I');
  if (o.length === 0 || i.length === 0) return [];
  const { w, h } = boxOfPath(i);
  return [proportion('width', boxOfPath(o).w / h), proportion('stroke', w / h)];
}

/**
 * The gap between two letters over the letter height. The standard measures between the two closest points
 * of adjacent characters, spaces between words not counted.
 */
export const gapProportion = (gap: Mm, capHeight: Mm): Proportion => proportion('gap', gap / capHeight);

/**
 * The gap between neighbors on a line that is smallest for its letters, with the cap height of the taller
 * one; null where no line has two letters.
 */
export function narrowestGap(
  glyphs: readonly PlacedGlyph[],
): { readonly gap: Mm; readonly capHeight: Mm } | null {
  let least: { gap: Mm; capHeight: Mm } | null = null;
  glyphs.forEach((left, i) => {
    const right = glyphs[i + 1];
    if (right?.line !== left.line) return;
    const gap = distanceBetween(left.region, right.region);
    const capHeight = Math.max(left.capHeight, right.capHeight);
    if (least === null || gap / capHeight < least.gap / least.capHeight) least = { gap, capHeight };
  });
  return least;
}

/** Between polygons that do not overlap, the least distance is one from a corner to a side. */
function distanceBetween(a: Region, b: Region): Mm {
  if (intersect(a, b).length > 0) return 0;
  return Math.min(cornersToSides(a, b), cornersToSides(b, a));
}

function cornersToSides(a: Region, b: Region): Mm {
  let least = Infinity;
  const corners = ringsOf(a).flat();
  for (const ring of ringsOf(b)) {
    ring.forEach((from, i) => {
      const to = cyclic(ring, i + 1);
      for (const corner of corners) least = Math.min(least, distanceToSegment(corner, from, to));
    });
  }
  return least;
}

/** Baseline to baseline over the letter height. */
export const lineSpaceProportion = (lineSpace: number): Proportion => proportion('line-space', lineSpace);

/** Rows of ADA table 703.5.5: baseline up to, distance where the least height ends, that height; inches. */
const ROWS = [
  { upTo: 70, within: 72, height: 5 / 8 },
  { upTo: 120, within: 180, height: 2 },
  { upTo: Infinity, within: 252, height: 3 },
];
/** The lowest visual character stands at least this high (703.5.6). */
const LOWEST_IN = 40;
const PER_FOOT = 1 / 8;

/**
 * Least letter height for a baseline that high above the floor, read from that far away: ADA table 703.5.5,
 * an eighth of an inch more for every foot beyond the row's distance. Null below 40 in, where the standard
 * has no visual characters.
 */
export function leastHeight(baseline: Mm, distance: Mm): Mm | null {
  const high = baseline / MM_PER_INCH;
  const row = ROWS.find(({ upTo }) => high <= upTo);
  if (high < LOWEST_IN || !row) return null;
  const beyond = Math.max(0, distance / MM_PER_INCH - row.within);
  return inches(row.height + (PER_FOOT * beyond) / 12);
}

/**
 * How far off road-sign words of this letter height are read: 30 ft an inch of letter in the 2009 manual on
 * traffic control devices (2A.13), 40 ft an inch in earlier ones. A rule of thumb for indoor signs.
 */
export function readingDistance(capHeight: Mm): { readonly near: Mm; readonly far: Mm } {
  const tall = capHeight / MM_PER_INCH;
  return { near: inches(tall * 30 * 12), far: inches(tall * 40 * 12) };
}
