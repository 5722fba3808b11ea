import { isSheet } from '../../design/made.ts';
import type { Box, Path, PathCommand, Point } from '../../geometry/shape.ts';
import { isLong, type LaidPart, type Leg, legsOf } from '../../layout/laid.ts';

/** Across the grain, between two strokes. */
const PITCH = 9;
/** More strokes than this in one part are no help. */
const MOST = 60;

/** The grain of a part that shows its wood: long thin strokes, placed by a fixed pattern so that they never flicker. */
export function grainOf(part: LaidPart): Path {
  if (isLong(part)) return legsOf(part).flatMap(alongLeg);
  return isSheet(part) ? overSheet(part.box, part.spec.grain === 'across') : [];
}

function alongLeg({ start, end, width }: Leg): Path {
  const length = Math.hypot(end.x - start.x, end.y - start.y) || 1;
  const along = { x: (end.x - start.x) / length, y: (end.y - start.y) / length };
  return strokesOver(start, along, length, { x: -along.y, y: along.x }, width, -width / 2);
}

function overSheet({ x, y, w, h }: Box, across: boolean): Path {
  const corner = { x, y };
  return across
    ? strokesOver(corner, { x: 1, y: 0 }, w, { x: 0, y: 1 }, h, 0)
    : strokesOver(corner, { x: 0, y: 1 }, h, { x: 1, y: 0 }, w, 0);
}

/** Strokes along one direction, spread over a width across it that begins at `low`. */
function strokesOver(
  from: Point,
  along: Point,
  length: number,
  over: Point,
  width: number,
  low: number,
): Path {
  const count = Math.min(MOST, Math.max(1, Math.round(width / PITCH)));
  const seed = Math.round(Math.abs(from.x * 7 + from.y * 13));
  const at = (u: number, v: number): Point => ({
    x: from.x + along.x * u + over.x * v,
    y: from.y + along.y * u + over.y * v,
  });
  return Array.from({ length: count }, (_, i): PathCommand[] => {
    const chance = (n: number) => ((seed + i * 137 + n * 71) % 97) / 97;
    const v = low + ((i + 0.25 + chance(1) * 0.5) / count) * width;
    const begin = chance(2) * 0.35 * length;
    const end = Math.min(length, begin + (0.45 + chance(3) * 0.5) * length);
    const sway = (chance(4) - 0.5) * Math.min(width * 0.16, 6);
    const [b, c] = [at(begin + (end - begin) / 3, v + sway), at(begin + ((end - begin) * 2) / 3, v - sway)];
    return [
      { op: 'M', ...at(begin, v) },
      { op: 'C', x1: b.x, y1: b.y, x2: c.x, y2: c.y, ...at(end, v) },
    ];
  }).flat();
}
