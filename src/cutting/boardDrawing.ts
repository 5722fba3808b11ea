import type { DrawItem, Drawing, TextItem } from '../drawing/drawing.ts';
import { layer, line, polyline, rectangle, text } from '../drawing/items.ts';
import { INK, READ, TEXT, WEIGHT } from '../drawing/style.ts';
import { fittedSize, textWidth } from '../drawing/text.ts';
import { CAP_HEIGHT } from '../drawing/typeface.ts';
import type { Point } from '../geometry/shape.ts';
import { SAME_ANGLE, SAME_LENGTH, SAME_PLACE } from '../geometry/tolerance.ts';
import type { Piece } from '../joinery/piece.ts';
import { pick } from '../list/at.ts';
import { type Deg, type Mm, radians } from '../measure/units.ts';
import { lyingOutline } from './boards/ends.ts';
import { type CuttingText, placeOfPiece } from './drawingText.ts';
import { hatched } from './hatch.ts';
import { parted } from './labelRow.ts';
import type { BoardCut, CutBoard } from './result.ts';

export interface BoardDrawingInput {
  readonly board: CutBoard;
  /** Pieces by id. */
  readonly pieces: ReadonlyMap<string, Piece>;
  /** Width of the stock as it lies. */
  readonly width: Mm;
  /** End trim, defects: what is not used, from the left end. */
  readonly unused: readonly { readonly from: Mm; readonly to: Mm }[];
  readonly text: CuttingText;
  /** Width of the drawing on paper, and the length of board that fills it. */
  readonly paper: Mm;
  readonly longest: Mm;
}

/** Above the board: saw angles. Below: lengths, and a second row where labels have no room in the board. */
const ABOVE: Mm = 6;
const BELOW: Mm = 6.6;
const SECOND: Mm = TEXT.figure + 1.2;
/** What figures for the saw are set in: the largest that leaves each its room. */
const SIZES = [TEXT.figure, TEXT.small, TEXT.note] as const satisfies Mm[];
/** A cut line stands out of the board by this much. */
const OVER: Mm = 1.2;

interface View {
  readonly k: number;
  readonly high: Mm;
  /** Height of the board's lower edge over the rows below it. */
  readonly foot: Mm;
  readonly input: BoardDrawingInput;
}

/** A board to scale with its pieces as they lie, the cuts between them, and what is left over. */
export function boardDrawing(input: BoardDrawingInput): Drawing {
  const k = input.paper / input.longest;
  const { board } = input;
  const length = board.length * k;
  const flat: View = { k, high: input.width * k, foot: BELOW, input };
  const labelled = board.cuts.flatMap((cut) => labelSize(flat, cut) ?? []);
  const view = labelled.every((size) => size >= READ) ? flat : { ...flat, foot: BELOW + SECOND };
  const rest = offcut(view);
  const drawn = board.cuts.map((cut) => drawnPiece(view, cut));
  const { row, second } = rowsBelow(drawn, rest, length);
  const ofRest = (label: TextItem) => rest.below.some((r) => r.text === label.text);
  const items: DrawItem[] = [
    layer('board', [
      rectangle({ x: 0, y: view.foot, w: length, h: view.high }, { fill: INK.tint }),
      ...rest.items,
      ...row.filter(ofRest),
      ...input.unused.flatMap(({ from, to }) => unusable(view, from, to)),
    ]),
    layer('pieces', [...drawn.flatMap((d) => d.items), ...row.filter((label) => !ofRest(label)), ...second]),
    layer('cuts', cutItems(view)),
    rectangle({ x: 0, y: view.foot, w: length, h: view.high }, { stroke: INK.line, width: WEIGHT.middle }),
  ];
  return { width: input.paper, height: view.foot + view.high + ABOVE, title: board.stock, items };
}

const pieceOf = (view: View, cut: BoardCut): Piece | undefined => view.input.pieces.get(cut.piece);

