import type { Check } from '../../check/check.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Piece } from '../../joinery/piece.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { BoardsBound, CutSheet, SheetPlacement } from '../result.ts';
import { boundOf, notProved } from '../weigh.ts';
import { fewestSheets } from './bound.ts';
import { countsOn, leaves, type SheetBin, type SheetLoad } from './problem.ts';
import { type Region, regionOfBlock, sequenceOf } from './sequence.ts';
import { solveSheets } from './solve.ts';
import { blank, type SheetInput, type SheetStockProblem, sheetProblem } from './stock.ts';

export interface SheetsPlan {
  readonly sheets: readonly CutSheet[];
  readonly bound: BoardsBound | null;
  readonly checks: readonly Check[];
}

/** A rest is kept when it is as long as the shop keeps and at least this share of that wide. Common practice, no source. */
const NARROWEST = 0.25;

/** Plans the sheets of one stock. */
export function planSheets(input: SheetInput, budget: Budget): SheetsPlan {
  const s = sheetProblem(input);
  const checks = s.tooBig.map(tooBig);
  if (s.problem.items.length === 0) return { sheets: [], bound: null, checks };
  const missing = missingSheet(s);
  const bins = missing ? [...s.problem.bins, missing] : s.problem.bins;
  const roundUp = missing ? (w: number) => Math.max(0, w) : s.problem.roundUp;
  const { plan, bound } = solveSheets({ ...s.problem, bins, roundUp }, budget, input.soon);
  const loads = plan?.loads ?? [];
  const lost = new Set(piecesOn(s, loads, s.problem.bins.length));
  if (lost.size > 0 || plan === null) {
    // Owned sheets did not reach for what only they can give: name those pieces and plan the others.
    const out = plan === null ? new Set(s.pieces.flat().map((p) => p.id)) : lost;
    const again = planSheets({ ...input, pieces: input.pieces.filter((p) => !out.has(p.id)) }, budget);
    return { ...again, checks: [...input.pieces.filter((p) => out.has(p.id)).map(tooBig), ...again.checks] };
  }
  const sheets = laySheets(s, loads, input.stock.id, input.shop.keepOffcut);
  const result = boundOf(s.weighed, input.stock.id, sheets, { weight: plan.weight, bound }, () =>
    fewestSheets(s.problem),
  );
  if (!result.proved) checks.push(notProved(result));
  return { sheets, bound: result, checks };
}

function tooBig(piece: Piece): Check {
  const { w, h } = blank(piece);
  return {
    code: 'piece.too-big',
    severity: 'error',
    parts: [piece.part],
    figures: { piece: piece.id, width_mm: w, height_mm: h },
  };
}

/** A sheet that does not exist, dearer than any plan, for pieces that only owned sheets can give. */
function missingSheet(s: SheetStockProblem): SheetBin | null {
  const bought = s.problem.bins.filter((b) => b.weight > 0);
  const stranded = s.problem.items.filter(
    (i) => !i.ways.some((t) => bought.some((b) => t.w <= b.w + SAME_LENGTH && t.h <= b.h + SAME_LENGTH)),
  );
  if (stranded.length === 0) return null;
  const pieces = s.problem.items.reduce((sum, i) => sum + i.count, 0);
  return {
    w: Math.max(...stranded.flatMap((i) => i.ways.map((t) => t.w))),
    h: Math.max(...stranded.flatMap((i) => i.ways.map((t) => t.h))),
    weight: Math.max(1, ...bought.map((b) => b.weight)) * (pieces + 1),
    limit: Infinity,
  };
}

function piecesOn(s: SheetStockProblem, loads: readonly SheetLoad[], bin: number): string[] {
  const counts = countsOn(
    s.problem,
    loads.filter((load) => load.bin === bin),
  );
  return s.pieces.flatMap((list, i) => list.slice(list.length - at(counts, i)).map((p) => p.id));
}

function laySheets(s: SheetStockProblem, loads: readonly SheetLoad[], stock: string, keep: Mm): CutSheet[] {
  const queues = s.pieces.map((list) => [...list]);
  const rank = (l: SheetLoad) => (pick(s.sources, l.bin).owned === null ? 1 : 0);
  const filled = (l: SheetLoad) =>
    leaves(l.root).reduce((sum, b) => (b.item >= 0 ? sum + b.w * b.h : sum), 0);
  return [...loads]
    .sort((a, b) => rank(a) - rank(b) || a.bin - b.bin || filled(b) - filled(a))
    .map((load) => {
      const source = pick(s.sources, load.bin);
      const placements: SheetPlacement[] = [];
      const offcuts: Region[] = [];
      for (const block of leaves(load.root)) {
        const region = regionOfBlock(block, source);
        if (block.item < 0) {
          const [short, long] = [Math.min(region.w, region.h), Math.max(region.w, region.h)];
          if (long >= keep && short >= keep * NARROWEST && short > SAME_LENGTH) offcuts.push(region);
          continue;
        }
        const piece = pick(queues, block.item).shift();
        if (!piece) throw new RangeError('more pieces laid than there are');
        placements.push({ piece: piece.id, ...region, turned: block.turned });
      }
      return {
        stock,
        length: source.length,
        width: source.width,
        owned: source.owned,
        placements: placements.sort((a, b) => a.y - b.y || a.x - b.x),
        sequence: sequenceOf(load.root, source),
        offcuts: offcuts.sort((a, b) => b.w * b.h - a.w * a.h || a.y - b.y || a.x - b.x),
        cost: source.owned === null ? at(s.weighed.cost, load.bin) : 0,
      };
    });
}
