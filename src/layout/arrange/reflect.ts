import { isBoards, isMany } from '../../design/made.ts';
import { unread } from '../../design/reading.ts';
import type {
  Axis,
  Fill,
  Fitting,
  FreeEnd,
  Member,
  OutlineCorner,
  Panel,
  PanelShape,
  Part,
  PartArray,
  Run,
  Strip,
} from '../../design/schema.ts';
import { bowedBack } from '../../geometry/drawn.ts';
import { otherStart, turnOf } from '../fill/frame.ts';
import { upsideDown } from '../place/outlines.ts';

/** The mirror image of a part's own make, in the same box: axis x turns left and right about. */
export function reflectPart(meant: Part, axis: Axis): Part {
  const part = unread(meant);
  if (isMany(part)) {
    return { ...part, member: reflectMember(part.member, axis), overrides: reflectOverrides(part, axis) };
  }
  return isBoards(part) ? reflectFill(part, axis) : reflectSingle(part, axis);
}

const reflectMember = (member: Member, axis: Axis): Member => reflectSingle(member, axis);

/** What is turned about in a mirror along, and what across; both are turned back where they were. */
const FLIPS = {
  along: { none: 'along', along: undefined, across: 'both', both: 'across' },
  across: { none: 'across', along: 'both', across: undefined, both: 'along' },
} as const;

/** Across the pieces counts upward, and to the right where they stand upright. */
function reflectFill({ flip: was, ...fill }: Fill, axis: Axis): Fill {
  const across = (turnOf(fill) === -90) === (axis === 'x');
  const flip = FLIPS[across ? 'across' : 'along'][was ?? 'none'];
  return {
    ...fill,
    shape: reflectShape(fill.shape, axis),
    angle: -fill.angle + 0,
    start: across ? otherStart(fill.start) : fill.start,
    ...(fill.openings ? { openings: fill.openings.map((opening) => reflectOpening(opening, axis)) } : {}),
    ...(flip ? { flip } : {}),
  };
}

function reflectSingle<P extends Exclude<Part, PartArray | Fill> | Member>(part: P, axis: Axis): P {
  switch (part.kind) {
    case 'strip':
      return { ...part, ...reflectStrip(part, axis) };
    case 'run':
      return { ...part, ...reflectRun(part, axis) };
    case 'panel':
    case 'sign':
      return {
        ...part,
        shape: reflectShape(part.shape, axis),
        openings: part.openings.map((opening) => reflectOpening(opening, axis)),
      };
    case 'fitting':
      return { ...part, ...reflectFitting(part, axis) };
    case 'painted':
    case 'lettering':
      return { ...part, shape: reflectShape(part.shape, axis) };
  }
  return part;
}

function reflectFitting({ shape, sold }: Pick<Fitting, 'shape' | 'sold'>, axis: Axis) {
  const own = { shape: reflectShape(shape, axis) };
  return sold ? { ...own, sold: { ...sold, holes: reflectCorners(sold.holes, axis) } } : own;
}

type Ends = Strip['ends'];

const turnOver = (end: FreeEnd): FreeEnd => (end.cut === 'miter' ? { ...end, angle: -end.angle } : end);
const turnedOver = ({ start, end }: Ends): Ends => ({ start: turnOver(start), end: turnOver(end) });
const swapped = ({ start, end }: Ends): Ends => ({ start: end, end: start });

/**
 * A strip is walked from left to right or from bottom to top. Where the mirror turns that walk around, the
 * ends change places and left stays left; else they stay and left becomes right.
 */
function reflectStrip(
  { lie, angle, ends }: Pick<Strip, 'lie' | 'angle' | 'ends'>,
  axis: Axis,
): Pick<Strip, 'lie' | 'angle' | 'ends'> {
  switch (lie) {
    case 'across':
      return { lie, angle, ends: axis === 'x' ? swapped(ends) : turnedOver(ends) };
    case 'up':
      return { lie, angle, ends: axis === 'x' ? turnedOver(ends) : swapped(ends) };
    case 'rising':
    case 'falling': {
      const other = lie === 'rising' ? 'falling' : 'rising';
      return { lie: other, angle, ends: axis === 'x' ? swapped(ends) : turnedOver(ends) };
    }
    case 'turned': {
      const mirrored = axis === 'x' ? 180 - angle : -angle;
      return { lie, angle: mirrored > 180 ? mirrored - 360 : mirrored, ends: turnedOver(ends) };
    }
  }
}