/** The piece's outline on paper. */
function outlineOf(view: View, cut: BoardCut, piece: Piece): Point[] {
  return lyingOutline(piece).map((p) => ({
    x: (cut.from + (cut.flipped ? piece.overall - p.x : p.x)) * view.k,
    y: view.foot + (cut.flipped ? view.input.width - p.y : p.y) * view.k,
  }));
}

/** Drawn in the board, and what is written in the rows below it. */
interface Drawn {
  readonly items: readonly DrawItem[];
  readonly below: readonly TextItem[];
  readonly second: readonly (TextItem & { readonly span: Mm })[];
}

const NOTHING: Drawn = { items: [], below: [], second: [] };

/** Labels of a row side by side; where they have not all room, those that keep to their own pieces. */
function rowIn(labels: readonly (TextItem & { readonly span: Mm })[], length: Mm): TextItem[] {
  const sized = (size: Mm) => labels.map((label) => ({ ...label, size }));
  const size = SIZES.find((one) => takesUp(sized(one)) <= length);
  const kept =
    size === undefined
      ? sized(TEXT.note).filter((label) => textWidth(label.text, label) <= label.span - 1)
      : sized(size);
  return parted(
    kept.map(({ span: _, ...label }) => label),
    length,
  );
}

const takesUp = (labels: readonly TextItem[]): Mm =>
  labels.reduce((sum, label) => sum + textWidth(label.text, label) + 1, 0);

/**
 * What is written below a board: labels and lengths of pieces whose labels have no room in it one below the other, or,
 * where so many labels have no room in a row, every other one in the second row, without the lengths, which the cut
 * list tells.
 */
function rowsBelow(
  drawn: readonly Drawn[],
  rest: Drawn,
  length: Mm,
): { row: TextItem[]; second: TextItem[] } {
  const below = drawn.flatMap((d) => d.below);
  const seconds = drawn.flatMap((d) => d.second);
  const all = [...below, ...rest.below];
  if (seconds.length === 0 || takesUp(all) <= length) {
    return { row: parted(all, length), second: rowIn(seconds, length) };
  }
  const lower = below.flatMap((label, i) =>
    i % 2 === 0 ? [] : [{ ...label, at: { x: label.at.x, y: label.at.y - SECOND } }],
  );
  const upper = below.filter((_, i) => i % 2 === 0);
  return { row: parted([...upper, ...rest.below], length), second: parted(lower, length) };
}

/** The size of a piece's label in the board; null where there is no such piece. */
function labelSize(view: View, cut: BoardCut): Mm | null {
  const piece = pieceOf(view, cut);
  if (!piece) return null;
  const room = innerRoom(view, cut, piece);
  return Math.min(
    fittedSize(piece.label, { size: TEXT.figure, bold: true }, room.high - room.low - 0.8),
    (view.high * 0.68) / CAP_HEIGHT,
  );
}

function drawnPiece(view: View, cut: BoardCut): Drawn {
  const piece = pieceOf(view, cut);
  const size = labelSize(view, cut);
  if (!piece || size === null) return NOTHING;
  const ring = outlineOf(view, cut, piece);
  const items: DrawItem[] = [polyline(ring, true, { fill: INK.paper, stroke: INK.line, width: WEIGHT.fine })];
  const room = innerRoom(view, cut, piece);
  const middle = (room.low + room.high) / 2;
  const inside = size >= READ;
  const place = placeOfPiece(piece.label);
  if (inside) {
    items.push(
      text({ x: middle, y: view.foot + view.high / 2 - (size * CAP_HEIGHT) / 2 }, piece.label, {
        size,
        bold: true,
        anchor: 'middle',
        place,
      }),
    );
    if (cut.flipped) {
      items.push(turnedMark(middle + textWidth(piece.label, { size, bold: true }) / 2 + 0.9, view));
    }
  }
  const length = view.input.text.length(piece.shown.length);
  const span = (cut.to - cut.from) * view.k;
  const x = ((cut.from + cut.to) / 2) * view.k;
  const fitted = fittedSize(length, { size: TEXT.figure }, span - 1);
  const told = { anchor: 'middle', color: INK.soft } as const;
  if (inside) {
    const at = { x, y: view.foot - 1.6 - fitted };
    return { ...NOTHING, items, below: fitted < READ ? [] : [text(at, length, { ...told, size: fitted })] };
  }
  // A piece too short or too narrow for its label has it below, where the others have their length, and that below it.
  const at = { x, y: view.foot - 1.6 - TEXT.small };
  const below = text(at, piece.label, { size: TEXT.small, bold: true, anchor: 'middle', place });
  const second = text({ x, y: at.y - SECOND }, length, { ...told, size: TEXT.figure });
  return { items, below: [below], second: [{ ...second, span }] };
}

