import type { Edit } from '../../design/edit/edit.ts';
import type { Design, Part } from '../../design/schema.ts';
import { midpoint } from '../../geometry/point.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { editsToPlace } from './place.ts';

/** Corners that a person sets one by one: of a polygon, or of a run's own path. */
export interface Corners {
  /** On the face, in order. */
  readonly points: readonly Point[];
  /** The last one is joined to the first. */
  readonly closed: boolean;
}

/** A polygon keeps at least three corners, an open path two. */
export const leastCorners = (closed: boolean): number => (closed ? 3 : 2);
export const MOST_CORNERS = 200;

/** The corners of a part where its box is; null for parts that have none of their own. */
export function cornersOf(part: Part, box: Box): Corners | null {
  const on = (points: readonly { readonly u: number; readonly v: number }[]) =>
    points.map(({ u, v }) => ({ x: box.x + u * box.w, y: box.y + v * box.h }));
  if (part.kind === 'run')
    return part.path.form === 'points' ? { points: on(part.path.points), closed: part.path.closed } : null;
  if ('shape' in part && part.shape.form === 'polygon')
    return { points: on(part.shape.points), closed: true };
  return null;
}

/** Corners as shares of the box around them, and that box. */
export function boxedCorners(points: readonly Point[]) {
  const box = boxOfPoints(points);
  const share = (at: number, from: number, size: number) =>
    size > 0 ? Math.min(1, Math.max(0, (at - from) / size)) : 0;
  return {
    box,
    points: points.map((p) => ({ u: share(p.x, box.x, box.w), v: share(p.y, box.y, box.h) })),
  };
}

/** The edits that give a part these corners; its box goes around them, and rules follow with their measures. */
export function editsToCorners(design: Design, part: Part, before: Box, { points, closed }: Corners): Edit[] {
  const boxed = boxedCorners(points);
  return editsToPlace(design, new Map([[part.id, before]]), new Map([[part.id, boxed.box]])).map((edit) =>
    edit.kind === 'replace' && edit.list === 'parts'
      ? { ...edit, item: withCorners({ ...part, box: boxed.box }, boxed.points, closed) }
      : edit,
  );
}

function withCorners(part: Part, points: readonly { u: number; v: number }[], closed: boolean): Part {
  if (part.kind === 'run') return { ...part, path: { form: 'points', points, closed } };
  if ('shape' in part) return { ...part, shape: { form: 'polygon', points } };
  return part;
}

/** Places halfway between neighbors, where a corner may be added; the one at `i` comes after corner `i`. */
export function middlesOf({ points, closed }: Corners): Point[] {
  return points.flatMap((p, i) => {
    const next = points[i + 1] ?? (closed ? points[0] : undefined);
    return next ? [midpoint(p, next)] : [];
  });
}

export const movedCorner = ({ points, closed }: Corners, index: number, to: Point): Corners => ({
  points: points.map((p, i) => (i === index ? to : p)),
  closed,
});

export const addedCorner = ({ points, closed }: Corners, after: number, at: Point): Corners => ({
  points: points.toSpliced(after + 1, 0, at),
  closed,
});

/** Null when no corner can be spared. */
export function withoutCorner({ points, closed }: Corners, index: number): Corners | null {
  if (points.length <= leastCorners(closed)) return null;
  return { points: points.filter((_, i) => i !== index), closed };
}
