import { boxAroundBoth } from '../../geometry/box.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { pick } from '../../list/at.ts';
import { type Carried, onPixels, type PartsLook, partPainter, screenOf } from './paintParts.ts';
import { type Picture, pictureOf } from './pen.ts';

/** Fewer pieces are as soon drawn one by one. */
const MANY = 24;
/** A picture larger than the canvas by more than this, as of a drawing seen from near, is not made. */
const LARGEST = 2;

interface Kept {
  readonly look: PartsLook;
  readonly parts: readonly LaidPart[];
  readonly picture: Picture;
  readonly box: Box;
}

/**
 * Keeps pictures of what is carried, from one frame to the next. A picture is made when all pieces of a part have moved
 * alike since the frame before, and is put at whole pixels of the screen; what is let go is drawn anew piece by piece.
 *
 * @param picture makes a picture
 */
export function carrier(picture: typeof pictureOf = pictureOf) {
  let kept = new Map<string, Kept>();
  let last: readonly LaidPart[] = [];
  return (parts: readonly LaidPart[], look: PartsLook, ratio: number, carrying: boolean): Carried[] => {
    const before = last;
    const held = kept;
    kept = new Map();
    last = carrying ? parts : [];
    if (!carrying || look.look === 'tape') return [];
    return runsOf(parts).flatMap(({ first, count }) => {
      const group = parts.slice(first, first + count);
      const { part } = pick(group, 0);
      const known = held.get(part);
      const same = known?.look === look && known.picture.ratio === ratio ? known : null;
      const shown = same && shiftBetween(same.parts, group) ? same : null;
      const moved = shown ?? (isMoved(before.slice(first, first + count), group) ? made(group, look) : null);
      if (!moved) return [];
      kept.set(part, moved);
      const shift = shiftBetween(moved.parts, group) ?? { x: 0, y: 0 };
      const onScreen = (by: number) => Math.round(by * look.scale * ratio) / ratio;
      const box = { ...moved.box, x: moved.box.x + onScreen(shift.x), y: moved.box.y - onScreen(shift.y) };
      return [{ picture: moved.picture, box, first, count }];
    });

    function made(group: readonly LaidPart[], as: PartsLook): Kept | null {
      const box = onPixels(group.map(screenOf(as)).reduce(boxAroundBoth), ratio);
      if (box.w > LARGEST * as.width || box.h > LARGEST * as.height) return null;
      const drawn = picture({ width: box.w, height: box.h }, ratio, (pen) => {
        pen.translate(as.view.x - box.x, as.view.y - box.y);
        pen.scale(as.scale, -as.scale);
        group.forEach(partPainter(pen, as));
      });
      return { look: as, parts: group, picture: drawn, box };
    }
  };
}

/** Pieces of one part stand one after the other. */
function runsOf(parts: readonly LaidPart[]): Pick<Carried, 'first' | 'count'>[] {
  const runs: Pick<Carried, 'first' | 'count'>[] = [];
  for (let first = 0; first < parts.length; ) {
    let end = first + 1;
    while (end < parts.length && parts[end]?.part === parts[first]?.part) end++;
    if (end - first >= MANY) runs.push({ first, count: end - first });
    first = end;
  }
  return runs;
}

const isMoved = (before: readonly LaidPart[], now: readonly LaidPart[]): boolean =>
  before[0] !== now[0] && shiftBetween(before, now) !== null;

/** How far all pieces have moved; null where not all of them have, by the same way, or where one looks otherwise. */
function shiftBetween(before: readonly LaidPart[], now: readonly LaidPart[]): Point | null {
  const [a, b] = [before[0], now[0]];
  if (!a || !b || before.length !== now.length) return null;
  const shift = { x: b.box.x - a.box.x, y: b.box.y - a.box.y };
  const alike = now.every((is, i) => {
    const was = pick(before, i);
    if (was === is) return shift.x === 0 && shift.y === 0;
    return was.id === is.id && was.finish === is.finish && was.z1 === is.z1 && isShifted(was, is, shift);
  });
  return alike ? shift : null;
}

function isShifted(was: LaidPart, is: LaidPart, by: Point): boolean {
  const near = (p: Point, q: Point | undefined): boolean =>
    q !== undefined && Math.abs(p.x + by.x - q.x) <= SAME_PLACE && Math.abs(p.y + by.y - q.y) <= SAME_PLACE;
  return (
    was.region.length === is.region.length &&
    was.region.every(({ outer, holes }, k) => {
      const other = is.region[k];
      if (other?.outer.length !== outer.length || other.holes.length !== holes.length) return false;
      if (!outer.every((p, i) => near(p, other.outer[i]))) return false;
      return holes.every((hole, h) => near(boxOfPoints(hole), boxOfPoints(pick(other.holes, h))));
    })
  );
}
