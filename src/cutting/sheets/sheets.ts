import type { Check } from '../../check/check.ts';
import { areaOf } from '../../geometry/region.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Piece } from '../../joinery/piece.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { BoardsBound, CutSheet, SheetPlacement } from '../result.ts';
import { boundOf, notProved } from '../weigh.ts';
import { fewestSheets } from './bound.ts';
import { nestsOf, unnested } from './nest.ts';
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

/**
 * Plans the sheets of one stock: each piece by itself, and, where that comes cheaper or leaves a larger rest, with pieces
 * nested in each other, which gets the steps that are left. How few sheets nests may come down to is not searched: then
 * nothing is proved but by area.
 */
export function planSheets(input: SheetInput, budget: Budget): SheetsPlan {
  const { pieces, shop } = input;
  const fits = (whole: Piece) => sheetProblem({ ...input, pieces: [whole] }).tooBig.length === 0;
  const apart = (own: readonly Piece[], share: Budget) => planApart({ ...input, pieces: own }, share);
  const nests = nestsOf(pieces, shop.sheetKerf, fits);
  if (nests.length === 0) return apart(pieces, budget);
  const nested = new Set(nests.flatMap((nest) => nest.pieces));
  const plain = apart(pieces, budget);
  const wholes = nests.map(({ whole }) => whole);
  const other = apart([...pieces.filter((piece) => !nested.has(piece)), ...wholes], budget);
  const sheets = other.sheets.map((one) => unnested(one, nests));
  const laid = (on: readonly CutSheet[]) => on.reduce((sum, { placements }) => sum + placements.length, 0);
  const better = laid(sheets) === laid(plain.sheets) && isBetter(sheets, plain.sheets);
  const best = better ? { ...other, sheets } : plain;
  const checks = plain.checks.filter(({ code }) => code !== 'cutting.not-proved');
  const bound = best.bound && boundByArea(input, best.bound);
  return { ...best, bound, checks: bound && !bound.proved ? [...checks, notProved(bound)] : checks };
}

/** Whether sheets cost less, are fewer at that, or leave a larger rest: in the order in which cutting weighs them. */
function isBetter(sheets: readonly CutSheet[], than: readonly CutSheet[]): boolean {
  const figures = (of: readonly CutSheet[]) => {
    const bought = of.filter(({ owned }) => owned === null);
    const rests = of.flatMap(({ offcuts }) => offcuts.map(({ w, h }) => w * h));
    return [
      bought.reduce((sum, { cost }) => sum + cost, 0),
      bought.length,
      bought.reduce((sum, { length, width }) => sum + length * width, 0),
      -Math.max(0, ...rests),
    ];
  };
  const [own, others] = [figures(sheets), figures(than)];
  const first = own.findIndex((figure, i) => Math.abs(figure - at(others, i)) > SAME_LENGTH);
  return first >= 0 && at(own, first) < at(others, first);
}

/** The bound that holds however pieces lie in each other: as much wood as they have. */
function boundByArea({ pieces, owned, stock }: SheetInput, bound: BoardsBound): BoardsBound {
  const wood = pieces.reduce((sum, { outline, holes }) => sum + areaOf([{ outer: outline, holes }]), 0);
  const there = owned
    .filter((one) => one.stock === stock.id)
    .reduce((sum, { length, width = 0, count }) => sum + length * width * count, 0);
  const need = wood - there;
  const sizes = stock.sizes.map(({ length, width, price }) => ({ area: length * width, price }));
  const least = need <= 0 ? 0 : Math.ceil(need / Math.max(...sizes.map(({ area }) => area)));
  const cheapest = Math.min(...sizes.map(({ price }) => price));
  const rate = Math.min(...sizes.map(({ area, price }) => price / area));
  const lowerBound = Math.min(bound.lowerBound, least);
  const lowerCost = Math.min(bound.lowerCost, need <= 0 ? 0 : Math.max(cheapest, need * rate));
  const priced = sizes.some(({ price }) => price > 0);
  const proved = priced ? bound.cost <= lowerCost + SAME_LENGTH : bound.proved && bound.used <= lowerBound;
  return { ...bound, lowerBound, lowerCost, proved };
}

function planApart(input: SheetInput, budget: Budget): SheetsPlan {
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
    const again = planApart({ ...input, pieces: input.pieces.filter((p) => !out.has(p.id)) }, budget);
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
