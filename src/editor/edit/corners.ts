import { cornersIn } from '../../design/drawnCorners.ts';
import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import { FARTHEST, leastCorners } from '../../design/limits.ts';
import { isLettersAlone } from '../../design/made.ts';
import type { Design, OutlineCorner, Part } from '../../design/schema.ts';
import {
  bowedBack,
  type DrawnCorner,
  type DrawnSide,
  drawnLoop,
  sidesOf,
  windingOf,
} from '../../geometry/drawn.ts';
import { boxOfLoop } from '../../geometry/loop.ts';
import { add, subtract } from '../../geometry/point.ts';
import { boxOfPoints } from '../../geometry/ring.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { partOf, pointAt, riseOfArc, riseThrough, type Stretch, shareNear } from '../../geometry/stretch.ts';
import { SAME_PLACE } from '../../geometry/tolerance.ts';
import { cornersOut, frameOfDrawn } from '../../layout/place/drawn.ts';
import { LEVEL } from '../../lettering/openPath.ts';
import { editToOpening, marginsOf, type Opening, openingsOf } from './openings.ts';
import { editsToPlace } from './place.ts';

/** A corner on the face; of a drawn outline also how the side after it runs, and what is taken off it. */
export type Corner = Point & Omit<DrawnCorner, 'at'>;

/** Corners that a person sets one by one: of a drawn outline, of a run's own path, or of the way of letters. */
export interface Corners {
  /** On the face, in order. */
  readonly points: readonly Corner[];
  /** The last one is joined to the first. */
  readonly closed: boolean;
}

/** The corners of a part, or of an opening, where its box is; null for those that have none of their own. */
export function cornersOf(part: Part | Opening, box: Box): Corners | null {
  const on = (drawn: readonly OutlineCorner[], closed: boolean): Corners => {
    const { frame, points } = frameOfDrawn(drawn, box, closed);
    return { points: cornersIn(points, frame).map(({ at, ...made }) => ({ ...at, ...made })), closed };
  };
  if ('path' in part) return part.path.form === 'points' ? on(part.path.points, part.path.closed) : null;
  const way = letterWay(part);
  if (way)
    return { points: cornersIn(way, box).map(({ at, ...made }) => ({ ...at, ...made })), closed: false };
  return 'shape' in part && part.shape.form === 'polygon' ? on(part.shape.points, true) : null;
}

/**
 * The way that words run along in the box of their part, where its corners are what a hand takes: a board with a drawn
 * outline keeps the handles of that. Null where there is none.
 */
export function letterWay(part: Part | Opening): readonly OutlineCorner[] | null {
  if (!('lettering' in part) || part.lettering.along !== 'path') return null;
  const drawn = part.shape.form === 'polygon' && !isLettersAlone(part);
  return drawn ? null : (part.lettering.path ?? LEVEL);
}

const drawnOf = (points: readonly Corner[]): DrawnCorner[] =>
  points.map(({ x, y, ...made }) => ({ at: { x, y }, ...made }));

/** Corners as shares of the box around them, and that box. */
export const boxedCorners = (points: readonly Point[]) => ({
  box: boxOfPoints(points),
  points: cornersOut(points.map((at) => ({ at }))),
});

/**
 * The edits that give a part these corners, or one of its openings. The box of the part goes around them, and rules follow
 * with their measures; an opening, and a way of letters, keep within the box of their part.
 */
export function editsToCorners(
  design: Design,
  part: Part,
  before: Box,
  corners: Corners,
  opening: string | null = null,
): Edit[] {
  const hole = openingsOf(part).find(({ id }) => id === opening);
  if (hole) return [editToOpening({ part }, openingThrough(hole, before, corners))];
  if ('lettering' in part && letterWay(part)) {
    const path = cornersOut(drawnOf(corners.points), before);
    const item = { ...part, lettering: { ...part.lettering, path } };
    return [replacing('parts', item)];
  }
  const item = withCorners(part, corners);
  return editsToPlace(design, new Map([[part.id, before]]), new Map([[part.id, item.box]])).map((edit) =>
    edit.kind === 'replace' && edit.list === 'parts' ? { ...edit, item } : edit,
  );
}

/** Corners as a design keeps them, and the box around all of the outline: what is bowed reaches out of the corners. */
function boxedOutline({ points, closed }: Corners) {
  const drawn = drawnOf(points);
  return { box: boxOfLoop(drawnLoop(drawn, closed)), boxed: cornersOut(drawn) };
}

/** An opening with these corners, in a part that lies in a box. */
export function openingThrough(opening: Opening, box: Box, corners: Corners): Opening {
  const { box: hole, boxed } = boxedOutline(corners);
  return { ...opening, shape: { form: 'polygon', points: boxed }, margin: marginsOf(hole, box) };
}

