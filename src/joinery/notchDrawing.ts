import type { DrawItem } from '../drawing/drawing.ts';
import { TEXT } from '../drawing/style.ts';
import { textWidth } from '../drawing/text.ts';
import { pathOfPolyline, pathOfRings } from '../geometry/path.ts';
import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import { SAME_PLACE } from '../geometry/tolerance.ts';
import { pick } from '../list/at.ts';
import type { Mm } from '../measure/units.ts';
import { cornersToMark } from './lengths.ts';
import type { Notch, Piece } from './piece.ts';
import { onPaper, onSheet, type PieceInk, type View } from './pieceView.ts';

/** How the figures of notches are written. */
export interface NotchLook {
  readonly size: Mm;
  readonly ink: PieceInk;
  readonly length: (mm: Mm) => string;
  readonly notch: (notch: Notch) => string;
  readonly measures: boolean;
  /** Where the figures below the piece begin. */
  readonly below: Mm;
}

/** Notches are told in smaller figures than the piece itself: there may be many. */
export const notchSize = (size: Mm): Mm => Math.max(TEXT.note, size * 0.75);

/** What is measured from the left end, each told once: shoulders of notches, and corners that need it. */
function stations(piece: Piece): Mm[] {
  const corners = piece.form === 'sheet' ? [] : cornersToMark(piece);
  const notched = piece.notches.flatMap(({ from, to, side }) => (side === 'groove' ? [] : [from, to]));
  const all = [...notched.filter((at) => at < piece.overall - SAME_PLACE), ...corners.map(({ x }) => x)];
  return all
    .filter((at) => at > SAME_PLACE)
    .sort((a, b) => a - b)
    .filter((at, i, own) => i === 0 || at - pick(own, i - 1) > SAME_PLACE);
}

/** What is written below a piece with notches or pointed ends, and the height that it takes. */
export interface NotchRoom {
  readonly height: Mm;
  /** Whether there is room for running measures. */
  readonly measures: boolean;
}

/** A piece must be drawn at least this high to show where its notches are. */
const LEAST: Mm = 4;

/** Room for the figures below a piece where `free` is left beside its own; none where it needs none. */
export function notchRoom(piece: Piece, length: (mm: Mm) => string, size: Mm, free: Mm): NotchRoom {
  const measured = stations(piece);
  if (piece.notches.length + measured.length === 0) return { height: 0, measures: false };
  const own = notchSize(size);
  const depth = piece.notches.length > 0 ? 1.8 * own : 0;
  const longest = Math.max(0, ...measured.map((at) => textWidth(length(at), { size: own })));
  const whole = depth + longest + own * 0.6;
  return free - whole >= LEAST ? { height: whole, measures: true } : { height: depth, measures: false };
}

/**
 * The notches of a piece: hatched, with a full outline where they are sawn into the face and a dashed one
 * where they are hidden on the back, running measures to their shoulders, and their side and depth in words.
 */
export function notchItems(piece: Piece, view: View, look: NotchLook): DrawItem[] {
  return [
    ...piece.notches.flatMap((notch) => hatchedNotch(notch.outline.map(onSheet(view)), notch.side, look)),
    ...(look.measures ? runningMeasures(piece, view, look) : []),
    ...depths(piece, view, look),
  ];
}

function hatchedNotch(ring: Ring, side: Notch['side'], { ink, size }: NotchLook): DrawItem[] {
  const color = side === 'back' ? ink.faint : ink.line;
  const outline = { kind: 'path', path: pathOfRings([ring]), stroke: ink.line, width: 0.25 } as const;
  return [
    ...hatching(ring, size * 0.3).map(
      (pair): DrawItem => ({ kind: 'path', path: pathOfPolyline(pair), stroke: color, width: 0.13 }),
    ),
    side === 'back' ? { ...outline, dash: [1.2, 0.7] } : outline,
  ];
}

/** Lines x + y = s across a convex ring, `step` apart. */
function hatching(ring: Ring, step: Mm): Point[][] {
  const sums = ring.map((p) => p.x + p.y);
  const lines: Point[][] = [];
  for (let s = Math.ceil(Math.min(...sums) / step) * step; s < Math.max(...sums); s += step) {
    const ends = ring.flatMap((p, i): Point[] => {
      const q = ring[(i + 1) % ring.length];
      if (!q) return [];
      const [a, b] = [p.x + p.y - s, q.x + q.y - s];
      if (a < 0 === b < 0) return [];
      const t = a / (a - b);
      return [{ x: p.x + (q.x - p.x) * t, y: p.y + (q.y - p.y) * t }];
    });
    if (ends.length === 2) lines.push(ends);
  }
  return lines;
}

/** Written upright under what each measures; where two stand too close, only the first is told. */
function runningMeasures(piece: Piece, view: View, { size, ink, length, below }: NotchLook): DrawItem[] {
  const items: DrawItem[] = [];
  let last = Number.NEGATIVE_INFINITY;
  const place = onPaper(piece, view);
  for (const at of stations(piece)) {
    const { x } = place({ x: at, y: 0 });
    if (x - last < size * 1.1) continue;
    last = x;
    const line = [
      { x, y: view.at.y - size * 0.2 },
      { x, y: below },
    ];
    items.push(
      { kind: 'path', path: pathOfPolyline(line), stroke: ink.faint, width: 0.15 },
      {
        kind: 'text',
        at: { x: x + size * 0.35, y: below - size * 0.3 },
        text: length(at),
        size,
        anchor: 'end',
        angle: 90,
        color: ink.text,
      },
    );
  }
  return items;
}

/** Each side and depth once, at the foot of the drawing. */
function depths(piece: Piece, view: View, { size, ink, notch }: NotchLook): DrawItem[] {
  const told = [...new Set(piece.notches.map(notch))].filter((words) => words !== '');
  if (told.length === 0) return [];
  const middle = view.at.x + (boxOfPoints(piece.outline).w * view.scale) / 2;
  const at = { x: middle, y: size * 0.4 };
  return [{ kind: 'text', at, text: told.join('; '), size, anchor: 'middle', color: ink.text }];
}
