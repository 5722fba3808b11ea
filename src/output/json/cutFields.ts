import type {
  BoardCut,
  BoardsBound,
  CutBoard,
  CutSheet,
  SheetCut,
  SheetPlacement,
} from '../../cutting/result.ts';
import type { TapeRead } from '../../design/schema.ts';
import type { Notch, Piece, PieceEnd, Scribed } from '../../joinery/piece.ts';
import { designPart } from '../../layout/reference.ts';
import { grouped } from '../../list/grouped.ts';
import type { Deg } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import {
  A_LENGTH,
  A_TEXT,
  box,
  boxIn,
  count,
  deg,
  type Fields,
  flag,
  list,
  mm,
  money,
  nullable,
  oneOf,
  optional,
  record,
  ring,
  row,
  text,
  via,
} from './field.ts';

/** Identical pieces of one part of the design share a row; cuts name the row, and so do boards and sheets. */
export interface CutRows {
  readonly pieces: readonly PieceRow[];
  readonly boards: readonly CutBoard[];
  readonly boardsBound: readonly BoardsBound[];
  readonly sheets: readonly CutSheet[];
  readonly sheetsBound: readonly BoardsBound[];
}

type PieceRow = Piece & { readonly quantity: number; readonly followers: readonly string[] };

export function cutRows({ joinery, cutting, layout: { read = [] } }: Plan): CutRows {
  const followers = new Map(read.map((one) => [one.part, one.followers]));
  const rows = [...grouped(joinery.pieces, (piece) => `${designPart(piece.part)}|${piece.label}`).values()];
  const rowOf = new Map(rows.flatMap((alike) => alike.map((piece) => [piece.id, alike[0].id])));
  const named = <T extends { readonly piece: string }>(all: readonly T[]): T[] =>
    all.map((one) => ({ ...one, piece: rowOf.get(one.piece) ?? one.piece }));
  return {
    ...cutting,
    pieces: rows.map((alike) => {
      const [piece] = alike;
      return { ...piece, quantity: alike.length, followers: followers.get(piece.part) ?? [] };
    }),
    boards: cutting.boards.map((board) => ({ ...board, cuts: named(board.cuts) })),
    sheets: cutting.sheets.map((sheet) => ({ ...sheet, placements: named(sheet.placements) })),
  };
}

const setting = record<{ readonly miter: Deg; readonly bevel: Deg }>({
  miter_deg: deg(({ miter }) => miter),
  bevel_deg: deg(({ bevel }) => bevel),
});

const end = record<PieceEnd>({
  cut: oneOf(['square', 'miter', 'butt', 'cope', 'return', 'plunge', 'point', 'sawn'], ({ cut }) => cut),
  miter_deg: deg(({ miter }) => miter),
  bevel_deg: deg(({ bevel }) => bevel),
  long: oneOf(['left', 'right', 'both', 'middle'], ({ long }) => long),
  with: nullable((one) => one.with, A_TEXT, 'part that it meets'),
  second: nullable(({ second }) => second, setting, 'second cut of an end that comes to a point'),
  nested: nullable(({ nested }) => nested, setting, 'settings with sprung molding held at its spring angle'),
});

const corners = ['long-point', 'short-point', 'square', 'shoulder', 'corner', 'outermost'] as const;

const measured = record<Piece['measured']>({
  edge: oneOf(['left', 'right', 'sawn', 'overall'], ({ edge }) => edge),
  from: oneOf(corners, ({ from }) => from),
  to: oneOf(corners, ({ to }) => to),
});

const notch = record<Notch>({
  from_mm: mm(({ from }) => from),
  to_mm: mm(({ to }) => to),
  depth_mm: mm(({ depth }) => depth),
  side: oneOf(['face', 'back', 'groove'], ({ side }) => side),
  miter_deg: deg(({ miter }) => miter),
});

const edgeRead = record<NonNullable<TapeRead['left']>>({
  planned_mm: mm(({ planned }) => planned),
  read_mm: mm(({ read }) => read),
});

const read = record<TapeRead & Pick<PieceRow, 'followers'>>({
  left: optional(({ left }) => left, edgeRead),
  right: optional(({ right }) => right, edgeRead),
  diagonal_mm: optional(({ diagonal }) => diagonal, A_LENGTH),
  slant: oneOf(['start', 'end', 'both'], ({ slant }) => slant, 'the end that takes the angle'),
  followers: list(({ followers }) => followers, A_TEXT, 'parts that are elsewhere for it'),
});