function withCorners(part: Part, corners: Corners): Part {
  const { closed } = corners;
  const { box, boxed } = boxedOutline(corners);
  if (part.kind === 'run') {
    const made = part.path.form === 'points' ? part.path : {};
    return { ...part, box, path: { ...made, form: 'points', points: boxed, closed } };
  }
  return 'shape' in part ? { ...part, box, shape: { form: 'polygon', points: boxed } } : part;
}

/** The sides as they run; the one at `i` comes after corner `i`. */
export function sidesOfCorners({ points, closed }: Corners): Stretch[] {
  return sidesOf(drawnOf(points), closed);
}

/** Places halfway between neighbors; the one at `i` comes after corner `i`. */
export const middlesOf = (corners: Corners): Point[] =>
  sidesOfCorners(corners).map((side) => pointAt(side, 1 / 2));

/** The corner somewhere else; handles of smooth sides beside it go along. */
export function movedCorner({ points, closed }: Corners, index: number, to: Point): Corners {
  const from = points[index];
  if (!from) return { points, closed };
  const by = subtract(to, from);
  const before = (index + points.length - 1) % points.length;
  const moved = points.map((p, i) => {
    const at = i === index ? { ...p, x: to.x, y: to.y } : p;
    if (at.side?.as !== 'smooth' || !at.side.handles || (i !== index && i !== before)) return at;
    const [h1, h2] = at.side.handles;
    const handles = i === index ? ([add(h1, by), h2] as const) : ([h1, add(h2, by)] as const);
    return { ...at, side: { ...at.side, handles } };
  });
  return { points: moved, closed };
}

/** One corner more; a bow and a side with handles are parted where it is, and what is smooth by itself runs through. */
export function addedCorner(corners: Corners, after: number, at: Point): Corners {
  const { points, closed } = corners;
  const was = points[after];
  const side = was?.side;
  if (!was || !side) return { points: points.toSpliced(after + 1, 0, { x: at.x, y: at.y }), closed };
  const whole = sidesOfCorners(corners)[after];
  // On the curve itself, however near a hand has come to it.
  const share = whole && !runsThrough(side) ? shareNear(whole, at) : null;
  const { x, y } = whole && share !== null ? pointAt(whole, share) : at;
  const part = (from: number, to: number): DrawnSide =>
    whole && share !== null ? sideFrom(partOf(whole, from, to), windingOf(points, closed)) : side;
  const halves = [
    { ...was, side: part(0, share ?? 0) },
    { x, y, side: part(share ?? 1, 1) },
  ];
  return { points: points.toSpliced(after, 1, ...halves), closed };
}

/** Smooth by itself: what it is follows from its corners. */
const runsThrough = (side: DrawnSide): boolean => side.as === 'smooth' && !side.handles;

/** How a stretch is told as a side of an outline. */
function sideFrom(stretch: Stretch, out: 1 | -1): DrawnSide {
  if (stretch.kind === 'cubic') return { as: 'smooth', handles: [stretch.h1, stretch.h2] };
  return { as: 'rise', rise: stretch.kind === 'arc' ? out * riseOfArc(stretch) : 0 };
}

/** The side after a corner bowed through a place, or straight where that lies on it. */
export function bowedSide({ points, closed }: Corners, index: number, through: Point): Corners {
  const [a, b] = [points[index], points[(index + 1) % points.length]];
  if (!a || !b) return { points, closed };
  const rise = Math.max(
    -FARTHEST,
    Math.min(FARTHEST, windingOf(points, closed) * riseThrough(a, through, b)),
  );
  return madeCorner({ points, closed }, index, {
    side: Math.abs(rise) < SAME_PLACE ? undefined : { as: 'rise', rise },
  });
}

/** A smooth side with one of its handles somewhere else. */
export function bentSide(corners: Corners, index: number, which: 0 | 1, to: Point): Corners {
  const side = sidesOfCorners(corners)[index];
  if (side?.kind !== 'cubic') return corners;
  const handles = which === 0 ? ([to, side.h2] as const) : ([side.h1, to] as const);
  return madeCorner(corners, index, { side: { as: 'smooth', handles } });
}

/** A corner with another side after it, or with something else taken off it. */
export const madeCorner = (
  { points, closed }: Corners,
  index: number,
  made: Pick<Corner, 'side' | 'cut'>,
): Corners => ({ points: points.map((p, i) => (i === index ? { ...p, ...made } : p)), closed });

/** The same corners closed or open. Bows stay on the side where they are, wherever out is then. */
export function joinedAs({ points, closed: was }: Corners, closed: boolean): Corners {
  if (windingOf(points, closed) === windingOf(points, was)) return { points, closed };
  return { points: bowedBack(points), closed };
}

/** Null when no corner can be spared. */
export function withoutCorner({ points, closed }: Corners, index: number): Corners | null {
  if (points.length <= leastCorners(closed)) return null;
  return { points: points.filter((_, i) => i !== index), closed };
}
