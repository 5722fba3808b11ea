import type { Run } from './schema.ts';

/** Whether something of a path is an arc or smooth. */
export const isBowed = (path: Run['path']): boolean =>
  path.form === 'arched' ||
  (path.form === 'points' &&
    path.points.some(
      ({ side, cut }) => side !== undefined || cut?.how === 'rounded' || cut?.how === 'coved',
    ));
