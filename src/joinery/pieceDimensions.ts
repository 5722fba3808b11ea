import type { DrawItem } from '../drawing/drawing.ts';
import { line, text } from '../drawing/items.ts';
import { readable } from '../drawing/text.ts';
import {
  add,
  angleOf,
  distance,
  dot,
  leftNormal,
  midpoint,
  rotate,
  scale,
  subtract,
  unit,
} from '../geometry/point.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_LENGTH } from '../geometry/tolerance.ts';
import { cyclic } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { isCorner, isSquareEnded, longEdges } from './lengths.ts';
import type { Piece } from './piece.ts';
import { onPaper, type PieceInk, textWidth, type View } from './pieceView.ts';

/** How dimensions are written. */
export interface DimensionLook {
  readonly size: Mm;
  readonly ink: PieceInk;
  readonly length: (mm: Mm) => string;
}

/** A measure between two points of the piece; the dimension line lies to the left of the way between them. */
interface Dimension {
  readonly from: Point;
  readonly to: Point;
  readonly told: Mm;
  /** Which way it measures, where its points lie askew to that. */
  readonly along?: Point;
}

/** Whether a dimension stands below the piece, along its right edge. */
export const isToldBelow = (piece: Piece): boolean => belowOf(piece) !== null;

/**
 * The lengths of a piece, each from corner to corner: of both long edges, of one where the ends are square,
 * of the longest side where there is neither; and the width of what is sawn from sheet, with the height of its
 * shoulders where they are lower. What is told over all ends where the outline reaches farthest.
 */
export function dimensionItems(piece: Piece, view: View, look: DimensionLook): DrawItem[] {
  const all = [aboveOf(piece), belowOf(piece), sawnSideOf(piece), acrossOf(piece), shoulderOf(piece)];
  const place = onPaper(piece, view);
  const outline = piece.outline.map(place);
  return all.flatMap((d) => (d ? drawn({ ...d, from: place(d.from), to: place(d.to) }, outline, look) : []));
}

function aboveOf(piece: Piece): Dimension | null {
  const { left, right } = longEdges(piece);
  const { shown, measured } = piece;
  if (measured.edge === 'overall') return overallOf(piece);
  if (isSquareEnded(piece)) {
    const edge = left ?? right;
    return edge && { ...edge, told: shown.length };
  }
  return left && shown.edges.left !== null ? { ...left, told: shown.edges.left } : null;
}

function belowOf(piece: Piece): Dimension | null {
  const { right } = longEdges(piece);
  const { shown, measured } = piece;
  if (measured.edge === 'overall' || isSquareEnded(piece) || !right || shown.edges.right === null)
    return null;
  return { from: right.to, to: right.from, told: shown.edges.right };
}

/** From the outermost point at the start to the outermost one at the end. */
function overallOf({ outline, shown }: Piece): Dimension | null {
  const { x, w } = boxOfPoints(outline);
  const farthest = (at: Mm): Point | undefined =>
    outline.filter((p) => Math.abs(p.x - at) <= SAME_LENGTH).sort((a, b) => b.y - a.y)[0];
  const [from, to] = [farthest(x), farthest(x + w)];
  return from && to ? { from, to, told: shown.length, along: { x: 1, y: 0 } } : null;
}

function sawnSideOf({ outline, measured, shown }: Piece): Dimension | null {
  if (measured.edge !== 'sawn') return null;
  const sides = outline.map((p, i) => ({ from: cyclic(outline, i + 1), to: p }));
  const longest = sides.sort((a, b) => distance(b.from, b.to) - distance(a.from, a.to))[0];
  return longest ? { ...longest, told: shown.length } : null;
}

function acrossOf({ form, outline, shown }: Piece): Dimension | null {
  if (form !== 'sheet') return null;
  const { y, h } = boxOfPoints(outline);
  const farthest = (at: Mm): Point | undefined =>
    outline.filter((p) => Math.abs(p.y - at) <= SAME_LENGTH).sort((a, b) => b.x - a.x)[0];
  const [from, to] = [farthest(y + h), farthest(y)];
  return from && to ? { from, to, told: shown.width, along: { x: 0, y: -1 } } : null;
}

/** From the lower edge up to the highest corner of the left end, of an outline that goes on rising from there. */
function shoulderOf({ form, outline }: Piece): Dimension | null {
  if (form !== 'sheet') return null;
  const { x, y, h } = boxOfPoints(outline);
  const heights = outline
    .filter((p, i) => Math.abs(p.x - x) <= SAME_LENGTH && isCorner(outline, i))
    .map((p) => p.y - y);
  const highest = Math.max(0, ...heights);
  if (highest <= SAME_LENGTH || highest >= h - SAME_LENGTH) return null;
  return { from: { x, y }, to: { x, y: y + highest }, told: highest };
}

/**
 * Extension lines from both points to the dimension line, which runs clear of the outline, and the figure in
 * a gap of it, or beyond it where the line is too short.
 */
function drawn(
  { from, to, told, along = unit(subtract(to, from)) }: Dimension,
  outline: readonly Point[],
  look: DimensionLook,
): DrawItem[] {
  const { size, ink } = look;
  const words = look.length(told);
  const out = leftNormal(along);
  const tick = size * 0.35;
  const clear = textWidth(words, size) / 2 + size * 0.4;
  const level = Math.max(...outline.map((p) => dot(p, out))) + size * 0.9;
  const foot = (p: Point): Point => add(p, scale(out, level - dot(p, out)));
  const [p, q] = [foot(from), foot(to)];
  const middle = midpoint(p, q);
  const room = distance(p, q) - 2 * clear;
  const stroke = { stroke: ink.faint, width: 0.2 };
  const extension = (corner: Point, end: Point): DrawItem =>
    line(add(corner, scale(out, size * 0.2)), add(end, scale(out, tick)), stroke);
  const stretches =
    room > size
      ? [
          line(p, subtract(middle, scale(along, clear)), stroke),
          line(add(middle, scale(along, clear)), q, stroke),
        ]
      : [];
  // Between lines too close for it the figure stands clear of them.
  const beyond = room > 0 ? 0 : tick + size * 0.3;
  const angle = readable(angleOf(along));
  // Centered on the line, whichever way it reads.
  const down = scale(leftNormal(rotate({ x: 1, y: 0 }, angle)), -size * 0.35);
  const at = add(add(middle, scale(out, beyond)), down);
  return [
    ...stretches,
    extension(from, p),
    extension(to, q),
    text(at, words, { size, anchor: 'middle', color: ink.text, ...(angle === 0 ? {} : { angle }) }),
  ];
}
