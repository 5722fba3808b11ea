import type { DrawItem } from '../../drawing/drawing.ts';
import { image } from '../../drawing/items.ts';
import { pathOfBox, pathOfRegion } from '../../geometry/path.ts';
import type { Box, Point, Region } from '../../geometry/shape.ts';
import type { PlacedPhoto } from './placed.ts';

/**
 * Photos of a sign as a drawing: what is left of each, as far as the paper goes.
 *
 * @param paper on the coordinates of the drawing, as all that comes out
 * @param at where the sign's own coordinates begin on those
 */
export const photoItems = (
  photos: readonly PlacedPhoto[],
  paper: Region,
  at: Point = { x: 0, y: 0 },
): DrawItem[] =>
  photos.map(({ photo, frame, shown }) => ({
    kind: 'group',
    clip: pathOfRegion(paper),
    items: [
      { kind: 'group', clip: pathOfBox(movedBox(shown, at)), items: [image(photo, movedBox(frame, at))] },
    ],
  }));

const movedBox = ({ x, y, w, h }: Box, by: Point): Box => ({ x: x + by.x, y: y + by.y, w, h });
