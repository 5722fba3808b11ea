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
 * Cuts stock by stock and remembers each stock's plan by the content of its pieces, so that a part that is only
 * moved, or a strip that gets longer, does not cut the sheets again. A plan that was cut short is thrown away.
 */
export function createCuttingStage() {
  let watch: Watch = {};
  const cut = rememberingEach(
    (
      id: string,
      pieces: string,
      stock: Stock,
      owned: Design['owned'],
      shop: Design['shop'],
      nodes: number,
    ): Cutting => {
      const result = planCutting({
        pieces: JSON.parse(pieces) as Piece[],
        stocks: new Map([[id, stock]]),
        owned,
        shop,
        effort: { nodes },
        onProgress: (done, of) => watch.onStage?.('cutting', done, of),
        cancelled: watch.cancelled,
      });
      if (watch.cancelled?.()) throw new PlanCancelled();
      return result;
    },
  );
  let told: Watch = {};
  const cutAll = (
    pieces: Plan['joinery']['pieces'],
    stocks: Plan['stocks'],
    owned: Design['owned'],
    shop: Design['shop'],
    nodes: number,
  ): Cutting => {
    const used = [...new Set(pieces.map(({ stock }) => stock))].sort().flatMap((id) => stocks.get(id) ?? []);
    const plans = used.map((stock, done) => {
      const own = pieces.filter((piece) => piece.stock === stock.id);
      const by = told;
      watch = { ...by, onStage: (name, at, of) => by.onStage?.(name, done * of + at, used.length * of) };
      const text = JSON.stringify(own.map((piece): Piece => ({ ...piece, ...ELSEWHERE })));
      return cut.of(stock.id, text, stock, owned, shop, nodes);
    });
    cut.sweep();
    return {
      boards: plans.flatMap((plan) => plan.boards),
      boardsBound: plans.flatMap((plan) => plan.boardsBound),
      sheets: plans.flatMap((plan) => plan.sheets),
      sheetsBound: plans.flatMap((plan) => plan.sheetsBound),
      checks: orderChecks(plans.flatMap((plan) => plan.checks)),
    };
  };
  const remembered = remembering(cutAll);
  return (...[by, ...input]: [Watch, ...Parameters<typeof cutAll>]): Cutting => {
    told = by;
    return remembered(...input);
  };
}
