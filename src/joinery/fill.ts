import { isBoards } from '../design/made.ts';
import type { Shop } from '../design/schema.ts';
import { intersect } from '../geometry/clip.ts';
import { leftOf } from '../geometry/cut.ts';
import { cross, distance, dot, subtract, unit } from '../geometry/point.ts';
import { areaOf, centroidOf } from '../geometry/region.ts';
import { betweenCorners, boxOfPoints, productOfInertia } from '../geometry/ring.ts';
import type { Point, Polygon, Region, Ring } from '../geometry/shape.ts';
import { SAME_ANGLE, SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Laid, LaidPart, Lean, Relief } from '../layout/laid.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { type Deg, degrees, radians } from '../measure/units.ts';
import { TOUCH } from './bar.ts';
import { atOrigin, type Placed } from './draft.ts';
import { END_KINDS } from './end/table.ts';
import { lengthsOf } from './lengths.ts';
import type { JointFound, Notch, PieceEnd } from './piece.ts';

/**
 * The pieces of one board of a fill: one, unless its outline parts it. Its ends are cut across, at an angle or to a
 * point where the outline runs so and the saw can be set to it; every other piece is sawn along its outline.
 */
export function fillPieces(
  laid: Laid<'fill'>,
  stock: Stock | null,
  saw: Pick<Shop['saw'], 'miter'>,
): Placed[] {
  if (!stock) return [];
  return laid.wood.map((polygon, i) =>
    fillPiece(laid, stock, polygon, laid.wood.length > 1 ? `${laid.id}#${i + 1}` : laid.id, saw.miter),
  );
}

function fillPiece(laid: Laid<'fill'>, stock: Stock, polygon: Polygon, id: string, most: Deg): Placed {
  const along = unit(subtract(laid.leg.end, laid.leg.start));
  const { relief } = laid;
  const lean = relief?.lean;
  const lay = lean ? onSlat(along, lean) : (p: Point): Point => ({ x: dot(p, along), y: cross(along, p) });
  // Of a board in several pieces: the middle of one around an opening may lie outside of it.
  const own = (region: Region): Region =>
    laid.wood.length === 1
      ? region
      : region.filter((one) => areaOf(intersect([one], [polygon])) > SAME_LENGTH);
  const sunk = relief ? own(relief.sunk).map(({ outer }) => outer) : [];
  const face = lean ? faceOf(polygon, lean) : polygon;
  const rings = [face.outer, ...sunk, ...face.holes].map((ring) => cornersOf(ring.map(lay)));
  const [first = [], ...others] = hasAlikeFaces(laid) ? oneHanded(rings) : rings;
  const { outline, holes: inner, box } = atOrigin(first, others);
  const holes = inner.slice(sunk.length);
  const sheet = stock.form === 'sheet';
  const sawn = END_KINDS.sawn.settle({ ...BARE, stock });
  const cut = holes.length === 0 ? endsOf(outline, stock, sheet ? 0 : most) : null;
  const ends = (lean ? cut && tilted(cut, lean) : cut) ?? ([sawn, sawn] as const);
  const draft: Placed['draft'] = {
    id,
    part: laid.id,
    name: laid.name,
    stock: stock.id,
    form: stock.form,
    ...lengthsOf(outline, ends),
    margin: 0,
    width: box.h,
    thickness: stock.thickness,
    ends,
    fit: { inPlace: false, allowance: 0 },
    outline,
    holes,
    notches: inner
      .slice(0, sunk.length)
      .flatMap((ring) => (relief ? notchOf(ring, relief) : []))
      .sort((p, q) => p.from - q.from),
    placed: laid.wood.length === 1 ? laid.region : relief ? own(laid.region) : [polygon],
    z0: laid.z0,
    z1: laid.z1,
    grain: sheet && !stock.grain ? 'any' : 'along',
  };
  return { draft, kind: sheet ? 'panel' : 'stick', stretch: null };
}

/** What of a slat's wood its face is: the rest is seen of its edge. */
function faceOf(polygon: Polygon, { at, across, edge }: Lean): Polygon {
  const line = { x: at.x + across.x * edge, y: at.y + across.y * edge };
  return leftOf([polygon], line, { x: across.y, y: -across.x })[0] ?? polygon;
}

/** The face of a slat as it lies on the saw: across it is as much longer as it leans. */
function onSlat(along: Point, { at, across, edge, tilt }: Lean): (p: Point) => Point {
  const side = Math.sign(cross(along, across));
  return (p) => ({
    x: dot(p, along),
    y: (side * (dot(subtract(p, at), across) - edge)) / Math.cos(radians(tilt)),
  });
}

/**
 * Ends of a slat that are cut at an angle, upright to the face that it leans on. With the miter m on the slat and the
 * tilt t, the line on the face lies at M from square, tan M = tan m / cos t, and the sine of the bevel is sin M sin t.
 */
