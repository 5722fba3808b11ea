import { meanLength } from '../cutting/boards/lay.ts';
import { stretches } from '../cutting/boards/stretch.ts';
import type { BoardCut, BoardsBound, CutBoard, CutSheet, Cutting } from '../cutting/result.ts';
import { notProved } from '../cutting/weigh.ts';
import { factsOf } from '../design/job/record.ts';
import type { Fact, FactOf } from '../design/job/schema.ts';
import type { Owned, Shop } from '../design/schema.ts';
import { SAME_PLACE } from '../geometry/tolerance.ts';
import type { Piece } from '../joinery/piece.ts';
import { under } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { boardsOf, type JobBoard, leftOf } from './boards.ts';
import { boardIds } from './ids.ts';
import { type Known, knownAgain, shelved } from './known.ts';
import { begunSheet, isLaidSo, trimmed, withoutRests } from './sheets.ts';

export interface RestInput {
  readonly stock: Stock;
  /** Of that stock. */
  readonly pieces: readonly Piece[];
  readonly owned: readonly Owned[];
  readonly shop: Shop;
  /** What holds of the job, of any stock, the earlier said first. */
  readonly facts: readonly Fact[];
  /** Cuts some pieces of what can be bought and of some wood on hand, which costs nothing. */
  readonly solve: (pieces: readonly Piece[], owned: readonly Owned[], round: number) => Cutting;
}

/** Facts after which wood is not as the plan thought it to be. */
const UPSETS: ReadonlySet<Fact['is']> = new Set(['spoiled', 'bad', 'size']);

/** A plan of one stock with what is done. */
export interface Rest {
  readonly cutting: Cutting;
  /** What was said by then the plan is made of; what was said later is as it has it. */
  readonly basis: number;
}

/**
 * How one stock is cut with what is done: cut pieces lie where they were cut, and the rest is planned from boards and
 * offcuts that are really left, for the least money still to be spent.
 *
 * While pieces are cut as planned the plan stays the very same, board by board. Something that upsets it (a miscut, a
 * bad stretch, a board of another length, a piece cut elsewhere, another design) makes a new one of all that is known by
 * then, and each piece that is cut tells by which plan that was. So the plan follows from design and facts alone, and is
 * the same on every device.
 */
export function cutRest(input: RestInput): Rest {
  const facts = input.facts.filter((fact) => concerns(fact, input));
  const last = facts.reduce((latest, { at }) => Math.max(latest, at), 0);
  const upset = facts.reduce((latest, fact) => Math.max(latest, basisOf(fact)), 0);
  const at = (basis: number, round: number): Rest | null => {
    const known = facts.flatMap((fact) => (fact.at <= basis ? [fact] : asWhole(fact, basis)));
    const base = planned(input, known, round);
    const ids = boardIds(base, known);
    const later = facts.filter((fact) => fact.at > basis);
    return isAsPlanned(ids, facts, later, input) ? { cutting: begun(base, ids, facts), basis } : null;
  };
  const rest = at(Math.min(upset, last), 0) ?? at(last, 1);
  if (!rest) throw new Error('a plan of all that is known is as planned');
  return rest;
}

/** A sheet that was there already, of which how it is laid out was said later. */
function asWhole(fact: Fact, basis: number): Fact[] {
  if (fact.is !== 'board' || (fact.since ?? fact.at) > basis) return [];
  const { lay: _, ...whole } = fact;
  return [whole];
}

const basisOf = (fact: Fact): number => (UPSETS.has(fact.is) ? fact.at : fact.is === 'cut' ? fact.by : 0);

function concerns(fact: Fact, { stock, facts }: RestInput): boolean {
  if (fact.is === 'done' || fact.is === 'sawn' || fact.is === 'bought') return false;
  if (fact.is === 'size' || fact.is === 'bad')
    return factsOf(facts, 'board').some(({ id, stock: of }) => id === fact.board && of === stock.id);
  return fact.stock === stock.id;
}

