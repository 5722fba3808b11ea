import type { Cutting } from '../../cutting/result.ts';
import type { TapeRead } from '../../design/schema.ts';
import type { Piece, PieceEnd } from '../../joinery/piece.ts';
import type { Layout } from '../../layout/laid.ts';
import { designPart } from '../../layout/reference.ts';
import { grouped } from '../../list/grouped.ts';
import { boxFields, cents, deg, mm, orNull, pair } from './figures.ts';

/** Pieces, and boards and sheets that they are cut from. Identical pieces of one part of the design share a row; cuts name it. */
export function cutFields(all: readonly Piece[], cutting: Cutting, read: Layout['read'] = []) {
  const followers = new Map(read.map((one) => [one.part, one.followers]));
  const rows = [...grouped(all, (piece) => `${designPart(piece.part)}|${piece.label}`).values()];
  const rowOfPiece = new Map(rows.flatMap((alike) => alike.map((piece) => [piece.id, alike[0].id])));
  const rowOf = (id: string) => rowOfPiece.get(id) ?? id;
  return {
    pieces: rows.map((alike) => ({ ...pieceFields(alike[0], followers), quantity: alike.length })),
    boards: cutting.boards.map((board) => boardFields(board, rowOf)),
    boards_bound: cutting.boardsBound.map(boundFields),
    sheets: cutting.sheets.map((sheet) => sheetFields(sheet, rowOf)),
    sheets_bound: cutting.sheetsBound.map(boundFields),
  };
}

const pieceFields = (piece: Piece, followers: ReadonlyMap<string, readonly string[]>) => ({
  id: piece.id,
  part: designPart(piece.part),
  label: piece.label,
  stock: piece.stock,
  length_mm: mm(piece.length),
  measured: piece.measured,
  edges_mm: { left: orNull(piece.edges.left), right: orNull(piece.edges.right) },
  overall_mm: mm(piece.overall),
  width_mm: mm(piece.width),
  thickness_mm: mm(piece.thickness),
  outline_mm: piece.outline.map(pair),
  holes_mm: piece.holes.map((ring) => ring.map(pair)),
  ends: piece.ends.map(endFields),
  notches: piece.notches.map((n) => ({
    from_mm: mm(n.from),
    to_mm: mm(n.to),
    depth_mm: mm(n.depth),
    side: n.side,
    miter_deg: deg(n.miter),
  })),
  ...(piece.scribed && {
    scribed: piece.scribed.map(({ edge, most, at, line }) => ({
      ...{ edge, most_mm: mm(most), at_mm: mm(at), line_mm: line.map(pair) },
    })),
  }),
  fit: {
    in_place: piece.fit.inPlace,
    allowance_mm: mm(piece.fit.allowance),
    ...(piece.fit.read && { read: readFields(piece.fit.read, followers.get(piece.part)) }),
  },
});

function readFields({ left, right, diagonal, slant }: TapeRead, followers: readonly string[] | undefined) {
  const edge = (one: TapeRead['left']) => one && { planned_mm: mm(one.planned), read_mm: mm(one.read) };
  return {
    ...(left && { left: edge(left) }),
    ...(right && { right: edge(right) }),
    ...(diagonal !== undefined && { diagonal_mm: mm(diagonal) }),
    ...{ slant, followers: followers ? [...followers] : [] },
  };
}

const boardFields = (b: Cutting['boards'][number], rowOf: (id: string) => string) => ({
  stock: b.stock,
  length_mm: mm(b.length),
  owned: b.owned,
  cuts: b.cuts.map((c) => ({
    piece: rowOf(c.piece),
    from_mm: mm(c.from),
    to_mm: mm(c.to),
    turned: c.flipped,
    left_deg: deg(c.left),
    right_deg: deg(c.right),
  })),
  offcut_mm: mm(b.offcut),
  cost: cents(b.cost),
});

const sheetFields = (s: Cutting['sheets'][number], rowOf: (id: string) => string) => ({
  stock: s.stock,
  size_mm: [mm(s.length), mm(s.width)] as const,
  owned: s.owned,
  placements: s.placements.map((p) => ({
    piece: rowOf(p.piece),
    ...boxFields(p),
    turned: p.turned,
    ...(p.from && { blank: boxFields(p.from) }),
  })),
  sequence: s.sequence.map((c) => ({
    number: c.number,
    kind: c.kind,
    of: boxFields(c.of),
    fence_mm: mm(c.fence),
  })),
  cost: cents(s.cost),
});

function endFields(end: PieceEnd) {
  return {
    cut: end.cut,
    miter_deg: deg(end.miter),
    bevel_deg: deg(end.bevel),
    long: end.long,
    with: end.with,
    second: end.second && { miter_deg: deg(end.second.miter), bevel_deg: deg(end.second.bevel) },
    nested: end.nested && { miter_deg: deg(end.nested.miter), bevel_deg: deg(end.nested.bevel) },
  };
}

function boundFields(b: Cutting['boardsBound'][number]) {
  return {
    stock: b.stock,
    used: b.used,
    lower_bound: b.lowerBound,
    cost: cents(b.cost),
    lower_cost: cents(b.lowerCost),
    proved: b.proved,
  };
}