function tilted([start, end]: readonly [PieceEnd, PieceEnd], { tilt }: Lean): readonly [PieceEnd, PieceEnd] {
  const bevel = (miter: Deg): Deg => {
    const onFace = Math.atan(Math.tan(radians(Math.abs(miter))) / Math.cos(radians(tilt)));
    return degrees(Math.asin(Math.sin(onFace) * Math.sin(radians(tilt))));
  };
  const one = (of: PieceEnd): PieceEnd => ({
    ...of,
    bevel: bevel(of.miter),
    second: of.second && { miter: of.second.miter, bevel: bevel(of.second.miter) },
  });
  return [one(start), one(end)];
}

function notchOf(outline: Ring, { side, depth }: Relief): Notch {
  const { x, y, w, h } = boxOfPoints(outline);
  const [from, size] = side === 'groove' ? [y, h] : [x, w];
  return { from, to: from + size, depth, side, miter: 0, outline };
}

/** Where laths of a fill are let into each other: those that are notched on their back run through. */
export function fillJoints(parts: readonly LaidPart[]): JointFound[] {
  const fills = parts.filter((laid) => isBoards(laid));
  const crossings = fills.flatMap(({ id, part, relief }) =>
    relief && relief.side !== 'groove'
      ? relief.sunk.map((one) => ({ id, part, side: relief.side, at: centroidOf([one]) }))
      : [],
  );
  return crossings.flatMap((one): JointFound[] => {
    const through = crossings.find(
      ({ part, side, at }) => side === 'back' && part === one.part && distance(at, one.at) <= TOUCH,
    );
    if (one.side === 'back' || !through) return [];
    const parts = [one.id, through.id] as const;
    return [{ parts, kind: 'half-lap', through: through.id, at: one.at, decided: false }];
  });
}

/** Plain boards, which lie as well with their back out; a lap, a tongue or a groove has a side. */
const hasAlikeFaces = ({ relief, spec: { pattern } }: Laid<'fill'>): boolean =>
  !relief && (pattern.form !== 'planks' || pattern.edge === 'square');

/**
 * The rings of a piece, turned over where that makes it and its image in a mirror one: they are sawn alike, and one of
 * them is laid with its other face out. Which of the two it is is told by the product of inertia of its outline, which
 * changes its sign in a mirror and keeps it where the piece is turned end for end.
 */
function oneHanded(rings: readonly Ring[]): readonly Ring[] {
  if (productOfInertia(pick(rings, 0)) >= 0) return rings;
  return rings.map((ring) => ring.map(({ x, y }) => ({ x, y: -y })).reverse());
}

const BARE = { miter: 0, secondMiter: null, with: null, corner: null } as const;

/** A ring without the points at which it does not turn. */
function cornersOf(ring: Ring): Ring {
  const corners = ring.filter((p, i) => {
    const before = cyclic(ring, i - 1);
    const way = subtract(cyclic(ring, i + 1), before);
    return Math.abs(cross(unit(way), subtract(p, before))) > SAME_LENGTH;
  });
  return corners.length >= 3 ? corners : ring;
}

/** The two ends of an outline where a saw cuts them; null where it takes a line to follow. */
function endsOf(outline: Ring, stock: Stock, most: Deg): readonly [PieceEnd, PieceEnd] | null {
  const box = boxOfPoints(outline);
  const level = (y: number) => (p: Point) => Math.abs(p.y - y) <= TOUCH;
  const top = outline.filter(level(box.y + box.h));
  const foot = outline.filter(level(box.y));
  // Counterclockwise: down along the start from the left end of the top to that of the foot, and up along the end.
  const by = (points: Ring, sign: 1 | -1): Point => points.reduce((a, b) => (sign * (b.x - a.x) > 0 ? b : a));
  const sides = {
    start: betweenCorners(outline, by(top, -1), by(foot, -1)),
    end: betweenCorners(outline, by(foot, 1), by(top, 1)).reverse(),
  };
  // A corner of neither lies in a hollow of a long edge.
  if (new Set([...sides.start, ...sides.end]).size < outline.length) return null;
  const start = endOf(sides.start, 'start', stock, most);
  const end = endOf(sides.end, 'end', stock, most);
  return start && end && [start, end];
}

/**
 * An end from its corner at the upper edge to that at the lower one: one cut, or two that meet in a point; null where
 * there are more, where they leave a hollow, or where one is over what the saw can be set to.
 */
function endOf(corners: readonly Point[], at: 'start' | 'end', stock: Stock, most: Deg): PieceEnd | null {
  const sign = at === 'end' ? 1 : -1;
  const miters = corners.slice(1).map((q, i): Deg => {
    const p = pick(corners, i);
    return sign * degrees(Math.atan2(p.x - q.x, p.y - q.y)) + 0;
  });
  const [first = 0, second] = miters.map((miter) => (Math.abs(miter) < SAME_ANGLE ? 0 : miter));
  if (miters.length > 2 || miters.some((miter) => Math.abs(miter) > most)) return null;
  if (second === undefined)
    return END_KINDS[first === 0 ? 'square' : 'miter'].settle({ ...BARE, stock, miter: first });
  // The point stands out only where the upper cut leans back to the edge and the lower one leans the other way.
  if (first >= second) return null;
  return END_KINDS.point.settle({ ...BARE, stock, miter: first, secondMiter: second });
}
