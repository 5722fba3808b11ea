import type { OutlineCorner, PanelShape, Run } from './schema.ts';

/** Whether something of a path is an arc or smooth. */
export const isBowed = (path: Run['path']): boolean =>
  path.form === 'arched' ||
  (path.form === 'points' && path.points.some(isCurved)) ||
  (path.form === 'shape' && !isStraight(path.shape));

/** Whether a path comes back to where it starts. */
export const isClosed = (path: Run['path']): boolean =>
  path.form === 'points' ? path.closed : !('open' in path && path.open);

const isCurved = ({ side, cut }: OutlineCorner): boolean =>
  side !== undefined || cut?.how === 'rounded' || cut?.how === 'coved';

function isStraight(shape: PanelShape): boolean {
  switch (shape.form) {
    case 'rectangle':
    case 'regular':
    case 'star':
    case 'ribbon':
      return true;
    case 'corners':
      return shape.cut === 'clipped' || shape.cut === 'stepped';
    case 'polygon':
      return !shape.points.some(isCurved);
    default:
      return false;
  }
}
