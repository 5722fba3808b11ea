import type { Shop } from '../design/schema.ts';
import { cross, dot, subtract, unit } from '../geometry/point.ts';
import { centroidOf } from '../geometry/region.ts';
import { betweenCorners, boxOfPoints, containsPoint, productOfInertia } from '../geometry/ring.ts';
import type { Point, Polygon, Ring } from '../geometry/shape.ts';
import { SAME_ANGLE, SAME_LENGTH } from '../geometry/tolerance.ts';
import type { Laid } from '../layout/laid.ts';
import { cyclic, pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { type Deg, degrees, type Mm } from '../measure/units.ts';
import { TOUCH } from './bar.ts';
import { atOrigin, type Placed } from './draft.ts';
import { END_KINDS } from './end/table.ts';
import { lengthsOf } from './lengths.ts';
import type { Notch, PieceEnd } from './piece.ts';

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
  const lay = (p: Point): Point => ({ x: dot(p, along), y: cross(along, p) });
  const grooves = (laid.relief?.sunk ?? []).flatMap(({ outer }) =>
    containsPoint(polygon.outer, centroidOf([{ outer, holes: [] }])) ? [outer] : [],
  );
  const rings = [polygon.outer, ...grooves, ...polygon.holes].map((ring) => cornersOf(ring.map(lay)));
  const [first = [], ...others] = hasAlikeFaces(laid) ? oneHanded(rings) : rings;
  const own = atOrigin(first, others);
  const { outline, box } = own;
  const holes = own.holes.slice(grooves.length);
  const sheet = stock.form === 'sheet';
  const sawn = END_KINDS.sawn.settle({ ...BARE, stock });
  const cut = holes.length === 0 ? endsOf(outline, stock, sheet ? 0 : most) : null;
  const ends = cut ?? ([sawn, sawn] as const);
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
    notches: own.holes
      .slice(0, grooves.length)
      .map((ring) => grooveOf(ring, laid.relief?.depth ?? 0))
      .sort((a, b) => a.from - b.from),
    placed: laid.wood.length > 1 ? [polygon] : laid.region,
    z0: laid.z0,
    z1: laid.z1,
    grain: sheet && !stock.grain ? 'any' : 'along',
  };
  return { draft, kind: sheet ? 'panel' : 'stick', stretch: null };
}

function grooveOf(outline: Ring, depth: Mm): Notch {
  const { y, h } = boxOfPoints(outline);
  return { from: y, to: y + h, depth, side: 'groove', miter: 0, outline };
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
