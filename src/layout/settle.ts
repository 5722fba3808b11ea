import type { Design } from '../design/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Layout } from './laid.ts';

/**
 * Parts whose solved box differs from the one in the design. Written into the design together with the
 * edit that caused them, they make the solved places the ones to stay at: without this a part would jump
 * back to an old place as soon as a rule is taken away.
 */
export function settled(design: Design, layout: Layout): { readonly part: string; readonly box: Box }[] {
  return design.parts.flatMap((part) => {
    const box = layout.boxes.get(part.id);
    if (
      !box ||
      (box.x === part.box.x && box.y === part.box.y && box.w === part.box.w && box.h === part.box.h)
    ) {
      return [];
    }
    return [{ part: part.id, box: { x: box.x, y: box.y, w: Math.max(0, box.w), h: Math.max(0, box.h) } }];
  });
}
