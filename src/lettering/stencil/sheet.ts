import type { Lettering } from '../../design/schema.ts';
import { ellipseRing } from '../../geometry/curve.ts';
import { regionOfRing } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import type { Mm } from '../../measure/units.ts';

/** Holes larger than this serve no pin or pencil. */
const MOST_RADIUS: Mm = 3;

/**
 * The sheet a stencil is cut from: the box of all its letters with the frame left around. The frame is at
 * least a bridge wide: narrower, letters would cut the sheet's edge open.
 */
export function sheetAround(letters: Box, options: Lettering['stencil']): Box {
  const frame = frameOf(options);
  return {
    x: letters.x - frame,
    y: letters.y - frame,
    w: letters.w + 2 * frame,
    h: letters.h + 2 * frame,
  };
}

const frameOf = (options: Lettering['stencil']): Mm => Math.max(options.frame, options.bridgeWidth);

/**
 * Registration holes, one in each corner of the frame, in the same place on the stencil of every color:
 * in the middle of the frame's width, with at least a quarter of it left on every side.
 */
export function registrationHoles(sheet: Box, options: Lettering['stencil']): Region {
  const frame = frameOf(options);
  const radius = Math.min(MOST_RADIUS, frame / 4);
  const [left, right] = [sheet.x + frame / 2, sheet.x + sheet.w - frame / 2];
  const [low, high] = [sheet.y + frame / 2, sheet.y + sheet.h - frame / 2];
  return [low, high].flatMap((y) =>
    [left, right].flatMap((x) =>
      regionOfRing(ellipseRing({ x: x - radius, y: y - radius, w: 2 * radius, h: 2 * radius })),
    ),
  );
}