/** Where text stays clear of slanted ends, at mid height. */
function innerRoom(view: View, cut: BoardCut, piece: Piece): { low: Mm; high: Mm } {
  const half = (m: Deg) => (Math.tan(radians(Math.abs(m))) * piece.width) / 2;
  return { low: (cut.from + half(cut.left)) * view.k, high: (cut.to - half(cut.right)) * view.k };
}

/** A small triangle that points at the edge which is the upper one of a piece that is turned end for end. */
function turnedMark(x: Mm, view: View): DrawItem {
  const y = view.foot + view.high / 2;
  const ring = [
    { x, y: y + 0.7 },
    { x: x + 1.3, y: y + 0.7 },
    { x: x + 0.65, y: y - 0.7 },
  ];
  return polyline(ring, true, { fill: INK.soft });
}

/** A saw cut across the board, on paper. */
interface Saw {
  readonly foot: Point;
  readonly top: Point;
  readonly miter: Deg;
}

type Side = 'left' | 'right';

/** The cuts that make one end: one across the board, or two that meet in a point. */
function sawsAt(view: View, cut: BoardCut, side: Side): Saw[] {
  const piece = pieceOf(view, cut);
  const end = piece?.ends[(side === 'left') === cut.flipped ? 1 : 0];
  if (!piece || !end?.second) {
    return side === 'left'
      ? [sawLine(view, cut.from, cut.left, side)]
      : [sawLine(view, cut.to, cut.right, side)];
  }
  const ring = outlineOf(view, cut, piece);
  const out = side === 'left' ? -1 : 1;
  const farthest = (points: readonly Point[]): Point =>
    points.reduce((best, p) => (out * p.x > out * best.x ? p : best));
  const near = (y: Mm) => ring.filter((p) => Math.abs(p.y - y) < SAME_PLACE);
  const tip = farthest(ring);
  // As it lies, a positive miter falls back at the lower edge.
  const lying = [end.miter, end.second.miter].map((m) => (cut.flipped ? -m : m));
  return [view.foot, view.foot + view.high].flatMap((y, upper): Saw[] => {
    const miter = lying.find((m) => (upper === 1 ? m < 0 : m > 0));
    const edge = near(y);
    if (miter === undefined || edge.length === 0) return [];
    return upper === 1
      ? [{ foot: tip, top: farthest(edge), miter }]
      : [{ foot: farthest(edge), top: tip, miter }];
  });
}

function sawLine(view: View, tip: Mm, miter: Deg, side: Side): Saw {
  // Positive: the long point is above; the lower end of the cut lies back towards the piece.
  const lean = Math.tan(radians(Math.abs(miter))) * view.input.width * (side === 'right' ? -1 : 1);
  const top = (tip + (miter < 0 ? lean : 0)) * view.k;
  const foot = (tip + (miter > 0 ? lean : 0)) * view.k;
  const slope = (top - foot) / view.high;
  return {
    foot: { x: foot - slope * OVER, y: view.foot - OVER },
    top: { x: top + slope * OVER, y: view.foot + view.high + OVER },
    miter,
  };
}