/** Whether all that was said after a plan was made is as that has it. */
function isAsPlanned(
  ids: ReadonlyMap<CutBoard | CutSheet, string>,
  all: readonly Fact[],
  later: readonly Fact[],
  { pieces, stock }: RestInput,
): boolean {
  if (later.length === 0) return true;
  const lies = new Map<string, { readonly on: string; readonly from: number }>();
  for (const [wood, on] of ids) {
    if ('cuts' in wood) for (const { piece, from } of wood.cuts) lies.set(piece, { on, from });
    else for (const { piece, x } of wood.placements) lies.set(piece, { on, from: x });
  }
  const there = new Map([...ids].map(([wood, id]) => [id, wood]));
  const { byPiece } = knownAgain(pieces, all, stock);
  return later.every((fact) => {
    if (fact.is === 'board') {
      const wood = there.get(fact.id);
      return wood !== undefined && (!fact.lay || ('placements' in wood && isLaidSo(wood, fact.lay)));
    }
    if (fact.is !== 'cut' || byPiece.get(fact.piece)?.id !== fact.id) return false;
    const place = lies.get(fact.piece);
    if (fact.board === null) return place === undefined;
    return place?.on === fact.board && Math.abs(place.from - fact.from) <= SAME_PLACE;
  });
}

/** The plan with what was begun since as what is there: nothing is bought any more for it. */
function begun(
  base: Cutting,
  ids: ReadonlyMap<CutBoard | CutSheet, string>,
  facts: readonly Fact[],
): Cutting {
  const there = new Set(factsOf(facts, 'board').map(({ id }) => id));
  const had = new Map<string, { count: number; cost: number }>();
  const take = <W extends CutBoard | CutSheet>(wood: W): W => {
    const id = under(ids, wood);
    if (wood.owned === id || !there.has(id)) return wood;
    if (wood.owned === null) {
      const before = had.get(wood.stock) ?? { count: 0, cost: 0 };
      had.set(wood.stock, { count: before.count + 1, cost: before.cost + wood.cost });
    }
    return { ...wood, owned: id, cost: 0 };
  };
  const [boards, sheets] = [base.boards.map(take), base.sheets.map(take)];
  const less = (bound: BoardsBound): BoardsBound => {
    const { count, cost } = had.get(bound.stock) ?? { count: 0, cost: 0 };
    // A plan of the rest and what is there is a plan of the whole: it cannot beat the bound of that.
    return {
      ...bound,
      used: bound.used - count,
      lowerBound: Math.max(0, bound.lowerBound - count),
      cost: bound.cost - cost,
      lowerCost: Math.max(0, bound.lowerCost - cost),
    };
  };
  if (had.size === 0) return { ...base, boards, sheets };
  const [boardsBound, sheetsBound] = [base.boardsBound.map(less), base.sheetsBound.map(less)];
  const open = [...boardsBound, ...sheetsBound].filter(({ proved }) => !proved);
  const checks = base.checks.filter(({ code }) => code !== 'cutting.not-proved');
  return { boards, sheets, boardsBound, sheetsBound, checks: [...checks, ...open.map(notProved)] };
}

/**
 * A plan of all that some facts leave to be cut, with what they tell is cut already. Where rectangles of begun sheets may
 * be left as they are laid out or be laid out again, what costs less is taken, and as they are where that is the same.
 */
function planned(input: RestInput, facts: readonly Fact[], round: number): Cutting {
  const { stock, pieces, owned, solve } = input;
  if (facts.length === 0) return solve(pieces, owned, round);
  const known = knownAgain(pieces, facts, stock);
  if (stock.form !== 'sheet') return boardsPlanned(input, facts, known, round);
  const as = (again: boolean) => sheetsPlanned(input, facts, known, again, round);
  const [left, isMixed] = as(false);
  if (!isMixed) return left;
  const [again] = as(true);
  const laid = ({ sheets }: Cutting) => sheets.reduce((sum, { placements }) => sum + placements.length, 0);
  const spent = ({ sheets }: Cutting) => sheets.reduce((sum, { cost }) => sum + cost, 0);
  const isBetter =
    laid(again) > laid(left) || (laid(again) === laid(left) && spent(again) < spent(left) - A_CENT);
  return isBetter ? again : left;
}

const A_CENT = 0.005;

/** What is on hand beside the boards of the job: idle wood, and what of the list none was taken of. */
function shelf({ owned, stock }: RestInput, facts: readonly Fact[], known: Known): Owned[] {
  const taken = (id: string) =>
    factsOf(facts, 'board').filter(({ got, of }) => got === 'on-hand' && of === id).length;
  return [
    ...shelved(known.idle, stock),
    ...owned.flatMap((one) =>
      one.count > taken(one.id) ? [{ ...one, count: one.count - taken(one.id) }] : [],
    ),
  ];
}

const usedOf = (facts: readonly Fact[]): ReadonlySet<string | null> =>
  new Set(factsOf(facts, 'board').map(({ of, got }) => (got === 'on-hand' ? null : of)));

