import { grownBox } from '../geometry/box.ts';
import type { Box } from '../geometry/shape.ts';
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
  let best: { box: Box; covered: number; far: number } | null = null;
  for (let dy = 0; dy <= room.h - size.h; dy += STEP) {
    for (let dx = 0; dx <= room.w - size.w; dx += STEP) {
      const far = dx + dy;
      if (best?.covered === 0 && far >= best.far) break;
      const box = { x: room.x + room.w - size.w - dx, y: room.y + dy, ...size };
      const inside = taken.count(grownBox(box, -CLEAR));
      if (best && inside > best.covered) continue;
      const border = taken.count(grownBox(box, CLEAR)) - inside;
      const covered = inside + BORDER * border;
      if (!best || covered < best.covered || (covered === best.covered && far < best.far)) {
        best = { box, covered, far };
      }
    }
  }
  return best;
}
