import { cross, distance, subtract, turnBetween, unit } from '../geometry/point.ts';
import { betweenCorners, boxOfPoints } from '../geometry/ring.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import type { Deg, Mm } from '../measure/units.ts';
import { type End, otherSide, type Side, TOUCH } from './bar.ts';
import type { Measured, Piece, PieceEnd, TapeCorner } from './piece.ts';

/**
 * Where an outline turns by less there is no corner to hook a tape on: the chords of a curve turn by up to
 * 8 degrees where its radius is 20 mm (FLATNESS).
 */
const LEAST_TURN: Deg = 9;

/** All that is measured along a piece. */
export type Lengths = Pick<Piece, 'length' | 'measured' | 'edges' | 'overall'>;

/**
 * The lengths of a piece, from its outline alone. The tape is laid along the longer of the two long edges
 * (the left one when they are alike), or along the longest sawn side of a piece that has neither; what is
 * sawn to an outline that ends on neither edge is told over all.
 *
 * @param outline start end left, left edge up, as of the show face
 * @param margin wood around the outline for the saw to run in
 */
export function lengthsOf(outline: readonly Point[], ends: Piece['ends'], margin: Mm = 0): Lengths {
  const box = boxOfPoints(outline);
  const edges = longEdges({ outline, ends });
  const [left, right] = [lengthOf(edges.left), lengthOf(edges.right)];
  return {
    ...tapeOf(outline, box, edges, ends),
    edges: { left, right },
    overall: box.w + 2 * margin,
  };
}

/** A long edge between its two corners, in the order of x. */
export interface Edge {
  readonly from: Point;
  readonly to: Point;
}

/** The two long edges of a piece on its show face; null where the cuts leave none. */
export function longEdges({
  outline,
  ends,
}: Pick<Piece, 'outline' | 'ends'>): Readonly<Record<Side, Edge | null>> {
  const { y, h } = boxOfPoints(outline);
  return { left: edgeAt(outline, y + h, ends), right: edgeAt(outline, y, ends) };
}

const lengthOf = (edge: Edge | null): Mm | null => edge && edge.to.x - edge.from.x;

/** The straight long edge at a height; null where the outline has none there, or a curve runs into it. */
function edgeAt(outline: readonly Point[], y: Mm, ends: Piece['ends']): Edge | null {
  const on = outline.filter(
    (p, i) => Math.abs(p.y - y) <= SAME_LENGTH && (!isSawn(ends) || isCorner(outline, i)),
  );
  const [first] = on;
  if (!first) return null;
  const from = on.reduce((a, b) => (b.x < a.x ? b : a), first);
  const to = on.reduce((a, b) => (b.x > a.x ? b : a), first);
  return to.x - from.x > TOUCH ? { from, to } : null;
}

/** Whether a piece is sawn to a line all around, so that its ends are no cuts across it. */
const isSawn = (ends: Piece['ends']): boolean => ends.some((end) => end.cut === 'sawn');

/** Whether an outline turns at its point `i` so that a person sees a corner there. */
export function isCorner(outline: readonly Point[], i: number): boolean {
  const [before, at, after] = [i - 1, i, i + 1].map((k) => outline[(k + outline.length) % outline.length]);
  if (!before || !at || !after) return false;
  return Math.abs(turnBetween(subtract(at, before), subtract(after, at))) > LEAST_TURN;
}

function tapeOf(
  outline: readonly Point[],
  box: Box,
  edges: Readonly<Record<Side, Edge | null>>,
  ends: Piece['ends'],
): Pick<Lengths, 'length' | 'measured'> {
  const [left, right] = [lengthOf(edges.left) ?? 0, lengthOf(edges.right) ?? 0];
  const side: Side = right > left + SAME_LENGTH ? 'right' : 'left';
  const edge = edges[side];
  if (isSawn(ends)) {
    const whole = edge !== null && Math.max(left, right) >= box.w - SAME_LENGTH;
    const measured: Measured = whole
      ? { edge: side, from: 'corner', to: 'corner' }
      : { edge: 'overall', from: 'outermost', to: 'outermost' };
    return { length: box.w, measured };
  }
  if (!edge) {
    return { length: longestSide(outline), measured: { edge: 'sawn', from: 'corner', to: 'corner' } };
  }
  const at = (end: End): TapeCorner => cornerAt(box, edges, side, end, ends[end === 'start' ? 0 : 1]);
  return {
    length: side === 'left' ? left : right,
    measured: { edge: side, from: at('start'), to: at('end') },
  };
}

const longestSide = (outline: readonly Point[]): Mm =>
  outline.reduce((most, p, i) => Math.max(most, distance(p, cyclic(outline, i + 1))), 0);

