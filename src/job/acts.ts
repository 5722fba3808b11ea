import { type BenchStep, cutKey } from '../cutting/atSaw.ts';
import { lyings } from '../cutting/boards/ends.ts';
import type { CutBoard, CutSheet, Cutting } from '../cutting/result.ts';
import { factsOf, type Saying, withoutStamp } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import type { Shop } from '../design/schema.ts';
import type { Piece } from '../joinery/piece.ts';
import { under } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';
import { boardIds, firstNamed } from './ids.ts';
import { knownAgain, usable } from './known.ts';
import { markOf } from './mark.ts';

/** A plan as far as acts at the saw look at it. */
export interface AtSaw {
  readonly cutting: Cutting;
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly shop: Shop;
  /** What held of the job when the plan was made: boards are called by it. */
  readonly planned: readonly Fact[];
  /** What holds now. */
  readonly facts: readonly Fact[];
}

type PieceStep = Extract<BenchStep, { readonly piece: Piece }>;

/** Of a stock: what the plan that is cut by was made of. */
const basisIn = ({ cutting }: AtSaw, stock: string): number => cutting.basis?.[stock] ?? 0;

/** What is said with the first thing that is done with a board or sheet: that it is there. Nothing where that is said. */
export function boardSaying(
  wood: CutBoard | CutSheet,
  { cutting, planned, facts }: AtSaw,
  isBegun = true,
): readonly Saying[] {
  const id = under(boardIds(cutting, planned), wood);
  const said = factsOf(facts, 'board').find((fact) => fact.id === firstNamed(id));
  const sheet = 'placements' in wood ? wood : null;
  // Until a saw is in it, a sheet may be laid out otherwise.
  const lay = sheet && isBegun ? { lay: layOf(sheet) } : {};
  if (said)
    return sheet && isBegun && !said.lay
      ? [{ ...withoutStamp(said), ...{ since: said.since ?? said.at }, ...lay }]
      : [];
  const of = wood.owned;
  const shelved = facts.some((fact) => fact.id === of || (of ?? '').startsWith(`${fact.id}/`));
  return [
    {
      ...{ is: 'board', id, stock: wood.stock, length: wood.length, paid: wood.cost, of },
      ...(sheet ? { width: sheet.width } : {}),
      got: of === null ? 'bought' : shelved ? 'short' : 'on-hand',
      ...lay,
    },
  ];
}

/** What is said where boards or sheets of a size are bought: all that the plan still has to buy of it. */
export function boughtSaying(
  { stock, length, width }: { stock: string; length: Mm; width?: Mm | undefined },
  at: AtSaw,
): readonly Saying[] {
  return [...at.cutting.boards, ...at.cutting.sheets]
    .filter((wood) => wood.owned === null && wood.stock === stock && wood.length === length)
    .filter((wood) => !('width' in wood) || wood.width === width)
    .flatMap((wood) => boardSaying(wood, at, false));
}

const layOf = ({ placements, sequence, offcuts }: CutSheet) => ({
  places: placements.map(({ piece, x, y, w, h, turned, from }) => ({
    ...{ piece, box: [x, y, w, h] as const, turned },
    ...(from ? { blank: [from.x, from.y, from.w, from.h] as const } : {}),
  })),
  cuts: sequence.map(({ kind, of: { x, y, w, h }, fence }) => ({ kind, of: [x, y, w, h] as const, fence })),
  offcuts: offcuts.map(({ x, y, w, h }) => [x, y, w, h] as const),
});

/** The blade at both ends of a piece, along the board. */
function bladesOf(piece: Piece, flipped: boolean, { stocks, shop }: AtSaw): readonly [Mm, Mm] {
  const stock = stocks.get(piece.stock);
  if (!stock || stock.form === 'sheet') return [0, 0];
  const ways = lyings(piece, shop.boardKerf, stock);
  const way = ways.find((one) => one.flipped === flipped) ?? ways[0];
  return way ? [way.left.kerf, way.right.kerf] : [shop.boardKerf, shop.boardKerf];
}

