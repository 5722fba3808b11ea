import type { Color } from '../drawing/drawing.ts';
import { intersect, offset } from '../geometry/clip.ts';
import { areaOf, boxesMeet, boxOf } from '../geometry/region.ts';
import type { KeptResults } from '../layout/kept.ts';
import { isFill } from '../lettering/result.ts';
import { at } from '../list/at.ts';
import { addUp } from '../list/totals.ts';
import type { Mm } from '../measure/units.ts';
import type { Surface } from './input.ts';
import type { Shown } from './show.ts';

/** What lies so near to letters is seen beside them. */
const BESIDE: Mm = 1;
/** Less than this share of what is seen beside them no one reads them by: a seam, the tip of one letter. Our own choice. */
const LEAST_SHARE = 0.05;

/**
 * The colors beside letters that have no board: of all that they lie across. None for a sign with a board, or a shape
 * of its own that is painted, whose ground is that.
 */
export function groundsBeside(
  sign: string,
  shown: readonly Shown[],
  colorOf: (surface: Surface) => Color | null,
  results: KeptResults,
): Color[] {
  const own = shown.filter(({ surface }) => surface.part === sign);
  const isLetter = ({ kind }: Surface) => kind === 'letter' || kind === 'sawn';
  if (own.some(({ surface }) => !isLetter(surface))) return [];
  const areas = new Map<Color, number>();
  for (const { surface, region } of own) {
    if (surface.role === null || !isFill({ role: surface.role })) continue;
    const box = boxOf(region);
    const near = shown.filter((other) => {
      const beside = other.surface.part === sign ? null : boxOf(other.region);
      return box && beside && boxesMeet(box, beside);
    });
    const regions = near.map((other) => other.region);
    const found = results.of(surface, 'beside letters', [region, ...regions], () => {
      const around = offset(region, BESIDE, 'round');
      return regions.map((other) => areaOf(intersect(around, other)));
    });
    near.forEach((other, i) => {
      const color = colorOf(other.surface);
      if (color !== null) addUp(areas, color, at(found, i));
    });
  }
  const all = [...areas.values()].reduce((sum, area) => sum + area, 0);
  return [...areas].filter(([, area]) => area >= LEAST_SHARE * all && area > 0).map(([color]) => color);
}
