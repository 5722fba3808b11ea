import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { pathOfPolyline, pathOfRings } from '../geometry/path.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import type { Mm } from '../measure/units.ts';
import { notchItems, notchRoom, notchSize } from './notchDrawing.ts';
import type { Notch, Piece, PieceEnd } from './piece.ts';
import { BAND, onSheet, type PieceInk, startRun, textWidth, type View, viewOf } from './pieceView.ts';
import { type Corner, keep } from './trim.ts';

/** How the drawing says its figures; wording and units are the caller's. */
export interface PieceWords {
  readonly length: (mm: Mm) => string;
  /** An end as the saw is set for it; empty for a square end. */
  readonly end: (end: PieceEnd) => string;
  /** Side and depth of a notch. */
  readonly notch: (notch: Notch) => string;
  /** Printed on the show face, beside the label. */
  readonly face: string;
}

/** Ink on white paper. */
export const PAPER_INK: PieceInk = { wood: '#f3e7d3', line: '#2b2723', text: '#2b2723', faint: '#857a6c' };

interface Sheet {
  readonly box: { readonly width: Mm; readonly height: Mm };
  readonly size: Mm;
  readonly ink: PieceInk;
  readonly words: PieceWords;
  /** Whether there is room to measure the notches of the piece. */
  readonly measures: boolean;
}

/**
 * A piece as it lies on the bench, show face up and start at the left: outline with both its true ends, the
 * long-point and short-point lengths on the edges they belong to, saw angles at the ends and the label on
 * the wood. A piece too long for the box is broken in its middle, so that its ends keep their shape; one with
 * notches is drawn whole, so that each lies where it is sawn.
 */
export function pieceDrawing(
  piece: Piece,
  box: { readonly width: Mm; readonly height: Mm },
  words: PieceWords,
  ink: PieceInk = PAPER_INK,
): Drawing {
  const size = textSize(box, piece.notches.length > 0);
  const room = notchRoom(piece, words.length, size, box.height - 2 * BAND * size);
  const sheet: Sheet = { box, size, ink, words, measures: room.measures };
  const view = viewOf(piece, box, { ends: piece.ends.map(words.end), below: room.height }, size);
  return {
    width: box.width,
    height: box.height,
    title: piece.label,
    items: [
      ...wood(piece, view, sheet),
      ...notches(piece, view, sheet),
      ...lengths(piece, view, sheet),
      ...angles(piece, view, sheet),
      label(piece, view, sheet),
    ],
  };
}

/** A notched piece has more figures to make room for. */
function textSize(box: { readonly height: Mm }, notched: boolean): Mm {
  const size = Math.max(2.2, Math.min(4, box.height / 8));
  return notched ? Math.min(2.6, size) : size;
}

function wood(piece: Piece, view: View, { ink, size }: Sheet): DrawItem[] {
  const style = { fill: ink.wood, stroke: ink.line, width: 0.3, fillRule: 'evenodd' } as const;
  if (view.kept === null) {
    const rings = [piece.outline, ...piece.holes].map((ring) => ring.map(onSheet(view)));
    return [{ kind: 'path', path: pathOfRings(rings), ...style }];
  }
  const length = boxOfPoints(piece.outline).w;
  const from = length - view.kept;
  const left = halfOf(piece.outline, 'end', view.kept).map(onSheet(view));
  const right = halfOf(piece.outline, 'start', from).map(onSheet(view, view.width - length * view.scale));
  const cutAt = [view.at.x + view.kept * view.scale, view.at.x + view.width - view.kept * view.scale];
  return [
    ...[left, right].map((ring): DrawItem => ({ kind: 'path', path: pathOfRings([ring]), ...style })),
    ...cutAt.map((x): DrawItem => breakLine(x, view, size, ink)),
  ];
}

function notches(piece: Piece, view: View, { size, ink, words, measures }: Sheet): DrawItem[] {
  const taken = !longIsUp(piece) || shortIsTold(piece);
  return notchItems(piece, view, {
    size: notchSize(size),
    ink,
    length: words.length,
    notch: words.notch,
    measures,
    below: view.at.y - size * (taken ? 2 : 0.6),
  });
}

/** A stick's outline is convex: one cut across leaves one piece of it. */
function halfOf(outline: Ring, end: 'start' | 'end', at: Mm): Point[] {
  const corners: Corner[] = outline.map((p) => ({ ...p, edge: null }));
  return keep(corners, end, { at, slope: 0, kind: 'sawn', with: null, corner: null });
}

/** A zigzag over the sawn-off edge, as drafting breaks a long part. */
function breakLine(x: Mm, view: View, size: Mm, ink: PieceInk): DrawItem {
  const { y } = view.at;
  const [low, middle, high] = [y - size * 0.4, y + view.height / 2, y + view.height + size * 0.4];
  const s = Math.min(size * 0.45, view.height / 6);
  const points = [
    { x, y: low },
    { x, y: middle - s },
    { x: x - s, y: middle - s / 3 },
    { x: x + s, y: middle + s / 3 },
    { x, y: middle + s },
    { x, y: high },
  ];
  return { kind: 'path', path: pathOfPolyline(points), stroke: ink.line, width: 0.3 };
}

