import { planCutting } from '../cutting/cutting.ts';
import type { Edit } from '../design/edit/edit.ts';
import { inserting, replacing } from '../design/edit/make.ts';
import { factsOf, liveFacts, type Saying, saying, withoutStamp } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import { ownCopy } from '../design/ownCopy.ts';
import { withResources } from '../design/resources.ts';
import type { Design, Owned, Part, Shop } from '../design/schema.ts';
import type { Piece } from '../joinery/piece.ts';
import { mayTurn, SAWN_ALIKE, turned } from '../joinery/same.ts';
import { pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { boardsOf, leftOf } from './boards.ts';
import { firstNamed } from './ids.ts';
import { knownAgain } from './known.ts';
import { MARKED, type Mark, markOf } from './mark.ts';

/**
 * A stock as a rule reads it, with the boards that it holds for. Those boards become a stock of the design's own that
 * cannot be bought, and parts are made of it or of the nominal one: so no piece depends on boards of two readings, and
 * gaps, laps, reveals, brads and sheets follow from the parts as they do from any stock.
 */

type OwnStock = Design['stocks'][number];

/** Boards that one reading may hold for: one entry of what is on hand, or what was bought or begun together. */
export interface Batch {
  readonly id: string;
  readonly is: 'on-hand' | 'bought';
  readonly lengths: readonly Mm[];
  /** What is left of them to cut pieces of. */
  readonly left: readonly Owned[];
  /** Of the job, by their ids. */
  readonly boards: readonly string[];
  /** The entry of what is on hand. */
  readonly owned: string | null;
}

type Wood = Pick<Design, 'owned' | 'job' | 'shop'>;

export function batchesOf({ owned, job, shop }: Wood, stock: string): readonly Batch[] {
  const facts = liveFacts(job);
  const of = new Map(factsOf(facts, 'spoiled').map(({ id, board }) => [id.replace('spoiled:', 's:'), board]));
  const said = factsOf(facts, 'board').filter((board) => board.stock === stock);
  // A short piece is of the board that it was to be cut of.
  const rootOf = (id: string): string => {
    const from = of.get(id);
    return from === undefined || from === id ? id : rootOf(firstNamed(from));
  };
  const keyOf = (id: string): string => {
    const root = said.find((board) => board.id === rootOf(id));
    if (root?.got === 'on-hand' && root.of !== null) return root.of;
    return root ? `at:${root.at}` : id;
  };
  const shelf = owned.filter((one) => one.stock === stock);
  const real = boardsOf(facts);
  const keys = new Set([...shelf.map(({ id }) => id), ...said.map(({ id }) => keyOf(id))]);
  return [...keys].map((key): Batch => {
    const own = said.filter(({ id }) => keyOf(id) === key);
    const entry = shelf.find(({ id }) => id === key);
    const rest = entry ? entry.count - own.filter(({ got }) => got === 'on-hand').length : 0;
    const ids = own.map(({ id }) => id);
    return {
      ...{ id: key, is: entry ? 'on-hand' : 'bought', owned: entry?.id ?? null, boards: ids },
      lengths: [
        ...own.map(({ length }) => length),
        ...new Array<Mm>(Math.max(0, rest)).fill(entry?.length ?? 0),
      ],
      left: [
        ...(entry && rest > 0 ? [{ ...entry, count: rest }] : []),
        ...real.filter(({ fact }) => ids.includes(fact.id)).map((board) => leftOf(board, shop)),
      ],
    };
  });
}

/** Parts of which a piece is cut of these boards, and those of them that have one cut of others too. */
export function cutOfThem(
  facts: readonly Fact[],
  boards: ReadonlySet<string>,
  partOf: (laid: string) => string,
): { readonly of: ReadonlySet<string>; readonly alsoOfOthers: ReadonlySet<string> } {
  const cuts = factsOf(facts, 'cut').filter(({ board }) => board !== null);
  const isOf = ({ board }: (typeof cuts)[number]) => boards.has(firstNamed(board ?? ''));
  const of = new Set(cuts.filter(isOf).map(({ part }) => partOf(part)));
  const others = cuts.filter((cut) => !isOf(cut)).map(({ part }) => partOf(part));
  return { of, alsoOfOthers: new Set(others.filter((part) => of.has(part))) };
}

/** Search for whether pieces come out of some boards. */
const NODES = 2000;

/** Boards that parts of a stock are to come out of, without buying any. */
export interface Supply {
  readonly stock: Stock;
  /** By parts of the design. */
  readonly pieces: ReadonlyMap<string, readonly Piece[]>;
  readonly wood: readonly Owned[];
  readonly shop: Shop;
}

/** Whether all pieces of some parts come out of the boards. */
export function comeOutOf({ stock, pieces, wood, shop }: Supply, parts: readonly string[]): boolean {
  const all = parts.flatMap((part) => pieces.get(part) ?? []);
  if (all.length === 0) return true;
  const owned = wood.map((one) => ({ ...one, stock: stock.id }));
  const unbought: Stock = stock.form === 'sheet' ? { ...stock, sizes: [] } : { ...stock, lengths: [] };
  const stocks = new Map([[stock.id, unbought]]);
  const { boards, sheets } = planCutting({ pieces: all, stocks, owned, shop, effort: { nodes: NODES } });
  const held = [...boards.map(({ cuts }) => cuts), ...sheets.map(({ placements }) => placements)];
  return held.reduce((sum, { length }) => sum + length, 0) === all.length;
}

/**
 * The parts that boards of a reading hold whole: first those of which a piece is cut of them, then those that are planned
 * to be cut of them, then others, while all their pieces come out of what is left.
 * @param planned by parts: how many of their pieces the plan cuts of these boards
 */
export function partsThatFit(
  supply: Supply,
  first: ReadonlySet<string>,
  planned: ReadonlyMap<string, number>,
): ReadonlySet<string> {
  const { pieces } = supply;
  const order = [...pieces]
    .filter(([part]) => !first.has(part))
    .map(([part, { length }]) => ({ part, share: (planned.get(part) ?? 0) / Math.max(1, length) }))
    .sort((a, b) => b.share - a.share || (a.part < b.part ? -1 : 1))
    .map(({ part }) => part);
  const taken = [...first];
  for (const part of order) if (comeOutOf(supply, [...taken, part])) taken.push(part);
  return new Set(taken);
}

/** What a rule read of a stock. */
export interface StockReading {
  readonly stock: Stock;
  /** As the rule reads it. */
  readonly width: Mm;
  readonly thickness: Mm;
  /** What the boards are called from now on; null: the reading holds for all boards of the stock. */
  readonly as: { readonly id: string; readonly name: string } | null;
  readonly batches: readonly Batch[];
  readonly parts: ReadonlySet<string>;
}

/** A stock in another size: the section of a molding is stretched with it. */
export function inSize<S extends OwnStock>(stock: S, width: Mm, thickness: Mm): S {
  if (stock.form === 'sheet') return { ...stock, thickness };
  if (stock.form === 'flat') return { ...stock, width, thickness };
  const [kx, ky] = [width / stock.width, thickness / stock.thickness];
  return { ...stock, width, thickness, section: stock.section.map(({ x, y }) => ({ x: x * kx, y: y * ky })) };
}

/** The edits of a reading, but for what is cut already. */
export function readingEdits(design: Design, reading: StockReading): readonly Edit[] {
  const { stock, width, thickness, as, batches, parts } = reading;
  const own = inSize(ownCopy(stock), width, thickness);
  if (as === null) {
    const known = design.stocks.some(({ id }) => id === stock.id);
    return [known ? replacing('stocks', own) : inserting('stocks', own)];
  }
  const none = own.form === 'sheet' ? { ...own, ...as, sizes: [] } : { ...own, ...as, lengths: [] };
  const shelf = new Set(batches.flatMap(({ owned }) => (owned === null ? [] : [owned])));
  const boards = new Set(batches.flatMap((batch) => batch.boards));
  const renamed = (item: Part): Part =>
    withResources(item, (list, id) => (list === 'stocks' && id === stock.id ? as.id : id));
  const said = factsOf(liveFacts(design.job), 'board').filter(({ id }) => boards.has(id));
  return [
    inserting('stocks', none),
    ...design.owned
      .filter(({ id }) => shelf.has(id))
      .map((item) => replacing('owned', { ...item, stock: as.id })),
    ...design.parts.filter(({ id }) => parts.has(id)).map((item) => replacing('parts', renamed(item))),
    ...(said.length > 0
      ? [
          job(
            design,
            said.map((fact): Saying => ({ ...withoutStamp(fact), stock: as.id })),
          ),
        ]
      : []),
  ];
}

const job = (design: Pick<Design, 'job'>, said: readonly Saying[]): Edit => ({
  kind: 'set',
  field: 'job',
  value: saying(design.job, said),
});

/**
 * What is said with a reading of pieces that are cut of those boards: they were so wide all the time. A piece that is
 * still sawn alike is the same piece; else its wood is on hand, as wide as it is.
 *
 * @param before pieces as they were planned
 * @param after pieces with the edits of the reading
 */
export function cutAsRead(
  design: Pick<Design, 'job'>,
  reading: StockReading,
  before: readonly Piece[],
  after: readonly Piece[],
): readonly Edit[] {
  const { stock, as, batches } = reading;
  const facts = liveFacts(design.job);
  const boards = new Set(batches.flatMap((batch) => batch.boards));
  const isOf = (board: string | null) => as === null || boards.has(firstNamed(board ?? ''));
  const { byPiece } = knownAgain(before, facts, stock);
  const serves = new Map([...byPiece].map(([piece, { id }]) => [id, piece]));
  const now = new Map(after.map((piece) => [piece.id, piece]));
  const was = new Map(before.map((piece) => [piece.id, piece]));
  const to = as?.id ?? stock.id;
  const cuts = factsOf(facts, 'cut').filter((one) => one.stock === stock.id && isOf(one.board));
  const spoiled = factsOf(facts, 'spoiled').filter((one) => one.stock === stock.id && isOf(one.board));
  const said: Saying[] = [
    ...cuts.map((fact): Saying => {
      const id = serves.get(fact.id);
      const [old, next] = [was.get(id ?? ''), now.get(id ?? '')];
      const same = old && next?.stock === to ? sawnAs(old, next, stock) : null;
      const mark = same ?? fact.mark.map((v, i) => inMark(v, i, reading));
      return { ...withoutStamp(fact), stock: to, mark: [...mark] };
    }),
    ...(as === null ? [] : spoiled.map((fact): Saying => ({ ...withoutStamp(fact), stock: to }))),
  ];
  return said.length > 0 ? [job(design, said)] : [];
}

function inMark(value: number, place: number, { stock, width, thickness }: StockReading): number {
  if (place === MARKED.thickness) return thickness;
  return place === MARKED.width && stock.form !== 'sheet' ? width : value;
}

/** The mark of a piece by which wood that was sawn as an earlier one is known, where both are set and stopped alike; else null. */
function sawnAs(old: Piece, next: Piece, stock: Stock): Mark | null {
  const alike = (a: Mark, b: Mark): boolean => {
    const settings = MARKED.ends + 2 * MARKED.perEnd;
    const compared = [
      MARKED.overall,
      ...Array.from({ length: settings - MARKED.ends }, (_, i) => MARKED.ends + i),
    ];
    return compared.every((i) => Math.abs(pick(a, i) - pick(b, i)) <= SAWN_ALIKE);
  };
  const [a, b] = [markOf(old), markOf(next)];
  return alike(a, b) || (mayTurn(next, stock) && alike(a, markOf(turned(next)))) ? b : null;
}
