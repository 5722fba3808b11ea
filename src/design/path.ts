import type { OutlineCorner, PanelShape, Run } from './schema.ts';

/** Whether something of a path is an arc or smooth. */
export const isBowed = (path: Run['path']): boolean =>
  path.form === 'arched' ||
  (path.form === 'points' && path.points.some(isCurved)) ||
  (path.form === 'shape' && !isStraight(path.shape));

/** Whether a path comes back to where it starts, before anything cuts it. */
export const goesAround = (path: Run['path']): boolean =>
  path.form === 'points' ? path.closed : !('open' in path && path.open);

/** Whether a run along a path comes back to where it starts. */
export const isClosed = (path: Run['path']): boolean => goesAround(path) && onlyOf(path) === undefined;

/** The sides of a path that are left of it; all where none are named. */
export const onlyOf = (path: Run['path']): Only | undefined => ('only' in path ? path.only : undefined);
export type Only = NonNullable<Extract<Run['path'], { readonly form: 'frame' }>['only']>;

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