/** What is said where a step is done: a piece is cut, or a cut of a sheet is made. */
export function cutSaying(step: BenchStep, at: AtSaw): readonly Saying[] {
  const wood = step.from?.wood;
  const there = wood ? boardSaying(wood, at) : [];
  const board = wood ? under(boardIds(at.cutting, at.planned), wood) : null;
  if (step.kind === 'sheet-cut')
    return [...there, { is: 'sawn', id: `sawn:${step.id}`, board: board ?? '', cut: step.id }];
  const { piece, lies } = step;
  const blade = step.kind === 'board-piece' ? bladesOf(piece, lies.flipped, at) : ([0, 0] as const);
  return [
    ...there,
    {
      ...{
        is: 'cut',
        id: `cut:${piece.id}`,
        piece: piece.id,
        part: piece.part,
        stock: piece.stock,
        mark: [...markOf(piece)],
      },
      ...{ board, ...lies, blade, by: basisIn(at, piece.stock) },
    },
  ];
}

/** Ids of what is taken back where a step is not done after all; the board that was begun stays. */
export function uncutIds(step: BenchStep, { facts, stocks }: AtSaw): ReadonlySet<string> {
  if (step.kind === 'sheet-cut') return new Set(sawnAs(step, facts).map(({ id }) => id));
  const stock = stocks.get(step.piece.stock);
  const fact = stock && knownAgain([step.piece], facts, stock).byPiece.get(step.piece.id);
  return new Set(fact ? [fact.id] : []);
}

/** Which steps are done, by their ids. */
export function doneSteps(
  steps: readonly BenchStep[],
  { facts, stocks }: Pick<AtSaw, 'facts' | 'stocks'>,
): ReadonlySet<string> {
  const pieces = steps.flatMap((step) => (step.kind === 'sheet-cut' ? [] : [step.piece]));
  const cut = [...stocks.values()].flatMap((stock) => [...knownAgain(pieces, facts, stock).byPiece.keys()]);
  const sawn = steps.filter((step) => step.kind === 'sheet-cut' && sawnAs(step, facts).length > 0);
  return new Set([...cut, ...sawn.map(({ id }) => id)]);
}

/** Facts that tell a cut of a sheet: by its step, or by the sheet where that has another number by now. */
const sawnAs = ({ id, from, cut }: Extract<BenchStep, { kind: 'sheet-cut' }>, facts: readonly Fact[]) =>
  factsOf(facts, 'sawn').filter(
    (fact) => fact.cut === id || (fact.board === from.wood.owned && fact.cut.endsWith(`:${cutKey(cut)}`)),
  );

/** Why what is said of a miscut cannot be. */
export type MiscutProblem = 'longer' | 'none-left';

/**
 * What is said where a piece went wrong: its wood is gone from the board as far as the blade went, and what is left of it
 * can serve as a shorter piece.
 *
 * @param left what the tape reads of the piece as it is, on the edge that it is measured along; null: it is good for
 * nothing. Of a piece of sheet: its length, the width being as it should
 */
export function spoiledSaying(
  step: PieceStep,
  left: Mm | null,
  at: AtSaw,
): readonly Saying[] | { readonly problem: MiscutProblem } {
  const wood = step.from?.wood;
  const { piece } = step;
  const stock = at.stocks.get(piece.stock);
  if (!wood || !stock) return { problem: 'none-left' };
  const less = left === null ? 0 : piece.length - left;
  if (left !== null && less <= 0) return { problem: 'longer' };
  const board = under(boardIds(at.cutting, at.planned), wood);
  const { flipped, ...lies } = step.lies;
  // Both are told apart from others of the same piece by how much had been said before.
  const number = at.facts.filter((fact) => fact.is === 'spoiled' && fact.piece === piece.id).length + 1;
  const sheet = stock.form === 'sheet';
  const whole = usable(markOf(piece), stock.form);
  const rest =
    left !== null && whole !== null && whole.length > less ? { ...whole, length: whole.length - less } : null;
  return [
    ...boardSaying(wood, at),
    {
      ...{ is: 'spoiled', id: `spoiled:${piece.id}:${number}`, piece: piece.id, stock: piece.stock, board },
      ...{
        ...lies,
        to: sheet ? lies.to : lies.to - less,
        blade: sheet ? [0, 0] : bladesOf(piece, flipped, at),
      },
    },
    ...(rest
      ? [
          {
            ...({ is: 'board', id: `s:${piece.id}:${number}`, stock: piece.stock, ...rest } as const),
            ...({ got: 'short', paid: 0, of: null } as const),
          },
        ]
      : []),
  ];
}
