import type { Box } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import type { Occupancy } from './occupancy.ts';

const STEP: Mm = 3;
/** Ink nearer to the border than this would be read as part of the thing. */
const CLEAR: Mm = 1.5;
/** Ink along the border is worse than ink that crosses the inside. */
const BORDER = 4;

/**
 * Place for something of the given size inside `room` that covers least of what is taken; of equal places
 * the one nearest to the room's lower right corner. Null when it does not fit at all.
 */
export function freePlace(
  room: Box,
  size: { w: Mm; h: Mm },
  taken: Occupancy,
): { readonly box: Box; readonly covered: number } | null {
  if (size.w > room.w || size.h > room.h) return null;
  const lefts = steps(room.w - size.w).map((dx) => room.x + room.w - size.w - dx);
  const columns = lefts.map((x) => stretches(x, size.w, (at) => taken.column(at)));
  let best = { dx: 0, dy: 0, covered: Number.POSITIVE_INFINITY };
  for (const dy of steps(room.h - size.h)) {
    if (best.covered === 0 && dy >= best.dx + best.dy) break;
    const rows = stretches(room.y + dy, size.h, (at) => taken.row(at));
    for (let i = 0; i < columns.length; i++) {
      const along = pick(columns, i);
      const dx = i * STEP;
      const nearer = dx + dy < best.dx + best.dy;
      if (best.covered === 0 && !nearer) break;
      const inside = taken.between(along.inner[0], along.inner[1], rows.inner[0], rows.inner[1]);
      if (inside > best.covered) continue;
      const border = taken.between(along.outer[0], along.outer[1], rows.outer[0], rows.outer[1]) - inside;
      const covered = inside + BORDER * border;
      if (covered < best.covered || (covered === best.covered && nearer)) best = { dx, dy, covered };
    }
  }
  const x = room.x + room.w - size.w - best.dx;
  return { box: { x, y: room.y + best.dy, ...size }, covered: best.covered };
}

function steps(most: Mm): Mm[] {
  const found: Mm[] = [];
  for (let at = 0; at <= most; at += STEP) found.push(at);
  return found;
}

/** Squares along one direction, from the first to one past the last. */
type Stretch = readonly [number, number];

interface Stretches {
  readonly inner: Stretch;
  readonly outer: Stretch;
}

/** The squares that a thing takes along one direction, without its border and with what lies around it. */
function stretches(from: Mm, size: Mm, squareAt: (at: Mm) => number): Stretches {
  return { inner: stretch(from, size, -CLEAR, squareAt), outer: stretch(from, size, CLEAR, squareAt) };
}

const stretch = (from: Mm, size: Mm, by: Mm, squareAt: (at: Mm) => number): Stretch => [
  squareAt(from - by),
  squareAt(from - by + (size + 2 * by)) + 1,
];
