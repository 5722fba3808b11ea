import type { Check } from '../../check/check.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at } from '../../list/at.ts';
import { wholeUp } from '../../measure/round.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { BoardsBound, CutBoard } from '../result.ts';
import { boundOf, notProved } from '../weigh.ts';
import { countBound } from './bound.ts';
import { layBoards } from './lay.ts';
import { gatherRest } from './offcut.ts';
import type { Bin, Load } from './problem.ts';
import { solve } from './solve.ts';
import { type BoardInput, type StockProblem, stockProblem } from './stock.ts';

export interface BoardsPlan {
  readonly boards: readonly CutBoard[];
  readonly bound: BoardsBound | null;
  readonly checks: readonly Check[];
}

/** Share of the budget kept for gathering the rests. */
const FOR_RESTS = 0.3;

/** Plans the boards of one stock. */
export function planBoards(input: BoardInput, budget: Budget): BoardsPlan {
  const s = stockProblem(input);
  const checks: Check[] = s.tooLong.map((piece) => ({
    code: 'piece.too-long',
    severity: 'error',
    parts: [piece.part],
    figures: { piece: piece.id, length_mm: piece.overall, longest_mm: s.longest },
  }));
  const outsized = onlyOwned(s);
  const helped = outsized > 0 ? withMissing(s, outsized) : s;
  const plan = solve(helped.problem, budget.part(1 - FOR_RESTS), input.soon);
  const missing = helped === s ? -1 : helped.problem.bins.length - 1;
  if (plan.loads.some((l) => l.bin === missing)) {
    // Owned boards did not reach for the pieces that only they can give: name those and plan the others.
    const out = piecesOf(
      s,
      plan.loads.filter((l) => l.bin === missing),
    );
    const longest = Math.max(0, ...s.problem.bins.filter((b) => b.weight > 0).map((b) => b.capacity));
    const again = planBoards({ ...input, pieces: input.pieces.filter((p) => !out.includes(p.id)) }, budget);
    const more: Check[] = input.pieces
      .filter((p) => out.includes(p.id))
      .map((p) => ({
        code: 'piece.too-long',
        severity: 'error',
        parts: [p.part],
        figures: { piece: p.id, length_mm: p.overall, longest_mm: longest },
      }));
    return { ...again, checks: [...checks, ...more, ...again.checks] };
  }
  const loads = input.soon ? plan.loads : gatherRest(s.problem, plan.loads, budget);
  const boards = layBoards(s, loads, input.stock.id, input.shop.keepOffcut);
  if (boards.length === 0) return { boards, bound: null, checks };
  const bound = boundOf(s.weighed, input.stock.id, boards, plan, () => fewest(s));
  if (!bound.proved) checks.push(notProved(bound));
  return { boards, bound, checks };
}

/** Length of the longest piece that only owned boards can give; 0 when there is none. */
function onlyOwned(s: StockProblem): Mm {
  const longest = Math.max(0, ...s.problem.bins.filter((b) => b.weight > 0).map((b) => b.capacity));
  return Math.max(0, ...s.problem.items.filter((i) => i.length > longest + SAME_LENGTH).map((i) => i.length));
}

/** A board that does not exist, dearer than any plan of real ones: what lies on it cannot be cut. */
function withMissing(s: StockProblem, capacity: Mm): StockProblem {
  const dearest = Math.max(1, ...s.problem.bins.map((b) => b.weight));
  const pieces = s.problem.items.reduce((sum, i) => sum + i.count, 0);
  const missing: Bin = {
    capacity,
    room: capacity + s.problem.joints.spare,
    weight: dearest * (pieces + 1),
    limit: Infinity,
  };
  return {
    ...s,
    problem: { ...s.problem, bins: [...s.problem.bins, missing], roundUp: (w) => Math.max(0, w) },
  };
}

/** Ids of the pieces on the loads, the last of their kind. */
const piecesOf = (s: StockProblem, loads: readonly Load[]): string[] =>
  s.pieces.flatMap((list, i) => {
    const n = loads.reduce((sum, l) => sum + at(l.counts, i), 0);
    return list.slice(list.length - n).map((p) => p.id);
  });

/** Fewest boards by the longest one that can be bought. */
function fewest(s: StockProblem): number {
  const room = Math.max(0, ...s.problem.bins.filter((b) => b.weight > 0).map((b) => b.room));
  if (room === 0) return 0;
  const owned = s.problem.bins.filter((b) => b.weight === 0);
  const sizes = s.problem.items.flatMap((i) => new Array<number>(i.count).fill(i.size));
  if (owned.length === 0) return countBound(sizes, room);
  const kept = owned.reduce((sum, b) => sum + b.room * b.limit, 0);
  const rest = sizes.reduce((a, b) => a + b, 0) - kept;
  return wholeUp(rest / room);
}
