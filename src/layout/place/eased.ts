import type { Check } from '../../check/check.ts';
import type { PanelShape, Part, Run } from '../../design/schema.ts';
import { hasHead } from '../../geometry/heads.ts';
import type { Box } from '../../geometry/shape.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { frameOfDrawn } from './drawn.ts';
import { openingBox } from './shape.ts';

/** Whether a shape has room in its box for the measures that it is told by. */
function hasItsMeasures(shape: PanelShape, box: Box): boolean {
  switch (shape.form) {
    case 'polygon':
      return !frameOfDrawn(shape.points, box).eased;
    case 'arched':
      return shape.rise <= Math.min(box.w / 2, box.h) + SAME_LENGTH;
    case 'pointed':
    case 'basket':
    case 'elliptical':
      return hasHead(shape.form, box, shape.rise);
    case 'four-centered':
    case 'ogee':
      return hasHead(shape.form, box, shape.rise, shape.radius);
    default:
      return true;
  }
}

function pathHasItsMeasures(path: Run['path'], box: Box): boolean {
  switch (path.form) {
    case 'frame':
      return true;
    case 'arched':
      return hasItsMeasures(path, box);
    case 'points':
      return !frameOfDrawn(path.points, box, path.closed).eased;
    case 'shape':
      return hasItsMeasures(path.shape, box);
  }
}

/** An outline, an opening or a path whose rises, radii and corners have no room in its box is drawn with lesser ones: said. */
export function easedMeasures(part: Part, box: Box): Check[] {
  const own =
    'path' in part
      ? pathHasItsMeasures(part.path, box)
      : !('shape' in part) || hasItsMeasures(part.shape, box);
  const openings = 'openings' in part ? (part.openings ?? []) : [];
  const all =
    own &&
    openings.every((opening) => {
      const hole = openingBox(opening, box);
      return hole === null || hasItsMeasures(opening.shape, hole);
    });
  return all ? [] : [{ code: 'part.measures-eased', severity: 'note', parts: [part.id], figures: {} }];
}