/** The edge that the long-point length is written along: the longer one, the upper one when both are. */
function longIsUp(piece: Piece): boolean {
  const height = boxOfPoints(piece.outline).h;
  const extent = (y: Mm): Mm => {
    const xs = piece.outline.filter((p) => Math.abs(p.y - y) < 1e-6).map((p) => p.x);
    return xs.length === 0 ? 0 : Math.max(...xs) - Math.min(...xs);
  };
  return extent(height) >= extent(0) - 1e-6;
}

const shortIsTold = (piece: Piece): boolean => piece.length - piece.short > 0.5 && piece.short > 0;

function lengths(piece: Piece, view: View, sheet: Sheet): DrawItem[] {
  const up = longIsUp(piece);
  const long = dimension(0, piece.length, up, sheet.words.length(piece.shown), piece, view, sheet);
  if (piece.form === 'sheet') return [...long, ...width(piece, view, sheet)];
  if (!shortIsTold(piece)) return long;
  const from = startRun(piece);
  const text = sheet.words.length(piece.short);
  return [...long, ...dimension(from, from + piece.short, !up, text, piece, view, sheet)];
}

function dimension(
  from: Mm,
  to: Mm,
  above: boolean,
  text: string,
  piece: Piece,
  view: View,
  { size, ink }: Sheet,
): DrawItem[] {
  const length = boxOfPoints(piece.outline).w;
  // Beyond the break everything is drawn from the right end.
  const x = (at: Mm): Mm =>
    at <= length / 2 || view.kept === null
      ? view.at.x + at * view.scale
      : view.at.x + view.width - (length - at) * view.scale;
  const y = above ? view.at.y + view.height + size * 0.9 : view.at.y - size * 0.9;
  const tick = size * 0.35;
  const [a, b] = [x(from), x(to)];
  const middle = (a + b) / 2;
  const clear = textWidth(text, size) / 2 + size * 0.4;
  const line = (points: Point[]): DrawItem => ({
    kind: 'path',
    path: pathOfPolyline(points),
    stroke: ink.faint,
    width: 0.2,
  });
  // Between ticks too close for it the figure stands clear of them.
  const beyond = b - a > 2 * clear ? 0 : (tick + size * 0.3) * (above ? 1 : -1);
  const stretches =
    b - a > 2 * clear + size
      ? [
          line([
            { x: a, y },
            { x: middle - clear, y },
          ]),
          line([
            { x: middle + clear, y },
            { x: b, y },
          ]),
        ]
      : [];
  return [
    ...stretches,
    ...[a, b].map((at) =>
      line([
        { x: at, y: y - tick },
        { x: at, y: y + tick },
      ]),
    ),
    {
      kind: 'text',
      at: { x: middle, y: y - size * 0.35 + beyond },
      text,
      size,
      anchor: 'middle',
      color: ink.text,
    },
  ];
}

/** The width of a sheet piece, written along its right side. */
function width(piece: Piece, view: View, { size, ink, words }: Sheet): DrawItem[] {
  const at = { x: view.at.x + view.width + size * 1.3, y: view.at.y + view.height / 2 };
  const text = words.length(piece.width);
  return [{ kind: 'text', at, text, size, anchor: 'middle', angle: 90, color: ink.text }];
}

function angles(piece: Piece, view: View, { size, ink, words }: Sheet): DrawItem[] {
  const y = view.at.y + view.height / 2 - size * 0.35;
  return piece.ends.flatMap((end, i): DrawItem[] => {
    const text = words.end(end);
    if (text === '') return [];
    const x = i === 0 ? view.at.x - size * 0.5 : view.at.x + view.width + size * 0.5;
    return [{ kind: 'text', at: { x, y }, text, size, anchor: i === 0 ? 'end' : 'start', color: ink.text }];
  });
}

/**
 * On whole wood between the start's cut and the break or the end's cut; else in a corner of the drawing, of a
 * notched piece in the lower one, which its measures leave free.
 */
function label(piece: Piece, view: View, { size, ink, words, box }: Sheet): DrawItem {
  const text = words.face === '' ? piece.label : `${piece.label} ${words.face}`;
  const big = size * 1.2;
  const from = startRun(piece) * view.scale;
  const to = view.kept === null ? from + piece.short * view.scale : view.kept * view.scale - size * 0.5;
  const whole = piece.holes.length + piece.notches.length === 0;
  const fits = whole && to - from > textWidth(text, big) + size && view.height > big;
  const at = fits
    ? { x: view.at.x + (from + to) / 2, y: view.at.y + view.height / 2 - big * 0.35 }
    : { x: size * 0.5, y: piece.notches.length > 0 ? size * 0.4 : box.height - big };
  const anchor = fits ? 'middle' : 'start';
  return { kind: 'text', at, text, size: big, anchor, bold: true, color: ink.text };
}
