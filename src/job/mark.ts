import { areaOf } from '../geometry/region.ts';
import { boxOfPoints, centroidOfRing, productOfInertia, signedArea } from '../geometry/ring.ts';
import type { Point } from '../geometry/shape.ts';
import type { Draft } from '../joinery/draft.ts';
import type { PieceEnd } from '../joinery/piece.ts';
import { mayTurn, SAWN_ALIKE, turned } from '../joinery/same.ts';
import { at, pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';

/**
 * A piece of wood as it is known again by: its size, its ends, what its outline comes to, and its notches, each in
 * millimeters or degrees. Ids and labels change with the design, and the wood does not.
 */
export type Mark = readonly number[];

/** Where in a mark some of its figures stand. */
export const MARKED = {
  ...{ thickness: 0, width: 1, overall: 2, boxWidth: 8, boxHeight: 9, area: 10 },
  /** The ends follow each other: kind, miter, bevel, then both of a second cut, and of the saw with molding nested. */
  ...{ ends: 14, perEnd: 7 },
} as const;

/** Finer than anything is sawn, and coarser than the dust of the arithmetic. */
const GRAIN = 1e4;
const grain = (value: number): number => Math.round(value * GRAIN) / GRAIN + 0;

export function markOf(piece: Draft): Mark {
  const box = boxOfPoints(piece.outline);
  const middle = { x: box.x + box.w / 2, y: box.y + box.h / 2 };
  // What grows with the square of the size is told as a length, so that one tolerance serves all.
  const whole = Math.max(1, piece.overall + piece.width);
  const rings = [piece.outline, ...piece.holes];
  const area = areaOf([{ outer: piece.outline, holes: piece.holes }]);
  const leans = (of: (ring: readonly Point[]) => number) =>
    rings.reduce((sum, ring, i) => sum + (i === 0 ? 1 : -1) * of(ring), 0);
  const first = (axis: 'x' | 'y') =>
    leans((ring) => (Math.abs(signedArea(ring)) * (centerOf(ring)[axis] - middle[axis])) / whole / whole);
  return [
    ...[piece.thickness, piece.width, piece.overall, piece.margin, piece.fit.allowance],
    ...[piece.bent?.radius ?? 0, piece.holes.length, piece.notches.length],
    ...[box.w, box.h, area / whole, first('x'), first('y'), leans(productOfInertia) / whole ** 3],
    ...piece.ends.flatMap(settings),
    ...notched(piece, middle, whole),
  ].map(grain);
}

/** Center of the area, not of the corners: a corner more on a side changes nothing of the wood. */
function centerOf(ring: readonly Point[]): Point {
  const from = centroidOfRing(ring);
  let [sum, x, y] = [0, 0, 0];
  ring.forEach((p, i) => {
    const q = pick(ring, (i + 1) % ring.length);
    const [ax, ay, bx, by] = [p.x - from.x, p.y - from.y, q.x - from.x, q.y - from.y];
    const turn = ax * by - bx * ay;
    sum += turn;
    x += turn * (ax + bx);
    y += turn * (ay + by);
  });
  return sum === 0 ? from : { x: from.x + x / sum / 3, y: from.y + y / sum / 3 };
}

const settings = ({ cut, miter, bevel, second, nested }: PieceEnd): number[] => [
  ...[cut === 'cope' ? 1 : cut === 'return' ? 2 : 0, miter, bevel],
  ...[second?.miter ?? 0, second?.bevel ?? 0, nested?.miter ?? 0, nested?.bevel ?? 0],
];

/** How much is notched, on which side, and where in the piece. */
function notched({ notches }: Draft, middle: Point, whole: number): number[] {
  const sums = { face: [0, 0, 0], back: [0, 0, 0], groove: [0, 0, 0] };
  for (const { side, depth, outline } of notches) {
    const center = centerOf(outline);
    const wood = depth * Math.sqrt(Math.abs(signedArea(outline)));
    const to = sums[side];
    [wood, (wood * (center.x - middle.x)) / whole, (wood * (center.y - middle.y)) / whole].forEach((v, i) => {
      to[i] = at(to, i) + v / whole;
    });
  }
  return Object.values(sums).flat();
}

/** Whether wood of a mark is what a piece is to be; it may lie turned end for end where the piece may. */
export const isMarked = (mark: Mark, piece: Draft, stock: Stock | null): boolean =>
  near(mark, markOf(piece)) || (mayTurn(piece, stock) && near(mark, markOf(turned(piece))));

const near = (a: Mark, b: Mark): boolean =>
  a.length === b.length && a.every((value, i) => Math.abs(value - pick(b, i)) <= SAWN_ALIKE);
