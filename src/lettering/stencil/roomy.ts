import { add, distance, leftNormal, scale, subtract, unit } from '../../geometry/point.ts';
import { containsPoint } from '../../geometry/ring.ts';
import type { Point, Region, Ring } from '../../geometry/shape.ts';
import { cyclic } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import { covers } from './inside.ts';

/** Places along a border are this many reaches apart. */
const APART = 4;
/**
 * So many places one after another that no disk lies against are a long thin stretch. A finger that is told as long has
 * seven at least, with those on its other side.
 */
const THIN_PLACES = 4;
/** The disk lies a hair off the border, or it would always touch the letters. */
const OFF = 1.02;

/**
 * Whether a disk of the reach gets into all of the sheet around a letter but short corners, told by its border and
 * the letter grown by the reach: then no piece of sheet hangs on a thin neck, and no finger of it is long. False of
 * what is not sure, so of several letters at once.
 *
 * A piece that hangs on a neck would be one more hole of the grown letter. The border of a thin finger lies on both sides
 * of it, and the disk rolls over none of that.
 *
 * @param grown the letter grown by the reach
 */
export function isRoomy(letters: Region, grown: Region, reach: Mm): boolean {
  const [letter, ...others] = letters;
  const [around, ...more] = grown;
  if (!letter || !around || others.length > 0 || more.length > 0) return false;
  const pieces = letter.holes.map(
    (hole) => around.holes.filter(([at]) => at && containsPoint(hole, at)).length,
  );
  const inHoles = pieces.reduce((sum, count) => sum + count, 0);
  if (pieces.some((count) => count > 1) || inHoles < around.holes.length) return false;
  const isWide = (at: Point) => !covers(around, at);
  return [letter.outer, ...letter.holes].every((border) => isShortlyThin(border, reach, isWide));
}

/** Whether a disk lies against a border, sheet on its right, at places close enough to each other. */
function isShortlyThin(border: Ring, reach: Mm, isWide: (middle: Point) => boolean): boolean {
  const middles = disksAlong(border, reach);
  let thin = 0;
  // Once around and on, for a stretch that began before the start.
  for (let i = 0; i < middles.length + THIN_PLACES; i += 1) {
    thin = isWide(cyclic(middles, i)) ? 0 : thin + 1;
    if (thin >= THIN_PLACES) return false;
  }
  return true;
}

/** The middles of disks that lie against a border at even steps. */
function disksAlong(border: Ring, reach: Mm): Point[] {
  const middles: Point[] = [];
  let next = 0;
  border.forEach((from, i) => {
    const to = cyclic(border, i + 1);
    const length = distance(from, to);
    const along = unit(subtract(to, from));
    const beside = add(from, scale(leftNormal(along), -OFF * reach));
    for (; next < length; next += APART * reach) middles.push(add(beside, scale(along, next)));
    next -= length;
  });
  return middles;
}
