import { isSheet } from '../../design/made.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import { isLong, type LaidPart, type Leg, legsOf } from '../../layout/laid.ts';

/** Across the grain, between two strokes. */
const PITCH = 9;
/** More strokes than this in one part are no help. */
const MOST = 60;

/** Strokes as the canvas keeps them, by the part's outline: a drag draws every part again and moves few. */
const strokes = new WeakMap<Region, Path2D>();

/** The grain of a part that shows its wood: long thin strokes, placed by a fixed pattern so that they never flicker. */
export function grainOf(part: LaidPart): Path2D {
  let path = strokes.get(part.region);
  if (!path) {
    path = new Path2D();
    if (isLong(part)) for (const leg of legsOf(part)) alongLeg(path, leg);
    else if (isSheet(part)) overSheet(path, part.box, part.spec.grain === 'across');
    strokes.set(part.region, path);
  }
  return path;
}

function alongLeg(path: Path2D, { start, end, width }: Leg): void {
  const length = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  strokesOver(path, start, along, length, { x: -along.y, y: along.x }, width, -width / 2);
}

function overSheet(path: Path2D, { x, y, w, h }: Box, across: boolean): void {
  const corner = { x, y };
  if (across) strokesOver(path, corner, { x: 1, y: 0 }, w, { x: 0, y: 1 }, h, 0);
  else strokesOver(path, corner, { x: 0, y: 1 }, h, { x: 1, y: 0 }, w, 0);
}

/** Strokes along one direction, spread over a width across it that begins at `low`. */
function strokesOver(
  path: Path2D,
  from: Point,
  along: Point,
  length: number,
  over: Point,
  width: number,
  low: number,
): void {
  const count = Math.min(MOST, Math.max(1, Math.round(width / PITCH)));
  const seed = Math.round(Math.abs(from.x * 7 + from.y * 13));
  const at = (u: number, v: number): Point => ({
    x: from.x + along.x * u + over.x * v,
    y: from.y + along.y * u + over.y * v,
  });
  for (let i = 0; i < count; i++) {
    const chance = (n: number) => ((seed + i * 137 + n * 71) % 97) / 97;
    const v = low + ((i + 0.25 + chance(1) * 0.5) / count) * width;
    const begin = chance(2) * 0.35 * length;
    const end = Math.min(length, begin + (0.45 + chance(3) * 0.5) * length);
    const sway = (chance(4) - 0.5) * Math.min(width * 0.16, 6);
    const [a, b, c, d] = [
      at(begin, v),
      at(begin + (end - begin) / 3, v + sway),
      at(begin + ((end - begin) * 2) / 3, v - sway),
      at(end, v),
    ];
    path.moveTo(a.x, a.y);
    path.bezierCurveTo(b.x, b.y, c.x, c.y, d.x, d.y);
  }
}