/** One cut makes both ends where they are parallel and a kerf apart. */
function sharesCut(view: View, before: BoardCut, cut: BoardCut): boolean {
  const parallel = Math.abs(before.right + cut.left) <= SAME_ANGLE;
  const pointed = (c: BoardCut) => pieceOf(view, c)?.ends.some((e) => e.second !== null) ?? false;
  return parallel && cut.from - before.to < view.input.width && !pointed(before) && !pointed(cut);
}

/** The cuts from left to right; what the board's own end or a shared cut gives is not sawn again. */
function sawLines(view: View): Saw[] {
  const { cuts, length } = view.input.board;
  return cuts.flatMap((cut, i) => {
    const before = i > 0 ? pick(cuts, i - 1) : null;
    const sawn = before === null ? cut.from > SAME_LENGTH || cut.left !== 0 : !sharesCut(view, before, cut);
    const left = sawn ? sawsAt(view, cut, 'left') : [];
    const ends = cut.to < length - SAME_LENGTH || cut.right !== 0;
    return ends ? [...left, ...sawsAt(view, cut, 'right')] : left;
  });
}

function cutItems(view: View): DrawItem[] {
  const saws = sawLines(view);
  const items: DrawItem[] = saws.map((s) =>
    line(s.foot, s.top, { stroke: INK.accent, width: WEIGHT.middle }),
  );
  const slanted = saws.filter((s) => s.miter !== 0).sort((a, b) => a.top.x - b.top.x);
  return [...items, ...anglesOver(view, slanted)];
}

/** Angles stand over their cuts, moved to the right where two would meet or one would leave the board. */
function anglesOver(view: View, saws: readonly Saw[]): DrawItem[] {
  const placed = (size: Mm) => {
    let end: Mm = -0.5;
    return saws.map(({ top, miter }) => {
      const words = view.input.text.angle(Math.abs(miter));
      const wide = textWidth(words, { size });
      const x = Math.max(top.x, end + wide / 2 + 0.5);
      end = x + wide / 2;
      return { words, x, end, moved: x - top.x, wide };
    });
  };
  const right = view.input.paper;
  const size =
    SIZES.find((one) => placed(one).every(({ moved, wide, end }) => moved <= wide && end <= right)) ??
    TEXT.note;
  const y = view.foot + view.high + OVER + 0.6;
  return placed(size).map(({ words, x }) =>
    text({ x, y }, words, { size, anchor: 'middle', color: INK.accent }),
  );
}

function offcut(view: View): Drawn {
  const { board, text: words, unused } = view.input;
  if (board.offcut <= 0) return NOTHING;
  // Trim at the right end lies beyond the offcut.
  const trim = unused.find((u) => u.to >= board.length - SAME_LENGTH);
  const end = trim ? trim.from : board.length;
  const box = { x: (end - board.offcut) * view.k, y: view.foot, w: board.offcut * view.k, h: view.high };
  const label = words.offcut(board.offcut);
  const size = fittedSize(label, { size: TEXT.small }, box.w - 1);
  const items = hatched(box, 1.6);
  if (size < READ) return { ...NOTHING, items };
  const at = { x: box.x + box.w / 2, y: view.foot - 1.4 - TEXT.small };
  return { ...NOTHING, items, below: [text(at, label, { size, anchor: 'middle', color: INK.soft })] };
}

function unusable(view: View, from: Mm, to: Mm): DrawItem[] {
  const box = { x: from * view.k, y: view.foot, w: (to - from) * view.k, h: view.high };
  return [
    rectangle(box, { fill: INK.faint }),
    line(
      { x: box.x, y: box.y },
      { x: box.x + box.w, y: box.y + box.h },
      { stroke: INK.soft, width: WEIGHT.thin },
    ),
    line(
      { x: box.x, y: box.y + box.h },
      { x: box.x + box.w, y: box.y },
      { stroke: INK.soft, width: WEIGHT.thin },
    ),
  ];
}
