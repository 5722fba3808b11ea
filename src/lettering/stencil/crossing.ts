import { alongRing } from '../../geometry/along.ts';
import { add, angleOf, dot, leftNormal, midpoint, scale, subtract, unit } from '../../geometry/point.ts';
import type { Point, Ring } from '../../geometry/shape.ts';
import { type Deg, degrees, type Mm, radians } from '../../measure/units.ts';
import { imageOf, type Mirror, nearestOnRing, turnedBy } from './mirror.ts';
import {
  type Course,
  courseOf,
  courseWithin,
  FRAME,
  firstHit,
  type Island,
  type Letter,
  type Side,
  sidesOf,
} from './solid.ts';

/** A place where a bar could cross a stroke, from one piece of sheet to another. */
export interface Crossing {
  /** Where the bar's center line leaves the sheet it holds, and where it reaches the other sheet. */
  readonly leaves: Point;
  readonly reaches: Point;
  /** Unit vector from one to the other. */
  readonly along: Point;
  /** Piece of sheet reached. */
  readonly target: number;
  /** Thickness of the stroke here. */
  readonly length: Mm;
  /** How far the bar runs past `leaves` and `reaches` until its whole width is in the sheet. */
  readonly before: Mm;
  readonly after: Mm;
  /** Largest angle between the bar and the upright to the stroke's two borders, taken over its whole width. */
  readonly slant: Deg;
  /** The whole width of the bar meets the sheet it holds, and the sheet it reaches. */
  readonly meetsHome: boolean;
  readonly meetsTarget: boolean;
  /** Share by which a sharp corner of the letter stands too near: 0 free or in the bar's middle, 1 at its edge. */
  readonly corner: number;
}

/** Samples along a border: close enough to find the thinnest place, few enough to stay quick. */
const SAMPLES = { least: 24, most: 96 };
/** Lines across the bar on which its ends are measured, as shares of half its width. */
const ACROSS = [-1, -0.5, 0.5, 1];
/** All that is looked along for a bar lies this share of its width from its middle or nearer: half, and a hair. */
const BESIDE = 0.51;
/** A bar at more than this from upright looks and holds badly. */
const MOST_SLANT: Deg = 50;
/** Up to this off level or plumb, bars are made so: legs of an A are crossed level. */
export const SQUARED: Deg = 25;
/** The same of bars set by hand, which shall stand where they were put. */
export const SQUARED_BY_HAND: Deg = 10;
/** Run on into the sheet beyond what the measured lines ask for. */
const OVERSHOOT: Mm = 0.1;

const UPRIGHT: readonly Point[] = [
  { x: 0, y: 1 },
  { x: 0, y: -1 },
  { x: 1, y: 0 },
  { x: -1, y: 0 },
];

/** A border point with the direction into the letter. */
interface Start {
  readonly point: Point;
  readonly into: Point;
  /** In line with the island's middle: a bar may stand straight in it, whichever way the borders run. */
  readonly inLine?: true;
}

/**
 * Evenly spread points of a clockwise hole's border. The direction is taken over a stretch of border, not
 * from a single chord, so that it does not jump from chord to chord of a flattened curve. Of a border that is its own
 * mirror image, they are those of one half and their images.
 */
export function startsOn(ring: Ring, width: Mm, mirror?: Mirror): Start[] {
  const { length, at: walk } = alongRing(ring);
  const count = Math.min(SAMPLES.most, Math.max(SAMPLES.least, Math.ceil((3 * length) / width)));
  const reach = Math.min(width / 2, length / 12);
  const starts = Array.from({ length: count }, (_, i) => {
    const at = ((i + 0.5) * length) / count;
    return {
      point: walk(at),
      into: leftNormal(unit(subtract(walk(at + reach), walk(at - reach)))),
    };
  });
  if (!mirror) return starts;
  const imageStart = ({ point, into }: Start): Start => ({
    point: nearestOnRing(imageOf(point, mirror), ring),
    into: turnedBy(into, mirror),
  });
  return starts
    .filter(({ point }) => point[mirror.axis] <= mirror.at)
    .flatMap((start) => [start, imageStart(start)]);
}

/** Border points straight above, below and beside an island's middle: where a bar stands in line with it. */
export function startsInLine({ ring, inside }: Island): Start[] {
  const own = courseOf(sidesOf(ring, FRAME));
  return UPRIGHT.flatMap((into) => {
    const hit = firstHit(own, inside, into);
    return hit ? { point: add(inside, scale(into, hit.distance)), into } : [];
  });
}

/**
 * The crossing that starts at a border point: first straight into the letter, then turned upright to both
 * borders of the stroke about its middle, or level or plumb where that is `most` or less from it and meets the sheet at
 * both ends with all of its width. Null where the stroke ends in the same sheet it began with, or
 * where no bar of this width stands.
 */
export function crossingFrom(
  start: Start,
  home: number,
  letter: Letter,
  course: Course,
  width: Mm,
  most: Deg,
): Crossing | null {
  const first = firstHit(course, start.point, start.into);
  if (!first || first.side.beyond === home) return null;
  const middle = midpoint(start.point, add(start.point, scale(start.into, first.distance)));
  const upright = unit(subtract(start.into, inward(first.side)));
  let found: Crossing | null = null;
  const straight = start.inLine ? start.into : null;
  for (const along of [straight, squared(upright, most), upright, start.into]) {
    if (!along) continue;
    const beside = courseWithin(course, middle, along, BESIDE * width);
    const line = lineThrough(middle, along, home, beside);
    const bar = line && barOn(line, home, letter, beside, width);
    if (bar?.meetsHome && bar.meetsTarget) return bar;
    found ??= bar;
  }
  return found;
}