/** What the corner is at which an edge meets the cut of an end. */
function cornerAt(
  box: Box,
  edges: Readonly<Record<Side, Edge | null>>,
  side: Side,
  end: End,
  cut: PieceEnd,
): TapeCorner {
  if (cut.miter === 0 && cut.second === null) return cut.bevel === 0 ? 'square' : 'long-point';
  /** How far the corner of an edge lies in from the outermost point of the end. */
  const back = (edge: Edge | null): Mm =>
    edge === null ? Infinity : end === 'start' ? edge.from.x - box.x : box.x + box.w - edge.to.x;
  if (back(edges[side]) <= TOUCH) return 'long-point';
  // Of two cuts that meet in a point between the edges, neither edge has the long point.
  const other = back(edges[otherSide(side)]);
  return cut.second !== null && other > TOUCH ? 'shoulder' : 'short-point';
}

/** Whether one figure tells both long edges: corner lies across from corner at both ends, on the back too. */
export const isSquareEnded = ({ measured: { from, to } }: Pick<Piece, 'measured'>): boolean =>
  from === 'square' && to === 'square';

/** The long edge that `length` does not tell, as it is shown; null where there is none, or it is the same. */
export function otherEdge(piece: Piece): { readonly edge: Side; readonly shown: Mm } | null {
  const { edge } = piece.measured;
  if (isSquareEnded(piece) || (edge !== 'left' && edge !== 'right')) return null;
  const other = otherSide(edge);
  const shown = piece.shown.edges[other];
  return shown === null ? null : { edge: other, shown };
}

/** More corners than a person would mark one by one: such an outline is sawn by a pattern. */
const MOST_CORNERS = 12;

/**
 * The corners of a piece that its edges and angles do not place, from left to right: those of ends with two
 * cuts and of panels that are no rectangles. `x` counts from the left end, `y` from the lower edge; empty
 * where nothing needs it.
 */
export function cornersToMark({ outline, ends, measured, margin }: Piece): Point[] {
  if (margin > 0) return [];
  const sawn = isSawn(ends);
  if (!sawn && measured.edge !== 'sawn' && ends.every((end) => end.second === null)) return [];
  const { x, y, w, h } = boxOfPoints(outline);
  const corners = outline
    .filter((_, i) => !sawn || isCorner(outline, i))
    .map((p) => ({ x: p.x - x, y: p.y - y }))
    .sort((a, b) => a.x - b.x || a.y - b.y);
  const ofBox = (p: Point): boolean =>
    [p.x, w - p.x].some((d) => d <= TOUCH) && [p.y, h - p.y].some((d) => d <= TOUCH);
  return corners.length <= MOST_CORNERS && !corners.every(ofBox) ? corners : [];
}

/**
 * The corners of each opening of a piece, told like `cornersToMark`; none of an opening without corners, such as a
 * circle, or with more than are marked one by one.
 */
export function openingsToMark({ outline, holes }: Pick<Piece, 'outline' | 'holes'>): Point[][] {
  const { x, y } = boxOfPoints(outline);
  return holes
    .map((ring) => ring.filter((_, i) => isCorner(ring, i)).map((p) => ({ x: p.x - x, y: p.y - y })))
    .filter((corners) => corners.length > 0 && corners.length <= MOST_CORNERS)
    .map((corners) => corners.sort((a, b) => a.x - b.x || a.y - b.y));
}

/** The point of an end with two cuts, where it lies between the edges; null for any other end. */
export function tipOf({ outline, ends }: Pick<Piece, 'outline' | 'ends'>, end: End): Point | null {
  if (ends[end === 'start' ? 0 : 1].second === null) return null;
  const { x, y, w, h } = boxOfPoints(outline);
  const inner = outline.filter((p) => p.y - y > TOUCH && y + h - p.y > TOUCH);
  return inner.find((p) => Math.abs(p.x - (end === 'start' ? x : x + w)) <= TOUCH) ?? null;
}

/** A curved end: how long it is from edge to edge, and how far the curve strays from that straight line. */
export interface EndCurve {
  readonly chord: Mm;
  readonly depth: Mm;
}

/**
 * The line that an end is sawn along, from the right edge to the left one; null where the saw cuts it. Of a piece
 * that is sawn all around nothing is its end.
 */
export function endLine(
  { outline, ends, form }: Pick<Piece, 'outline' | 'ends' | 'form'>,
  end: End,
): Point[] | null {
  if (form === 'sheet' || ends[end === 'start' ? 0 : 1].cut !== 'sawn') return null;
  const { y, h } = boxOfPoints(outline);
  const outward = end === 'end' ? 1 : -1;
  const farthest = (at: Mm): Point | undefined =>
    outline.filter((p) => Math.abs(p.y - at) <= TOUCH).sort((a, b) => outward * (b.x - a.x))[0];
  const [right, left] = [farthest(y), farthest(y + h)];
  if (!right || !left) return null;
  return end === 'end'
    ? betweenCorners(outline, right, left)
    : betweenCorners(outline, left, right).reverse();
}

/** What a curved end measures. */
export function endCurve(piece: Pick<Piece, 'outline' | 'ends' | 'form'>, end: End): EndCurve | null {
  const line = endLine(piece, end);
  const [a, b] = [line?.at(0), line?.at(-1)];
  if (!line || !a || !b) return null;
  const along = unit(subtract(b, a));
  return {
    chord: distance(a, b),
    depth: line.reduce((most, p) => Math.max(most, Math.abs(cross(along, subtract(p, a)))), 0),
  };
}
