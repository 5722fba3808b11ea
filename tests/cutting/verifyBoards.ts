import { expect } from 'vitest';
import type { CuttingInput } from '../../src/cutting/cutting.ts';
import type { CutBoard, Cutting } from '../../src/cutting/result.ts';
import { intersect, subtract } from '../../src/geometry/clip.ts';
import { areaOf, regionOfRing } from '../../src/geometry/region.ts';
import { distanceToSegment } from '../../src/geometry/segment.ts';
import type { Piece } from '../../src/joinery/piece.ts';
import { radians } from '../../src/measure/units.ts';

/**
 * Checks a board plan from the pieces' own outlines laid on the board, with none of the planner's
 * reckoning of ends and gaps.
 */

interface P {
  readonly x: number;
  readonly y: number;
}

function outlineOnBoard(piece: Piece, from: number, flipped: boolean): P[] {
  return piece.outline.map((p) =>
    flipped ? { x: from + piece.overall - p.x, y: piece.width - p.y } : { x: from + p.x, y: p.y },
  );
}

/** The straight cut along an end: a point on it and the unit normal that points away from the piece. */
function cutLine(miter: number, side: 'left' | 'right', from: number, to: number, width: number) {
  const m = radians(miter);
  const sign = side === 'right' ? 1 : -1;
  // The long point lies on the upper edge for a positive miter.
  const tip = { x: side === 'right' ? to : from, y: miter >= 0 ? width : 0 };
  return { tip, normal: { x: sign * Math.cos(m), y: -Math.sin(m) } };
}

const ahead = (line: ReturnType<typeof cutLine>, p: P): number =>
  (p.x - line.tip.x) * line.normal.x + (p.y - line.tip.y) * line.normal.y;

const NEAR = 1e-4;

/** Least distance between two convex outlines; 0 where they overlap. */
function apart(a: readonly P[], b: readonly P[]): number {
  if (areaOf(intersect(regionOfRing(a), regionOfRing(b))) > 1e-3) return 0;
  const from = (one: readonly P[], other: readonly P[]): number =>
    Math.min(
      ...one.flatMap((p) => other.map((q, i) => distanceToSegment(p, q, other[(i + 1) % other.length] ?? q))),
    );
  return Math.min(from(a, b), from(b, a));
}

export function verifyBoards(input: CuttingInput, plan: Cutting): void {
  const pieces = new Map(input.pieces.map((p) => [p.id, p]));
  const cut = plan.boards.flatMap((b) => b.cuts.map((c) => c.piece)).sort();
  const refused = new Set(plan.checks.filter((c) => c.code === 'piece.too-long').map((c) => c.figures.piece));
  const due = input.pieces.filter((p) => p.form !== 'sheet' && !refused.has(p.id)).map((p) => p.id);
  expect(cut).toEqual(due.sort());
  const ownedUsed = new Map<string, number>();
  for (const board of plan.boards) {
    if (board.owned !== null) ownedUsed.set(board.owned, (ownedUsed.get(board.owned) ?? 0) + 1);
    verifyBoard(input, board, pieces);
  }
  for (const [id, n] of ownedUsed) {
    expect(n).toBeLessThanOrEqual(input.owned.find((o) => o.id === id)?.count ?? 0);
  }
}

function verifyBoard(input: CuttingInput, board: CutBoard, pieces: ReadonlyMap<string, Piece>): void {
  const stock = input.stocks.get(board.stock);
  const { boardKerf, endTrim, keepOffcut } = input.shop;
  const owned = input.owned.find((o) => o.id === board.owned);
  const trim = owned ? 0 : endTrim;
  const defects = owned?.defects ?? [];
  const laid = board.cuts.map((c) => {
    const piece = pieces.get(c.piece);
    if (!piece) throw new Error(`no piece ${c.piece}`);
    expect(c.to - c.from).toBeCloseTo(piece.overall, 9);
    if (stock?.form === 'shaped') expect(c.flipped).toBe(false);
    return { c, piece, ring: outlineOnBoard(piece, c.from, c.flipped) };
  });
  for (const { c, ring } of laid) {
    expect(c.from).toBeGreaterThanOrEqual(trim - NEAR);
    expect(c.to).toBeLessThanOrEqual(board.length - trim + NEAR);
    for (const d of defects) {
      const clear =
        Math.max(...ring.map((p) => p.x)) <= Math.min(d.from, d.to) + NEAR ||
        Math.min(...ring.map((p) => p.x)) >= Math.max(d.from, d.to) - NEAR;
      expect(clear, `${c.piece} on a defect`).toBe(true);
    }
  }
  // Pieces lie a kerf apart, so that a straight blade passes between them, and where an end is one cut that
  // very cut clears the neighbor. An end of two cuts is finished on the freed piece.
  laid.forEach((a, i) => {
    const width = a.piece.width;
    const single = (l: typeof a, side: 'left' | 'right') =>
      l.piece.ends[(side === 'left') === l.c.flipped ? 1 : 0].second === null;
    for (const b of laid.slice(i + 1)) {
      expect(apart(a.ring, b.ring)).toBeGreaterThanOrEqual(boardKerf - NEAR);
      const right = cutLine(a.c.right, 'right', a.c.from, a.c.to, width);
      const left = cutLine(b.c.left, 'left', b.c.from, b.c.to, width);
      if (single(a, 'right'))
        for (const p of b.ring) expect(ahead(right, p)).toBeGreaterThanOrEqual(boardKerf - NEAR);
      if (single(b, 'left'))
        for (const p of a.ring) expect(ahead(left, p)).toBeGreaterThanOrEqual(boardKerf - NEAR);
    }
    // The lines are the piece's own ends.
    const own = cutLine(a.c.right, 'right', a.c.from, a.c.to, width);
    if (single(a, 'right')) expect(Math.max(...a.ring.map((p) => ahead(own, p)))).toBeCloseTo(0, 4);
    const start = cutLine(a.c.left, 'left', a.c.from, a.c.to, width);
    if (single(a, 'left')) expect(Math.max(...a.ring.map((p) => ahead(start, p)))).toBeCloseTo(0, 4);
  });
  // Pieces, offcut and waste are the board, by area.
  const width = laid[0]?.piece.width ?? 1;
  const end = board.length - trim;
  const rest = [
    { x: end - board.offcut, y: 0 },
    { x: end, y: 0 },
    { x: end, y: width },
    { x: end - board.offcut, y: width },
  ];
  let left = regionOfRing([
    { x: 0, y: 0 },
    { x: board.length, y: 0 },
    { x: board.length, y: width },
    { x: 0, y: width },
  ]);
  for (const { ring } of laid) left = subtract(left, regionOfRing(ring));
  if (board.offcut > 0) left = subtract(left, regionOfRing(rest));
  expect(areaOf(left) / width).toBeCloseTo(board.waste, 2);
  expect(board.offcut === 0 || board.offcut >= keepOffcut).toBe(true);
  const tail = laid.at(-1);
  if (tail && board.offcut > 0 && tail.piece.ends[tail.c.flipped ? 0 : 1].second === null) {
    const line = cutLine(tail.c.right, 'right', tail.c.from, tail.c.to, width);
    for (const p of rest) expect(ahead(line, p)).toBeGreaterThanOrEqual(boardKerf - NEAR);
  }
}
