import type { DrawItem, Drawing } from '../drawing/drawing.ts';
import { line, text } from '../drawing/items.ts';
import { TEXT } from '../drawing/style.ts';
import { pathOfPolyline, pathOfRings } from '../geometry/path.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { ENDS } from './bar.ts';
import { cornersToMark, tipOf } from './lengths.ts';
import { notchItems, notchRoom, notchSize } from './notchDrawing.ts';
import type { Notch, Piece, PieceEnd } from './piece.ts';
import { curveItems } from './pieceCurves.ts';
import { dimensionItems, isToldBelow } from './pieceDimensions.ts';
import { type Drawn, scribeFigures, scribeItems } from './pieceScribe.ts';
import { BAND, onSheet, type PieceInk, textWidth, type View, viewOf, wholeStretch } from './pieceView.ts';
import { type Corner, keep } from './trim.ts';

/** How the drawing says its figures; wording and units are the caller's. */
export interface PieceWords {
  readonly length: (mm: Mm) => string;
  /** What the saw is set to for each cut of an end, the upper one first; none for a square end. */
  readonly end: (end: PieceEnd) => readonly string[];
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
 * lengths of its edges from corner to corner, saw angles at the ends and the label on the wood. Where two
 * cuts meet in a point, running measures from the left end and from the lower edge place every corner. A piece
 * too long for the box is broken in its middle, so that its ends keep their shape; one with notches is drawn
 * whole, so that each lies where it is sawn.
 */
export function pieceDrawing(
  piece: Piece,
  box: { readonly width: Mm; readonly height: Mm },
  words: PieceWords,
  ink: PieceInk = PAPER_INK,
): Drawing {
  const shaped = piece.form === 'sheet' && piece.ends.every((end) => end.cut === 'sawn');
  const size = textSize(box, shaped || piece.notches.length > 0 || cornersToMark(piece).length > 0);
  const room = notchRoom(piece, words.length, size, box.height - 2 * BAND * size);
  const sheet: Sheet = { box, size, ink, words, measures: room.measures };
  const tips = ENDS.map((end) => tipOf(piece, end)).flatMap((tip) => (tip ? words.length(tip.y) : []));
  const beside = [...piece.ends.flatMap(words.end), ...tips];
  const view = viewOf(piece, box, { ends: beside, below: room.height }, size);
  const look = { size, ink, length: words.length };
  const figures = [
    ...notches(piece, view, sheet),
    ...dimensionItems(piece, view, look),
    ...angles(piece, view, sheet),
    label(piece, view, sheet),
  ];
  return {
    width: box.width,
    height: box.height,
    title: piece.label,
    items: [
      ...wood(piece, view, sheet),
      ...figures,
      ...scribeFigures(piece, view, drawnOf(piece, view), look, figures),
      ...curveItems(piece, view, look, figures),
    ],
  };
}

/** A piece with notches or corners to mark has more figures to make room for. */
function textSize(box: { readonly height: Mm }, many: boolean): Mm {
  return many ? TEXT.note : Math.max(TEXT.note, Math.min(TEXT.figure, box.height / 7.5));
}

function wood(piece: Piece, view: View, { ink, size, words }: Sheet): DrawItem[] {
  const look = { size, ink, length: words.length };
  const style = { fill: ink.wood, stroke: ink.line, width: 0.3, fillRule: 'evenodd' } as const;
  const drawn = drawnOf(piece, view);
  const holes = piece.holes.map((ring) => ring.map(onSheet(view)));
  const cutAt =
    view.kept === null
      ? []
      : [view.at.x + view.kept * view.scale, view.at.x + view.width - view.kept * view.scale];
  return [
    ...drawn.map(
      ({ ring }): DrawItem => ({
        kind: 'path',
        path: pathOfRings(view.kept === null ? [ring, ...holes] : [ring]),
        ...style,
      }),
    ),
    ...scribeItems(piece, view, drawn, look),
    ...cutAt.map((x): DrawItem => breakLine(x, view, size, ink)),
  ];
}

/** All of the piece, or what is left of it before and after a break. */
function drawnOf(piece: Piece, view: View): Drawn[] {
  const start = view.at.x;
  if (view.kept === null) return [{ ring: piece.outline.map(onSheet(view)), start }];
  const length = boxOfPoints(piece.outline).w;
  const shift = view.width - length * view.scale;
  return [
    { ring: halfOf(piece.outline, 'end', view.kept).map(onSheet(view)), start },
    {
      ring: halfOf(piece.outline, 'start', length - view.kept).map(onSheet(view, shift)),
      start: start + shift,
    },
  ];
}

function notches(piece: Piece, view: View, { size, ink, words, measures }: Sheet): DrawItem[] {
  return notchItems(piece, view, {
    size: notchSize(size),
    ink,
    length: words.length,
    notch: words.notch,
    measures,
    below: view.at.y - size * (isToldBelow(piece) ? 2 : 0.6),
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

/** Beside each end its saw angles, of two cuts each beside its own; beside a point how far up it lies. */
function angles(piece: Piece, view: View, { size, ink, words }: Sheet): DrawItem[] {
  return ENDS.flatMap((end, i): DrawItem[] => {
    const out = end === 'start' ? -1 : 1;
    const x = end === 'start' ? view.at.x : view.at.x + view.width;
    const look = { anchor: end === 'start' ? 'end' : 'start', color: ink.text } as const;
    const told = words.end(pick(piece.ends, i));
    const tip = tipOf(piece, end);
    const heights = told.length > 1 ? [view.height - size * 0.7, -size] : [view.height / 2 - size * 0.35];
    const settings = told.map((setting, k) =>
      text({ x: x + out * size * 0.5, y: view.at.y + pick(heights, k) }, setting, { size, ...look }),
    );
    if (!tip) return settings;
    const up = { x: x + out * size * 0.5, y: view.at.y + tip.y * view.scale };
    const foot = { x: up.x, y: view.at.y };
    const small = notchSize(size);
    const stroke = { stroke: ink.faint, width: 0.2 };
    const tick = (p: Point): DrawItem =>
      line({ x: p.x - size * 0.25, y: p.y }, { x: p.x + size * 0.25, y: p.y }, stroke);
    return [
      ...settings,
      line(foot, up, stroke),
      tick(foot),
      tick(up),
      text({ x: x + out * size, y: (up.y + foot.y) / 2 - small * 0.35 }, words.length(tip.y), {
        size: small,
        ...look,
      }),
    ];
  });
}

/**
 * On whole wood between the start's cut and the break or the end's cut; else in a corner of the drawing, of a
 * notched piece in the lower one, which its measures leave free.
 */
function label(piece: Piece, view: View, { size, ink, words, box }: Sheet): DrawItem {
  const name = words.face === '' ? piece.label : `${piece.label} ${words.face}`;
  const big = size * 1.2;
  const stretch = wholeStretch(piece);
  const from = stretch.from * view.scale;
  const to = view.kept === null ? stretch.to * view.scale : view.kept * view.scale - size * 0.5;
  const whole = piece.holes.length + piece.notches.length === 0;
  const fits = whole && to - from > textWidth(name, big) + size && view.height > big;
  const at = fits
    ? { x: view.at.x + (from + to) / 2, y: view.at.y + view.height / 2 - big * 0.35 }
    : { x: size * 0.5, y: piece.notches.length > 0 ? size * 0.4 : box.height - big };
  const anchor = fits ? 'middle' : 'start';
  return text(at, name, { size: big, anchor, bold: true, color: ink.text });
}
