import type { Owned, Shop } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Piece } from '../../joinery/piece.ts';
import { at, pick } from '../../list/at.ts';
import type { SheetStock } from '../../materials/types.ts';
import type { Mm, Money } from '../../measure/units.ts';
import { type Weighed, weigh } from '../weigh.ts';
import { type SheetBin, type SheetItem, type SheetProblem, THIN, type Turn } from './problem.ts';
import type { Frame } from './sequence.ts';

/** A sheet that can be bought or is owned. */
interface SheetSource extends Frame {
  readonly cost: Money;
  readonly owned: string | null;
  readonly count: number;
}

export interface SheetStockProblem {
  readonly problem: SheetProblem;
  readonly pieces: readonly (readonly Piece[])[];
  /** One a bin, in the same order. */
  readonly sources: readonly SheetSource[];
  readonly weighed: Weighed;
  readonly tooBig: readonly Piece[];
}

export interface SheetInput {
  readonly stock: SheetStock;
  readonly pieces: readonly Piece[];
  readonly owned: readonly Owned[];
  readonly shop: Shop;
  /** Only a plan that is found soon. */
  readonly soon?: boolean | undefined;
}

/**
 * The rectangle that a piece is cut to. A piece with square corners is cut as it is told, so that the fence, the
 * drawing and the cut list say one number, and pieces told apart are never cut alike; one whose outline is sawn
 * afterwards gets the rectangle around it, with wood to spare where it asks.
 */
export function blank({ overall, length, width, margin, shown }: Piece): { w: Mm; h: Mm } {
  if (overall - length > SAME_LENGTH) return { w: overall, h: width + 2 * margin };
  return { w: shown.length, h: shown.width };
}

/** Ways to lie: with the grain where both piece and sheet have one, else either. Sizes without the kerf. */
function waysOf(piece: Piece, grain: boolean): Turn[] {
  const { w, h } = blank(piece);
  const straight: Turn = { w, h, turned: false };
  const turned: Turn = { w: h, h: w, turned: true };
  if (grain && piece.grain === 'along') return [straight];
  if (grain && piece.grain === 'across') return [turned];
  return Math.abs(w - h) <= SAME_LENGTH ? [straight] : [straight, turned];
}

const byId = (a: Piece, b: Piece): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

export function sheetProblem(input: SheetInput): SheetStockProblem {
  const { stock, shop } = input;
  const kerf = shop.sheetKerf;
  const sources = sheetSources(input);
  const bought = sources.filter((s) => s.owned === null);
  const weighed = weigh(bought.map((s) => ({ amount: (s.length * s.width) / 1000, price: s.cost })));
  const bins = sources.map(
    (s, i): SheetBin => ({
      w: s.length - 2 * s.trim + kerf,
      h: s.width - 2 * s.trim + kerf,
      weight: s.owned === null ? at(weighed.weight, i) : 0,
      limit: s.count,
    }),
  );
  const groups = new Map<string, { item: SheetItem; pieces: Piece[] }>();
  const tooBig: Piece[] = [];
  for (const piece of [...input.pieces].sort(byId)) {
    const ways = waysOf(piece, stock.grain).map((t) => ({ ...t, w: t.w + kerf, h: t.h + kerf }));
    if (!ways.some((t) => bins.some((b) => t.w <= b.w + THIN && t.h <= b.h + THIN))) {
      tooBig.push(piece);
      continue;
    }
    const key = ways
      .map((t) => `${Math.round(t.w / SAME_LENGTH)}x${Math.round(t.h / SAME_LENGTH)}${t.turned}`)
      .join();
    const known = groups.get(key);
    known?.pieces.push(piece);
    const pieces = known?.pieces ?? [piece];
    const { w, h } = pick(ways, 0);
    groups.set(key, { item: { ways: known?.item.ways ?? ways, count: pieces.length, area: w * h }, pieces });
  }
  const listed = [...groups.values()].sort((a, b) => b.item.area - a.item.area);
  return {
    problem: { items: listed.map((l) => l.item), bins, roundUp: weighed.roundUp },
    pieces: listed.map((l) => l.pieces),
    sources,
    weighed,
    tooBig,
  };
}

/** What is cut off each edge of a bought sheet: a trim cut takes a whole kerf at least. */
export const trimOf = ({ edgeTrim, sheetKerf }: Shop): Mm =>
  edgeTrim > 0 ? Math.max(edgeTrim, sheetKerf) : 0;

function sheetSources({ stock, owned, shop }: SheetInput): SheetSource[] {
  const kerf = shop.sheetKerf;
  const trim = trimOf(shop);
  const bought = [...stock.sizes]
    .sort((a, b) => a.length * a.width - b.length * b.width || a.price - b.price || a.length - b.length)
    .map(
      (s): SheetSource => ({
        length: s.length,
        width: s.width,
        trim,
        kerf,
        cost: s.price,
        owned: null,
        count: Infinity,
      }),
    )
    .filter((s) => s.length > 2 * s.trim && s.width > 2 * s.trim);
  const kept = owned.flatMap((o): SheetSource[] =>
    o.stock === stock.id && o.width !== undefined
      ? [{ length: o.length, width: o.width, trim: 0, kerf, cost: 0, owned: o.id, count: o.count }]
      : [],
  );
  return [...bought, ...kept];
}