function boardsPlanned(input: RestInput, facts: readonly Fact[], known: Known, round: number): Cutting {
  const { stock, pieces, shop, solve } = input;
  const boards = boardsOf(facts);
  const used = usedOf(facts);
  const there = [...boards.map((board) => leftOf(board, shop)), ...shelf(input, facts, known)];
  const rest = solve(
    pieces.filter(({ id }) => !known.byPiece.has(id)),
    there.filter((one) => one.stock === stock.id && !used.has(one.id)),
    round,
  );
  return { ...rest, boards: withDone(rest.boards, boards, known, input) };
}

function sheetsPlanned(
  input: RestInput,
  facts: readonly Fact[],
  known: Known,
  again: boolean,
  round: number,
): readonly [Cutting, isMixed: boolean] {
  const { stock, pieces, shop, solve } = input;
  const open = pieces.filter(({ id }) => !known.byPiece.has(id));
  const boards = boardsOf(facts).filter(({ fact }) => fact.stock === stock.id);
  const begun = boards.map((board) => ({
    board,
    ...begunSheet({ board, open, known, facts, shop, again }),
  }));
  const kept = new Set(begun.flatMap(({ stays }) => [...stays]));
  const used = usedOf(facts);
  const there = [...begun.flatMap(({ free }) => free), ...shelf(input, facts, known)];
  const rest = solve(
    open.filter(({ id }) => !kept.has(id)),
    there.filter((one) => one.stock === stock.id && !used.has(one.id)),
    again ? round + 2 : round,
  );
  const cutUp = new Set([...used, ...rest.sheets.map(({ owned: id }) => id)]);
  const named = new Map(boards.map((board) => [board.id, board]));
  const sheets = [
    ...begun.flatMap(({ board, sheet }) => (sheet ? [withoutRests(sheet, board, cutUp)] : [])),
    ...rest.sheets.map((sheet) => {
      const board = named.get(sheet.owned ?? '');
      return board ? trimmed(sheet, board, shop) : sheet;
    }),
  ];
  return [{ ...rest, sheets }, begun.some(({ isMixed }) => isMixed)];
}

/** The boards of a plan with the pieces that are cut of them already, and those that nothing more is cut of. */
function withDone(
  rest: readonly CutBoard[],
  boards: readonly JobBoard[],
  { byPiece }: Known,
  { pieces, stock, shop }: RestInput,
): CutBoard[] {
  const byId = new Map(pieces.map((piece) => [piece.id, piece]));
  const pieceOf = new Map([...byPiece].map(([piece, fact]) => [fact.id, under(byId, piece)]));
  const own = boards.flatMap((board): CutBoard[] => {
    const planned = rest.find(({ owned }) => owned === board.id);
    const done = board.cuts.flatMap((fact): BoardCut[] => {
      const piece = pieceOf.get(fact.id);
      return piece && fact.is === 'cut' ? [boardCut(piece, fact)] : [];
    });
    const cuts = [...done, ...(planned?.cuts ?? [])].sort((a, b) => a.from - b.from);
    if (cuts.length === 0) return [];
    const wood = cuts.reduce((sum, cut) => sum + meanLength(under(byId, cut.piece)), 0);
    const offcut = planned?.offcut ?? restOf(board, shop);
    return [
      {
        ...{ stock: stock.id, length: board.length, owned: board.id, cuts, offcut },
        ...{ waste: board.length - offcut - wood, cost: 0 },
      },
    ];
  });
  const named = new Set(boards.map(({ id }) => id));
  return [...own, ...rest.filter(({ owned }) => owned === null || !named.has(owned))];
}

function boardCut(piece: Piece, { from, to, flipped }: FactOf<'cut'>): BoardCut {
  const [start, end] = piece.ends;
  const [left, right] = flipped ? [-end.miter, -start.miter] : [start.miter, end.miter];
  return { piece: piece.id, from, to, flipped, left: left + 0, right: right + 0 };
}

/** What is left at the right end of a board that nothing more is cut of; 0 where it is too short to keep. */
function restOf(board: JobBoard, shop: Shop): number {
  const { length, defects } = leftOf(board, shop);
  const last = stretches(length, 0, defects, shop.boardKerf).at(-1);
  const rest = last ? last.to - last.from : 0;
  const isLast = last !== undefined && board.cuts.every(({ to }) => to <= last.from);
  return isLast && rest >= shop.keepOffcut ? rest : 0;
}