const scribed = record<Scribed>({
  edge: oneOf(['left', 'right'], ({ edge }) => edge),
  most_mm: mm(({ most }) => most),
  at_mm: mm(({ at }) => at, 'from the start end, where most comes off'),
  line_mm: via(({ line }) => line, ring, 'where the wood ends, from the start end'),
});

const piece = record<PieceRow>({
  id: text(({ id }) => id),
  part: text(({ part }) => designPart(part)),
  label: text(({ label }) => label, 'marked on the wood; identical pieces share it'),
  stock: text(({ stock }) => stock),
  length_mm: mm(({ length }) => length, 'what a tape reads between two corners along one edge'),
  measured: via((one) => one.measured, measured),
  edges_mm: via(
    ({ edges }) => edges,
    record<Piece['edges']>({
      left: nullable(({ left }) => left, A_LENGTH),
      right: nullable(({ right }) => right, A_LENGTH),
    }),
  ),
  overall_mm: mm(({ overall }) => overall, 'the wood that it takes'),
  width_mm: mm(({ width }) => width),
  thickness_mm: mm(({ thickness }) => thickness),
  outline_mm: via(
    ({ outline }) => outline,
    ring,
    'start end left, left edge up, show face toward the reader',
  ),
  holes_mm: list(({ holes }) => holes, ring),
  ends: row(2, ({ ends }) => ends, end),
  notches: list(({ notches }) => notches, notch),
  scribed: optional(
    (one) => one.scribed,
    list((edges: readonly Scribed[]) => edges, scribed),
    'long edges that are planed to an edge of the bed that bows',
  ),
  fit: record<PieceRow>({
    in_place: flag(({ fit }) => fit.inPlace),
    allowance_mm: mm(({ fit }) => fit.allowance),
    read: optional(
      ({ fit, followers }) => fit.read && { ...fit.read, followers },
      read,
      'what a tape read in place; the piece is cut to it',
    ),
  }),
  quantity: count(({ quantity }) => quantity),
});

const bound = record<BoardsBound>({
  stock: text(({ stock }) => stock),
  used: count(({ used }) => used),
  lower_bound: count(({ lowerBound }) => lowerBound),
  cost: money(({ cost }) => cost),
  lower_cost: money(({ lowerCost }) => lowerCost),
  proved: flag(({ proved }) => proved),
});

const boardCut = record<BoardCut>({
  piece: text((cut) => cut.piece),
  from_mm: mm(({ from }) => from),
  to_mm: mm(({ to }) => to),
  turned: flag(({ flipped }) => flipped),
  left_deg: deg(({ left }) => left),
  right_deg: deg(({ right }) => right),
});

const board = record<CutBoard>({
  stock: text(({ stock }) => stock),
  length_mm: mm(({ length }) => length),
  owned: nullable(({ owned }) => owned, A_TEXT),
  cuts: list(({ cuts }) => cuts, boardCut),
  offcut_mm: mm(({ offcut }) => offcut),
  cost: money(({ cost }) => cost),
});

const placement = record<SheetPlacement>({
  piece: text((placed) => placed.piece),
  ...box,
  turned: flag(({ turned }) => turned),
  /** What it is sawn out of with others that lie in each other. */
  blank: optional(({ from }) => from, record(box)),
});

const sheetCut = record<SheetCut>({
  number: count(({ number }) => number),
  kind: oneOf(['rip', 'cross'], ({ kind }) => kind),
  of: record(boxIn(({ of }) => of)),
  fence_mm: mm(({ fence }) => fence),
});

const sheet = record<CutSheet>({
  stock: text(({ stock }) => stock),
  size_mm: row(2, ({ length, width }) => [length, width], A_LENGTH),
  owned: nullable(({ owned }) => owned, A_TEXT),
  placements: list(({ placements }) => placements, placement),
  sequence: list(({ sequence }) => sequence, sheetCut),
  cost: money(({ cost }) => cost),
});

/** Pieces, and boards and sheets that they are cut from. */
export const CUT_FIELDS: Fields<CutRows> = {
  pieces: list(({ pieces }) => pieces, piece),
  boards: list(({ boards }) => boards, board),
  boards_bound: list(({ boardsBound }) => boardsBound, bound),
  sheets: list(({ sheets }) => sheets, sheet),
  sheets_bound: list(({ sheetsBound }) => sheetsBound, bound),
};
