import { type Check, orderChecks } from '../check/check.ts';
import type { Owned, Shop } from '../design/schema.ts';
import type { Piece } from '../joinery/piece.ts';
import type { Stock } from '../materials/types.ts';
import { planBoards } from './boards/boards.ts';
import { budgetOf } from './budget.ts';
import type { BoardsBound, CutBoard, CutSheet, Cutting } from './result.ts';
import { planSheets } from './sheets/sheets.ts';

/** A step on a sheet is that much quicker than one on a board. */
const SHEET_STEPS = 4;

export interface CuttingInput {
  readonly pieces: readonly Piece[];
  readonly stocks: ReadonlyMap<string, Stock>;
  readonly owned: readonly Owned[];
  readonly shop: Shop;
  /** Search steps for each stock: the more, the nearer to the least wood, and the longer it takes. */
  readonly effort: { readonly nodes: number };
  /** Only what one pass over the boards finds: no improving, no searching; many pieces take a tenth of a second. */
  readonly soon?: boolean | undefined;
  /** Told now and then, and after each stock: search steps done, of all there are to do. */
  readonly onProgress?: ((done: number, of: number) => void) | undefined;
  /** Asked now and then; once true, the best plan so far is returned. */
  readonly cancelled?: (() => boolean) | undefined;
}

/**
 * Chooses what to buy and how to cut it, stock by stock: least money, then fewest boards or sheets, then
 * the largest single rest, then the fewest turns of the saw. Each result carries a lower bound and says
 * whether it is proved. Pieces of a stock that is not in `stocks` are left out: the layout names them.
 */
export function planCutting(input: CuttingInput): Cutting {
  const boards: CutBoard[] = [];
  const boardsBound: BoardsBound[] = [];
  const sheets: CutSheet[] = [];
  const sheetsBound: BoardsBound[] = [];
  const checks: Check[] = [];
  const used = [...new Set(input.pieces.map((p) => p.stock))].filter((id) => input.stocks.has(id)).sort();
  const { nodes } = input.effort;
  used.forEach((id, done) => {
    const stock = input.stocks.get(id);
    if (!stock) return;
    const pieces = input.pieces.filter((p) => p.stock === id);
    const told = (spent: number) => input.onProgress?.(done * nodes + spent, used.length * nodes);
    const each = stock.form === 'sheet' ? SHEET_STEPS : 1;
    const budget = budgetOf(nodes * each, input.cancelled, (spent) => told(Math.floor(spent / each)));
    const common = { pieces, owned: input.owned, shop: input.shop, soon: input.soon };
    if (stock.form === 'sheet') {
      const plan = planSheets({ ...common, stock }, budget);
      sheets.push(...plan.sheets);
      if (plan.bound) sheetsBound.push(plan.bound);
      checks.push(...plan.checks);
    } else {
      const plan = planBoards({ ...common, stock }, budget);
      boards.push(...plan.boards);
      if (plan.bound) boardsBound.push(plan.bound);
      checks.push(...plan.checks);
    }
    told(nodes);
  });
  return { boards, boardsBound, sheets, sheetsBound, checks: orderChecks(checks) };
}
