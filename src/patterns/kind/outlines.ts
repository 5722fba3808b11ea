import type { DrawItem } from '../../drawing/drawing.ts';
import { line, type PathLook, shape } from '../../drawing/items.ts';
import { DASH, INK, WEIGHT } from '../../drawing/style.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { truePathOfRegion } from '../../geometry/truePath.ts';

/** Outline to follow with pencil or knife. */
export const FOLLOW: PathLook = { stroke: INK.line, width: WEIGHT.fine };
/** Outline for laying the pattern on the work. */
export const GUIDE: PathLook = { stroke: INK.soft, width: WEIGHT.thin };
/** Center lines of a board or part. */
export const CENTER: PathLook = { stroke: INK.soft, width: WEIGHT.thin, dash: DASH.center };

/** Every ring as an item of its own, so that a page holds only those that it shows. */
export function outlines(region: Region, look: PathLook): DrawItem[] {
  return region.flatMap((polygon) =>
    [polygon.outer, ...polygon.holes].map((ring) =>
      shape(truePathOfRegion([{ outer: ring, holes: [] }]), look),
    ),
  );
}

/** Center lines of a box, from edge to edge. */
export function centerLines({ x, y, w, h }: Box): DrawItem[] {
  return [
    line({ x: x + w / 2, y }, { x: x + w / 2, y: y + h }, CENTER),
    line({ x, y: y + h / 2 }, { x: x + w, y: y + h / 2 }, CENTER),
  ];
}
