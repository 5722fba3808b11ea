import { type Only, onlyOf } from '../../design/path.ts';
import type { Run } from '../../design/schema.ts';
import { intersect } from '../../geometry/clip.ts';
import { distance } from '../../geometry/point.ts';
import { areaOf, containsPointInRegion } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { freed } from './drawn.ts';
import { cornersOfSides, legsOfRun, madeSides, pathOfRun, regionOfRun, sidesOfRun } from './run.ts';

/**
 * What is left of a run where something lies in its way, as sides of its path: from each side that it lies on to the next
 * such side, in order of travel, both ends of each to be cut to it; at the ends of an open path only the inner one. What
 * begins within it is left out. None where it lies on no side.
 *
 * @param width of the stock
 */
export function stretchesBeside(
  run: Pick<Run, 'path' | 'side'>,
  box: Box,
  width: Mm,
  border: Region,
): { readonly only: Only; readonly starts: boolean; readonly ends: boolean }[] {
  const { path } = run;
  const sides = madeSides(path, box, width);
  const { points, closed } = pathOfRun(run, box, width);
  const count = sides.length;
  const met = sides.flatMap((side, i) => {
    const alone = cornersOfSides([side], false);
    const band = alone.points.length > 1 ? regionOfRun(run, alone, width) : [];
    return areaOf(intersect(band, border)) > SAME_PLACE ? [i] : [];
  });
  if (met.length === 0) return [];
  // Of each corner the middle of the stock.
  const legs = legsOfRun(run, { points, closed }, { width, thickness: 0 });
  const corner = (i: number) => {
    const before = sides.slice(0, i).reduce((sum, side) => sum + side.count, 0);
    return before < legs.length ? pick(legs, before).start : pick(legs, legs.length - 1).end;
  };
  const { from = 0 } = onlyOf(path) ?? {};
  const between = closed
    ? met.map((side, i) => ({ side, to: met[i + 1] ?? pick(met, 0) + count, starts: true, ends: true }))
    : [-1, ...met].map((side, i) => ({
        side: Math.max(side, 0),
        to: met[i] ?? count - 1,
        starts: side >= 0,
        ends: i < met.length,
      }));
  return between.flatMap(({ side, to, starts, ends }) => {
    const first = corner(starts ? (side + 1) % (closed ? count : count + 1) : 0);
    if (containsPointInRegion(border, first)) return [];
    return [{ only: { from: from + side, count: to - side + 1 }, starts, ends }];
  });
}

/** A path whose sides can be told one by one: a ready shape drawn corner by corner. Null where it is not one border. */
export function drawnPath(
  path: Run['path'],
  box: Box,
): Exclude<Run['path'], { readonly form: 'shape' }> | null {
  if (path.form !== 'shape') return path;
  const { form: _, shape, open, ...made } = path;
  const own = shape.form === 'polygon' ? shape : freed(shape, box);
  if (own?.form !== 'polygon') return null;
  const drawn = { form: 'points', points: own.points, closed: true, ...made } as const;
  if (!open) return drawn;
  const [first, ...more] = sidesOfRun(path, box);
  const all = sidesOfRun(drawn, box);
  const from = first ? all.findIndex((side) => distance(side.from, first.from) < SAME_PLACE) : -1;
  const to = all.findIndex((side) => distance(side.to, (more.at(-1) ?? side).to) < SAME_PLACE);
  if (from < 0 || to < 0) return null;
  return { ...drawn, only: { from, count: ((to - from + all.length) % all.length) + 1 } };
}
