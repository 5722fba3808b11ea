import { signedArea } from '../../geometry/ring.ts';
import type { Piece } from '../../joinery/piece.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { BoardCut, CutBoard } from '../result.ts';
import { gapBetween, type Lying, lyingOutline } from './ends.ts';
import { type Load, shapeCounts } from './problem.ts';
import type { Source, StockProblem } from './stock.ts';

/** Length of plain board with the same area: what a piece with slanted ends really takes of the wood. */
export const meanLength = (piece: Piece): Mm => Math.abs(signedArea(lyingOutline(piece))) / piece.width;

/** Gives out boards and pieces to the loads: owned first, then bought, longest and fullest first. */
export function layBoards(s: StockProblem, loads: readonly Load[], stockId: string, keep: Mm): CutBoard[] {
  const queues = s.pieces.map((list) => [...list]);
  const byId = new Map(s.pieces.flat().map((p) => [p.id, p]));
  return assign(s, loads).map(({ source, loads: inside }) => {
    const board = pick(s.sources, source);
    const cuts: BoardCut[] = [];
    let end: { at: Mm; kerf: Mm } | null = null;
    inside.forEach((load, t) => {
      const stretch = pick(board.stretches, t);
      end = load === null ? { at: stretch.from, kerf: 0 } : layRow(s, queues, load, stretch.from, cuts);
    });
    return finished(board, cuts, end, s, byId, stockId, keep);
  });
}

function finished(
  board: Source,
  cuts: readonly BoardCut[],
  end: { at: Mm; kerf: Mm } | null,
  s: StockProblem,
  byId: ReadonlyMap<string, Piece>,
  stock: string,
  keep: Mm,
): CutBoard {
  const last = board.stretches.at(-1);
  const rest = last && end ? Math.max(0, last.to - end.at - end.kerf) : 0;
  const offcut = rest >= keep ? rest : 0;
  const wood = cuts.reduce((sum, c) => {
    const piece = byId.get(c.piece);
    return sum + (piece ? meanLength(piece) : 0);
  }, 0);
  const bought = s.sources.indexOf(board);
  return {
    stock,
    length: board.length,
    owned: board.owned,
    cuts,
    offcut,
    waste: board.length - offcut - wood,
    cost: board.owned === null ? at(s.weighed.cost, bought) : 0,
  };
}

/** Lays one stretch from its left end and tells where the last piece ends. */
function layRow(
  s: StockProblem,
  queues: Piece[][],
  load: Load,
  from: Mm,
  cuts: BoardCut[],
): { at: Mm; kerf: Mm } {
  const waiting: number[][] = s.shapes.map(() => []);
  load.counts.forEach((n, i) => {
    const list = pick(waiting, pick(s.problem.items, i).shape);
    for (let k = 0; k < n; k++) list.push(i);
  });
  let x = from;
  let before: Lying | null = null;
  for (const { shape, lying } of s.problem.joints.row(shapeCounts(s.problem, load.counts)).order) {
    const item = pick(waiting, shape).shift();
    const piece = item === undefined ? undefined : pick(queues, item).shift();
    if (!piece) throw new RangeError('more pieces laid than there are');
    const way = pick(pick(s.shapes, shape), lying);
    if (before) x += gapBetween(before.right, way.left);
    cuts.push({
      piece: piece.id,
      from: x,
      to: x + piece.overall,
      flipped: way.flipped,
      left: way.left.miter,
      right: way.right.miter,
    });
    x += piece.overall;
    before = way;
  }
  return { at: x, kerf: before?.right.kerf ?? 0 };
}

interface Assigned {
  readonly source: number;
  /** One entry a stretch; null: nothing is cut from it. */
  readonly loads: (Load | null)[];
}

/** Which board each load is cut from. Loads on stretches of one owned board come to lie on the same board. */
function assign(s: StockProblem, loads: readonly Load[]): Assigned[] {
  const filled = (l: Load): Mm =>
    s.problem.items.reduce((sum, item, i) => sum + item.size * at(l.counts, i), 0);
  const order = [...loads].sort(
    (a, b) =>
      pick(s.problem.bins, b.bin).capacity - pick(s.problem.bins, a.bin).capacity ||
      filled(b) - filled(a) ||
      compare(b.counts, a.counts),
  );
  const boards: (Assigned & { readonly copy: number })[] = [];
  for (const load of order) {
    const place = boards.find((b) =>
      pick(s.origins, load.bin).some((o) => o.source === b.source && b.loads[o.stretch] === null),
    );
    const origin =
      place &&
      pick(s.origins, load.bin).find((o) => o.source === place.source && place.loads[o.stretch] === null);
    if (place && origin) {
      place.loads[origin.stretch] = load;
      continue;
    }
    const used = (source: number) => boards.filter((b) => b.source === source).length;
    const fresh = pick(s.origins, load.bin).find((o) => used(o.source) < pick(s.sources, o.source).count);
    if (!fresh) throw new RangeError('more boards used than there are');
    const empty = pick(s.sources, fresh.source).stretches.map((_, t) => (t === fresh.stretch ? load : null));
    boards.push({ source: fresh.source, loads: empty, copy: used(fresh.source) });
  }
  const rank = (b: Assigned) => (pick(s.sources, b.source).owned === null ? 1 : 0);
  return boards
    .map((b, i) => ({ b, i }))
    .sort((p, q) => rank(p.b) - rank(q.b) || p.i - q.i)
    .map(({ b }) => b);
}

function compare(a: readonly number[], b: readonly number[]): number {
  for (let i = 0; i < a.length; i++) {
    const d = at(a, i) - at(b, i);
    if (d !== 0) return d;
  }
  return 0;
}
