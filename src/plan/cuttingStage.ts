import { orderChecks } from '../check/check.ts';
import { planCutting } from '../cutting/cutting.ts';
import type { Cutting } from '../cutting/result.ts';
import { liveFacts } from '../design/job/record.ts';
import type { Design } from '../design/schema.ts';
import { cutRest } from '../job/rest.ts';
import type { Piece } from '../joinery/piece.ts';
import type { KeptResults } from '../layout/kept.ts';
import { pick } from '../list/at.ts';
import type { Stock } from '../materials/types.ts';
import { type Plan, PlanCancelled, type Watch } from './types.ts';

/** What of a piece a saw does not ask: where it comes to stand, and what it is called. */
const ELSEWHERE = { placed: [], z0: 0, z1: 0, name: '' } as const;

/**
 * With more pieces than these the whole search takes a while whatever it proves, and even a few steps of it are
 * too many for a first answer: one pass over the boards gives that.
 */
const FEW_PIECES = 100;
/** The same of the panels of one stock: a step that fills a sheet with many takes longer than one on a board. */
const FEW_PANELS = 30;

/** What the plan of one stock follows from: its pieces as a text, so that equal content is the same. */
export interface StockCut {
  readonly stock: Stock;
  readonly pieces: string;
  /** How many pieces. */
  readonly count: number;
  readonly owned: Design['owned'];
  readonly shop: Design['shop'];
}

interface CutInput {
  readonly pieces: readonly Piece[];
  readonly stocks: Plan['stocks'];
  readonly owned: Design['owned'];
  readonly shop: Design['shop'];
}

/** How the saw is to search, and who is told. */
export interface Search {
  /** Most search steps for each stock. */
  readonly nodes: number;
  readonly watch: Watch;
  readonly results: KeptResults;
}

/** No saw tells finer lengths than this, in parts of a millimeter; one piece measured in two places may differ by less. */
const GRAIN = 1e9;
const toGrain = (_: string, value: unknown): unknown =>
  typeof value === 'number' ? Math.round(value * GRAIN) / GRAIN : value;

/** What is to be cut, stock by stock. */
export function stockCuts({ pieces, stocks, owned, shop }: CutInput): readonly StockCut[] {
  const used = [...new Set(pieces.map(({ stock }) => stock))].sort();
  return used.flatMap((id) => {
    const stock = stocks.get(id);
    if (!stock) return [];
    const own = pieces.filter((piece) => piece.stock === id);
    const text = JSON.stringify(
      own.map((piece): Piece => ({ ...piece, ...ELSEWHERE })),
      toGrain,
    );
    return [{ stock, pieces: text, count: own.length, owned, shop }];
  });
}

/** What is on hand of a stock, as a text: of other stocks it does not follow. */
const ofStock = (owned: Design['owned'], id: string): string =>
  JSON.stringify(owned.filter(({ stock }) => stock === id));

const factsOf = ({ stock, pieces, owned, shop }: StockCut, nodes: number): readonly unknown[] => [
  pieces,
  ofStock(owned, stock.id),
  shop,
  nodes,
];

/** A watch that is told of one of several stocks as a share of all of them. */
const share = (watch: Watch, done: number, of: number): Watch => ({
  ...watch,
  onStage: (name, at, steps) => watch.onStage?.(name, done * steps + at, of * steps),
});

function cutStock(
  { stock, pieces, owned, shop }: StockCut,
  nodes: number,
  watch: Watch,
  soon = false,
): Cutting {
  const result = planCutting({
    pieces: JSON.parse(pieces) as Piece[],
    stocks: new Map([[stock.id, stock]]),
    owned,
    shop,
    effort: { nodes },
    soon,
    onProgress: (done, of) => watch.onStage?.('cutting', done, of),
    cancelled: watch.cancelled,
  });
  if (watch.cancelled?.()) throw new PlanCancelled();
  return result;
}

/**
 * Cuts stock by stock. Each stock's plan is kept by the content of its pieces, so that a part that is only moved, or
 * a strip that gets longer, does not cut the sheets again. A plan that was cut short is thrown away.
 */
export function cutStocks(cuts: readonly StockCut[], { nodes, watch, results }: Search): Cutting {
  return together(
    cuts.map((cut, done) =>
      results.of(cut.stock, 'cut', factsOf(cut, nodes), () =>
        cutStock(cut, nodes, share(watch, done, cuts.length)),
      ),
    ),
  );
}

/** What is to be cut, and what of it is cut. */
export interface JobCuts {
  readonly cuts: readonly StockCut[];
  readonly pieces: readonly Piece[];
  readonly job: Design['job'];
}

/** The whole work of the saw: nothing else of a plan is asked for it. */
export interface CutWork extends JobCuts {
  readonly nodes: Search['nodes'];
}

/** What is cut of what a plan knows. */
export const cutWork = ({
  cuts,
  joinery,
  design,
  nodes,
}: Pick<JobCuts, 'cuts'> & Pick<Search, 'nodes'> & Pick<Plan, 'joinery' | 'design'>): CutWork => ({
  ...{ cuts, nodes },
  ...{ pieces: joinery.pieces, job: design.job },
});

/** The same with what is done: each stock is cut from what is left of it, cut pieces lie where they were cut. */
export function cutWithJob({ cuts, pieces, job }: JobCuts, search: Search): Cutting {
  const facts = liveFacts(job);
  if (facts.length === 0) return cutStocks(cuts, search);
  const rests = cuts.map((cut, done) => {
    const { stock, owned, shop } = cut;
    const watch = share(search.watch, done, cuts.length);
    return cutRest({
      ...{ stock, owned, shop, facts, pieces: pieces.filter((piece) => piece.stock === stock.id) },
      solve: (open, onHand, round) => {
        const [left] = stockCuts({ pieces: open, stocks: new Map([[stock.id, stock]]), owned: onHand, shop });
        if (!left) return NO_CUTTING;
        return search.results.of(stock, `cut-${round}`, factsOf(left, search.nodes), () =>
          cutStock(left, search.nodes, watch),
        );
      },
    });
  });
  return {
    ...together(rests.map(({ cutting }) => cutting)),
    basis: Object.fromEntries(rests.map(({ basis }, i) => [pick(cuts, i).stock.id, basis])),
  };
}

/** Of a stock of which nothing is left to be cut. */
const NO_CUTTING: Cutting = { boards: [], boardsBound: [], sheets: [], sheetsBound: [], checks: [] };

/**
 * The cutting with what `few` steps at most find for the stocks that would be cut anew; null where there are none, or
 * where the whole is as soon done. It does not say yet that it is not the least.
 */
export function draftCutting(
  cuts: readonly StockCut[],
  few: number,
  { nodes, watch, results }: Search,
): Cutting | null {
  const many = cuts.reduce((sum, { count }) => sum + count, 0) > FEW_PIECES;
  let isWorthTelling = false;
  const plans = cuts.map((cut, done) => {
    const known = results.known<Cutting>(cut.stock, 'cut', factsOf(cut, nodes));
    if (known) return known;
    const soon = many || (cut.stock.form === 'sheet' && cut.count > FEW_PANELS);
    const plan = cutStock(cut, few, share(watch, done, cuts.length), soon);
    isWorthTelling ||= soon || !isProved(plan);
    return plan;
  });
  if (!isWorthTelling) return null;
  const draft = together(plans);
  return { ...draft, checks: draft.checks.filter(({ code }) => code !== 'cutting.not-proved') };
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
