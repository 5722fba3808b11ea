import type { Color } from '../drawing/drawing.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point } from '../geometry/shape.ts';
import { DUST } from '../geometry/tolerance.ts';
import type { Mm } from '../measure/units.ts';
import { longEdges } from './lengths.ts';
import type { Piece } from './piece.ts';

/** About half an em a character: enough to keep figures clear of the wood. */
export const textWidth = (text: string, size: Mm): Mm => text.length * size * 0.6;

/** Height of a line of figures above and below the piece, in text sizes. */
export const BAND = 2;

/** Colors of a drawn piece. */
export interface PieceInk {
  readonly wood: Color;
  readonly line: Color;
  readonly text: Color;
  readonly faint: Color;
}

/** Where a piece is drawn: scale, place, and where it is broken. */
export interface View {
  readonly scale: number;
  /** Lower left corner of the piece's box on the drawing. */
  readonly at: Point;
  /** Drawn length, gap included. */
  readonly width: Mm;
  readonly height: Mm;
  /** Length of wood shown left and right of the break; null: drawn whole. */
  readonly kept: Mm | null;
}

/**
 * Fits a piece into a box with room for figures around it: `ends` is what is written beside its ends, and
 * `below` the height of what is written of its notches. A stick is drawn as wide as it may be with both cut
 * ends in view, and broken in the middle when it is too long for that; a panel is drawn whole, and so is a
 * notched stick.
 */
export function viewOf(
  piece: Piece,
  box: { readonly width: Mm; readonly height: Mm },
  figures: { readonly ends: readonly string[]; readonly below: Mm },
  size: Mm,
): View {
  const own = boxOfPoints(piece.outline);
  const { below } = figures;
  const side = Math.max(...figures.ends.map((text) => textWidth(text, size)), size) + size;
  const room = { w: box.width - 2 * side, h: box.height - 2 * BAND * size - below };
  const gap = size * 1.5;
  const whole = Math.min(room.h / own.h, room.w / own.w);
  const cutRun = Math.max(longestRun(piece, own.w), own.h / 2);
  const byEnds = (room.w - gap) / 2 / (cutRun * 1.25);
  const scale =
    piece.form === 'sheet' || piece.notches.length > 0
      ? whole
      : Math.max(whole, Math.min(room.h / own.h, byEnds));
  const broken = own.w * scale > room.w + DUST;
  const width = broken ? room.w : own.w * scale;
  const height = own.h * scale;
  return {
    scale,
    at: { x: (box.width - width) / 2, y: (box.height + below - height) / 2 },
    width,
    height,
    kept: broken ? (room.w - gap) / 2 / scale : null,
  };
}

/** Length of the longer of the two cut ends along the piece. */
const longestRun = (piece: Piece, length: Mm): Mm =>
  piece.outline.reduce((most, p) => Math.max(most, Math.min(p.x, length - p.x)), 0);

/** Places points of the piece on the drawing, moved along it by `shift`. */
export const onSheet =
  (view: View, shift: Mm = 0) =>
  (p: Point): Point => ({ x: view.at.x + shift + p.x * view.scale, y: view.at.y + p.y * view.scale });

/** Places points of the piece on the drawing; beyond a break everything is drawn from the right end. */
export function onPaper(piece: Piece, view: View): (p: Point) => Point {
  const length = boxOfPoints(piece.outline).w;
  const left = onSheet(view);
  const right = onSheet(view, view.width - length * view.scale);
  return (p) => (view.kept === null || p.x <= length / 2 ? left(p) : right(p));
}

/** The stretch along the piece in which both long edges are whole; of a sheet piece all of it. */
export function wholeStretch(piece: Piece): { readonly from: Mm; readonly to: Mm } {
  const { w } = boxOfPoints(piece.outline);
  if (piece.form === 'sheet') return { from: 0, to: w };
  const { left, right } = longEdges(piece);
  if (!left || !right) return { from: 0, to: 0 };
  return { from: Math.max(left.from.x, right.from.x), to: Math.min(left.to.x, right.to.x) };
}