/** A bar that is nearly level or plumb is made so: one that is off by a little looks like a slip of the knife. */
function squared(along: Point, most: Deg): Point | null {
  const sine = Math.sin(radians(most));
  if (Math.abs(along.x) < sine) return { x: 0, y: Math.sign(along.y) };
  if (Math.abs(along.y) < sine) return { x: Math.sign(along.x), y: 0 };
  return null;
}

/** Upright to a side, into the letter. */
const inward = (side: Side): Point => leftNormal(unit(subtract(side.to, side.from)));

interface Line {
  readonly middle: Point;
  readonly along: Point;
  readonly back: Mm;
  readonly ahead: Mm;
  readonly backSide: Side;
  readonly aheadSide: Side;
}

function lineThrough(middle: Point, along: Point, home: number, course: Course): Line | null {
  if (along.x === 0 && along.y === 0) return null;
  const ahead = firstHit(course, middle, along);
  const back = firstHit(course, middle, scale(along, -1));
  if (!ahead || !back || back.side.beyond !== home || ahead.side.beyond === home) return null;
  return {
    middle,
    along,
    back: back.distance,
    ahead: ahead.distance,
    backSide: back.side,
    aheadSide: ahead.side,
  };
}

function barOn(line: Line, home: number, letter: Letter, course: Course, width: Mm): Crossing | null {
  const { middle, along, back, ahead } = line;
  const target = line.aheadSide.beyond;
  const across = leftNormal(along);
  // Farther than this past the center line's end, a line across the bar has missed that piece of sheet.
  const most = width;
  const depths = ACROSS.map((share) => {
    const from = add(middle, scale(across, (share * width) / 2));
    const to = firstHit(course, from, along);
    const fro = firstHit(course, from, scale(along, -1));
    return {
      share,
      after: to && to.side.beyond === target && to.distance <= ahead + most ? to.distance - ahead : null,
      before: fro && fro.side.beyond === home && fro.distance <= back + most ? fro.distance - back : null,
    };
  });
  const slant = Math.max(
    slantOf(
      depths.map(({ share, after }) => [share, after]),
      width,
    ) ?? angleBetween(along, scale(inward(line.aheadSide), -1)),
    slantOf(
      depths.map(({ share, before }) => [share, before]),
      width,
    ) ?? angleBetween(along, inward(line.backSide)),
  );
  if (slant > MOST_SLANT) return null;
  const meetsHome = depths.every(({ before }) => before !== null);
  const meetsTarget = depths.every(({ after }) => after !== null);
  let before = Math.max(0, ...depths.map((one) => one.before ?? 0));
  const after = Math.max(0, ...depths.map((one) => one.after ?? 0));
  const leaves = add(middle, scale(along, -back));
  // An island narrower than the bar only touches the bar's end with its tip: the bar runs on to its middle.
  if (!meetsHome) before = Math.max(before, depthBehind(leaves, along, course) / 2);
  return {
    leaves,
    reaches: add(middle, scale(along, ahead)),
    along,
    target,
    length: back + ahead,
    before: before + OVERSHOOT,
    after: after + OVERSHOOT,
    slant,
    meetsHome,
    meetsTarget,
    corner: cornerShare(line, letter.corners, width),
  };
}

/**
 * How far a border is from square to the bar, by where lines on both of its edges meet it: of the tip of a counter that
 * runs out in the bar's middle nothing. Null where an edge misses that sheet.
 */
function slantOf(depths: readonly (readonly [share: number, depth: Mm | null])[], width: Mm): Deg | null {
  const [low, high] = [depths[0], depths[depths.length - 1]];
  if (!low || !high || low[1] === null || high[1] === null) return null;
  return degrees(Math.atan2(Math.abs(high[1] - low[1]), ((high[0] - low[0]) * width) / 2));
}

/** How deep the sheet is behind the border point where a bar leaves it. */
function depthBehind(leaves: Point, along: Point, course: Course): Mm {
  return firstHit(course, leaves, scale(along, -1))?.distance ?? 0;
}

const angleBetween = (a: Point, b: Point): Deg => degrees(Math.acos(Math.min(1, Math.max(-1, dot(a, b)))));

/** Corners are kept half a bar away from the bar's edges, where they leave slivers; in its middle they are covered. */
function cornerShare({ middle, along, back, ahead }: Line, corners: readonly Point[], width: Mm): number {
  const across = leftNormal(along);
  let share = 0;
  for (const corner of corners) {
    const off = subtract(corner, middle);
    const side = Math.abs(dot(off, across));
    const way = dot(off, along);
    if (side >= width || way < -back - width / 2 || way > ahead + width / 2) continue;
    share = Math.max(share, Math.max(0, 1 - Math.abs(side - width / 2) / (width / 2)));
  }
  return share;
}

/** The bar itself, as a ring. */
export function barRing(crossing: Crossing, width: Mm): Ring {
  const across = scale(leftNormal(crossing.along), width / 2);
  const from = subtract(crossing.leaves, scale(crossing.along, crossing.before));
  const to = add(crossing.reaches, scale(crossing.along, crossing.after));
  return [subtract(from, across), subtract(to, across), add(to, across), add(from, across)];
}

/** Direction in which a crossing leaves a center. */
export const leavingAngle = (crossing: Crossing, center: Point): Deg =>
  angleOf(subtract(crossing.leaves, center));
