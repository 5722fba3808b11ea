import { orderChecks } from '../check/check.ts';
import { planCutting } from '../cutting/cutting.ts';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import type { Piece } from '../joinery/piece.ts';
import type { Stock } from '../materials/types.ts';
import { remembering, rememberingEach } from './memory.ts';
import { type Plan, PlanCancelled, type Watch } from './types.ts';

/** What of a piece a saw does not ask: where it comes to stand, and what it is called. */
const ELSEWHERE = { placed: [], z0: 0, z1: 0, name: '' } as const;

/**
 * With more pieces than these the whole search takes a while whatever it proves, and even a few steps of it are
 * too many for a first answer: one pass over the boards gives that.
 */
const FEW_PIECES = 100;

interface CutInput {
  readonly pieces: Plan['joinery']['pieces'];
  readonly stocks: Plan['stocks'];
  readonly owned: Design['owned'];
  readonly shop: Design['shop'];
  /** Most search steps for each stock. */
  readonly nodes: number;
}

/** What the plan of one stock follows from: its pieces as a text, so that equal content is the same. */
type StockInput = readonly [pieces: string, stock: Stock, owned: Design['owned'], shop: Design['shop']];

/**
 * Cuts stock by stock and remembers each stock's plan by the content of its pieces, so that a part that is only
 * moved, or a strip that gets longer, does not cut the sheets again. A plan that was cut short is thrown away.
 */
export function createCuttingStage() {
  let watch: Watch = {};
  const cutStock = (
    id: string,
    [pieces, stock, owned, shop]: StockInput,
    nodes: number,
    soon = false,
  ): Cutting => {
    const result = planCutting({
      pieces: JSON.parse(pieces) as Piece[],
      stocks: new Map([[id, stock]]),
      owned,
      shop,
      effort: { nodes },
      soon,
      onProgress: (done, of) => watch.onStage?.('cutting', done, of),
      cancelled: watch.cancelled,
    });
    if (watch.cancelled?.()) throw new PlanCancelled();
    return result;
  };
  const cut = rememberingEach((id: string, nodes: number, ...input: StockInput) =>
    cutStock(id, input, nodes),
  );
  const stocksIn = remembering(
    (
      pieces: CutInput['pieces'],
      stocks: CutInput['stocks'],
      owned: CutInput['owned'],
      shop: CutInput['shop'],
    ) => {
      const used = [...new Set(pieces.map(({ stock }) => stock))].sort();
      return used.flatMap((id) => {
        const stock = stocks.get(id);
        if (!stock) return [];
        const own = pieces.filter((piece) => piece.stock === id);
        const text = JSON.stringify(own.map((piece): Piece => ({ ...piece, ...ELSEWHERE })));
        return [{ id: stock.id, input: [text, stock, owned, shop] as const }];
      });
    },
  );
  /** Plans stock by stock, with the watch turned to the one that is cut. */
  const eachStock = (
    by: Watch,
    { pieces, stocks, owned, shop }: CutInput,
    planOf: (id: string, input: StockInput) => Cutting,
  ): Cutting[] => {
    const used = stocksIn(pieces, stocks, owned, shop);
    return used.map(({ id, input }, done) => {
      watch = { ...by, onStage: (name, at, of) => by.onStage?.(name, done * of + at, used.length * of) };
      return planOf(id, input);
    });
  };
  return {
    of: (by: Watch, input: CutInput): Cutting => {
      const plans = eachStock(by, input, (id, own) => cut.of(id, input.nodes, ...own));
      cut.sweep();
      return together(plans);
    },
    /**
     * The cutting with what `few` steps at most find for the stocks that would be cut anew; null where there are
     * none, or where the whole is as soon done. It does not say yet that it is not the least.
     */
    draft: (by: Watch, few: number, input: CutInput): Cutting | null => {
      const many = input.pieces.length > FEW_PIECES;
      let isWorthTelling = false;
      const plans = eachStock(by, input, (id, own) => {
        if (cut.knows(id, input.nodes, ...own)) return cut.of(id, input.nodes, ...own);
        const plan = cutStock(id, own, few, many);
        isWorthTelling ||= many || !isProved(plan);
        return plan;
      });
      if (!isWorthTelling) return null;
      const draft = together(plans);
      return { ...draft, checks: draft.checks.filter(({ code }) => code !== 'cutting.not-proved') };
    },
  };
}

const isProved = ({ boardsBound, sheetsBound }: Cutting): boolean =>
  [...boardsBound, ...sheetsBound].every(({ proved }) => proved);

const together = (plans: readonly Cutting[]): Cutting => ({
  boards: plans.flatMap((plan) => plan.boards),
  boardsBound: plans.flatMap((plan) => plan.boardsBound),
  sheets: plans.flatMap((plan) => plan.sheets),
  sheetsBound: plans.flatMap((plan) => plan.sheetsBound),
  checks: orderChecks(plans.flatMap((plan) => plan.checks)),
});