function reflectRun({ path, side, ends }: Pick<Run, 'path' | 'side' | 'ends'>, axis: Axis) {
  // Counterclockwise in the mirror too: an open head begins at its other foot.
  if (path.form === 'shape')
    return {
      path: { ...path, shape: reflectShape(path.shape, axis) },
      side,
      ends: path.open ? swapped(ends) : ends,
    };
  if (path.form !== 'points') return reflectWhole(path, side, ends, axis);
  const points = reflectCorners(path.points, axis);
  if (path.closed) return reflectWhole({ ...path, points }, side, ends, axis);
  const other: Run['side'] = side === 'inside' ? 'outside' : 'inside';
  // What was to the right of the way is to its left.
  return { path: { ...path, points: bowedBack(points) }, side: other, ends: turnedOver(ends) };
}

/**
 * What goes around is walked counterclockwise in the mirror too, so that what is left of it begins at its other end, with the
 * side that its last one became: of a box level sides are counted as upright ones are, and corners backward from the last.
 */
function reflectWhole(
  path: Exclude<Run['path'], { form: 'shape' }>,
  side: Run['side'],
  ends: Ends,
  axis: Axis,
) {
  // An arch looks up in a mirror at its foot too.
  if (!path.only || (path.form === 'arched' && axis === 'y')) return { path, side, ends };
  const first = path.form === 'points' ? -1 : axis === 'y' ? 2 : 0;
  const only = { ...path.only, from: first - (path.only.from + path.only.count - 1) };
  return { path: { ...path, only }, side, ends: swapped(ends) };
}

function reflectCorners(points: readonly OutlineCorner[], axis: Axis): OutlineCorner[] {
  const over = <P extends { readonly u: number; readonly v: number }>(p: P): P =>
    axis === 'x' ? { ...p, u: 1 - p.u } : { ...p, v: 1 - p.v };
  return points.map((corner) => {
    const { side } = corner;
    if (side?.as !== 'smooth' || !side.handles) return over(corner);
    const [h1, h2] = side.handles;
    return { ...over(corner), side: { ...side, handles: [over(h1), over(h2)] } };
  });
}

/** Named outlines are the same from left to right. */
function reflectShape(shape: PanelShape, axis: Axis): PanelShape {
  if (shape.form !== 'polygon') return axis === 'y' ? upsideDown(shape) : shape;
  return { ...shape, points: reflectCorners(shape.points, axis) };
}

type Opening = Panel['openings'][number];

function reflectOpening(opening: Opening, axis: Axis): Opening {
  const { left, right, bottom, top } = opening.margin;
  return {
    ...opening,
    shape: reflectShape(opening.shape, axis),
    margin:
      axis === 'x' ? { left: right, right: left, bottom, top } : { left, right, bottom: top, top: bottom },
  };
}

/** Members that are left out or of another finish change sides too. */
function reflectOverrides(array: PartArray, axis: Axis): PartArray['overrides'] {
  const own = Object.entries(array.overrides);
  return Object.fromEntries(own.map(([place, override]) => [reflectPlace(array, axis, place), override]));
}

/** Where the member at `column,row` of an array is in its mirror image; unchanged where the count is not known. */
export function reflectPlace(array: PartArray, axis: Axis, place: string): string {
  const spacing = axis === 'x' ? array.across : array.up;
  if (spacing === null || spacing.mode === 'most') return place;
  const [column = 0, row = 0] = place.split(',').map(Number);
  const index = spacing.count - 1 - (axis === 'x' ? column : row);
  return axis === 'x' ? `${index},${row}` : `${column},${index}`;
}
