import type { Fill, Panel, PanelShape } from '../../design/schema.ts';
import { regionOfRings, subtract } from '../../geometry/clip.ts';
import { ringOfLoop } from '../../geometry/loop.ts';
import { regionOfBox, regionOfRing } from '../../geometry/region.ts';
import type { Box, Region } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { loopOfDrawn } from './drawn.ts';
import { ringsOfNamed } from './outlines.ts';

/** The area of a shape that fills a box. */
export function regionOfShape(shape: PanelShape, box: Box): Region {
  switch (shape.form) {
    case 'rectangle':
      return regionOfBox(box);
    case 'polygon':
      // Corners are set by hand and may run either way round or cross.
      return regionOfRings([ringOfLoop(loopOfDrawn(shape.points, box))], 'nonzero');
    default:
      return ringsOfNamed(shape, box).map(regionOfRing).reduce(subtract);
  }
}

type Opening = Panel['openings'][number];

/** The box of an opening, inside the margins; null where the margins leave nothing. */
export function openingBox({ margin }: Pick<Opening, 'margin'>, box: Box): Box | null {
  const { left, right, bottom, top } = margin;
  const w = box.w - left - right;
  const h = box.h - bottom - top;
  return w > SAME_LENGTH && h > SAME_LENGTH ? { x: box.x + left, y: box.y + bottom, w, h } : null;
}

/** What a fill covers: its shape without its openings. */
export const regionOfFill = ({ shape, openings = [] }: Pick<Fill, 'shape' | 'openings'>, box: Box): Region =>
  regionOfPanel(shape, openings, box);

/** A panel without its openings. */
export function regionOfPanel(shape: PanelShape, openings: readonly Opening[], box: Box): Region {
  let region = regionOfShape(shape, box);
  for (const opening of openings) {
    const inner = openingBox(opening, box);
    if (inner) region = subtract(region, regionOfShape(opening.shape, inner));
  }
  return region;
}
