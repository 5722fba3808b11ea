import type { Owned, Shop } from '../../design/schema.ts';
import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import type { Piece } from '../../joinery/piece.ts';
import { at, pick } from '../../list/at.ts';
import type { FlatStock, ShapedStock } from '../../materials/types.ts';
import type { Mm, Money } from '../../measure/units.ts';
import { type Weighed, weigh } from '../weigh.ts';
import { type Lying, lyings } from './ends.ts';
import { jointsOf, shapeKey } from './joints.ts';
import type { Bin, Item, Problem } from './problem.ts';
import { type Stretch, stretches } from './stretch.ts';

/** A board that stretches are cut from: one that can be bought, or one that is owned. */
export interface Source {
  readonly length: Mm;
  readonly cost: Money;
  readonly owned: string | null;
  readonly count: number;
  readonly stretches: readonly Stretch[];
}

/** Where the stretches of a bin come from. */
interface Origin {
  readonly source: number;
  readonly stretch: number;
}

/** One stock's pieces and boards, put as a problem of numbers. */
export interface StockProblem {
  readonly problem: Problem;
  /** Pieces of each item, in the order in which they are given out. */
  readonly pieces: readonly (readonly Piece[])[];
  readonly shapes: readonly (readonly Lying[])[];
  readonly sources: readonly Source[];
  readonly origins: readonly (readonly Origin[])[];
  readonly weighed: Weighed;
  /** Pieces that no board is long enough for. */
  readonly tooLong: readonly Piece[];
  readonly longest: Mm;
}

export interface BoardInput {
  readonly stock: FlatStock | ShapedStock;
  readonly pieces: readonly Piece[];
  readonly owned: readonly Owned[];
  readonly shop: Shop;
  /** Only a plan that is found soon. */
  readonly soon?: boolean | undefined;
}

const byId = (a: Piece, b: Piece): number => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0);

/** Kerf of the widest cut that any of the pieces needs. */
function widestKerf(lying: readonly (readonly Lying[])[], kerf: Mm): Mm {
  return Math.max(kerf, ...lying.flatMap((ways) => ways.flatMap((w) => [w.left.kerf, w.right.kerf])));
}

export function stockProblem(input: BoardInput): StockProblem {
  const { stock, shop } = input;
  const all = [...input.pieces].sort(byId);
  const ways = all.map((piece) => lyings(piece, shop.boardKerf, stock));
  const sources = sourcesOf(input, widestKerf(ways, shop.boardKerf));
  const longest = Math.max(0, ...sources.flatMap((s) => s.stretches.map((t) => t.to - t.from)));
  const tooLong = all.filter((piece) => piece.overall > longest + SAME_LENGTH);
  const kept = all.flatMap((piece, i) => (tooLong.includes(piece) ? [] : [{ piece, ways: pick(ways, i) }]));

  const shapes: (readonly Lying[])[] = [];
  const shapeOf = new Map<string, number>();
  const sorted = kept
    .map(({ piece, ways: lying }) => {
      const key = shapeKey(lying);
      const shape = shapeOf.get(key) ?? shapes.push(lying) - 1;
      shapeOf.set(key, shape);
      return { piece, shape };
    })
    .sort((p, q) => p.shape - q.shape || p.piece.overall - q.piece.overall);
  // Lengths are of one kind up to a tolerance over the shortest of them, wherever on the tape that is.
  const groups: { readonly shape: number; readonly pieces: Piece[] }[] = [];
  for (const { piece, shape } of sorted) {
    const last = groups.at(-1);
    const alike = last?.shape === shape && piece.overall - pick(last.pieces, 0).overall <= SAME_LENGTH;
    if (last && alike) last.pieces.push(piece);
    else groups.push({ shape, pieces: [piece] });
  }
  const joints = jointsOf(shapes);
  const listed = groups
    .map((g) => {
      // The longest of pieces within tolerance of each other stands for all.
      const length = Math.max(...g.pieces.map((q) => q.overall));
      const size = Math.max(length + at(joints.half, g.shape), SAME_LENGTH * 10);
      const item: Item = { length, shape: g.shape, size, count: g.pieces.length };
      return { item, pieces: g.pieces.sort(byId), shape: g.shape };
    })
    .sort((a, b) => b.item.size - a.item.size || a.shape - b.shape);

  const weighed = weigh(
    sources.filter((s) => s.owned === null).map((s) => ({ amount: s.length, price: s.cost })),
  );
  const { bins, origins } = binsOf(sources, weighed, joints.spare);
  return {
    problem: {
      items: listed.map((l) => l.item),
      bins,
      joints,
      shapes: shapes.length,
      roundUp: weighed.roundUp,
    },
    pieces: listed.map((l) => l.pieces),
    shapes,
    sources,
    origins,
    weighed,
    tooLong,
    longest,
  };
}

/** Bought lengths first in the order of length, then what is owned in the order given. */
function sourcesOf({ stock, owned, shop }: BoardInput, kerf: Mm): Source[] {
  const cheapest = new Map<Mm, Money>();
  for (const { length, price } of stock.lengths) {
    const known = cheapest.get(length);
    if (known === undefined || (price > 0 && (known === 0 || price < known))) cheapest.set(length, price);
  }
  const bought: Source[] = [...cheapest]
    .sort((a, b) => a[0] - b[0])
    .map(([length, cost]) => ({
      length,
      cost,
      owned: null,
      count: Infinity,
      stretches: stretches(length, shop.endTrim, [], kerf),
    }))
    .filter((s) => s.stretches.length > 0);
  const kept: Source[] = owned
    .filter((o) => o.stock === stock.id)
    .map((o) => ({
      length: o.length,
      cost: 0,
      owned: o.id,
      count: o.count,
      stretches: stretches(o.length, 0, o.defects, kerf),
    }));
  return [...bought, ...kept];
}

/** Stretches of equal length are one bin, so that the search does not try the same board twice. */
function binsOf(
  sources: readonly Source[],
  weighed: Weighed,
  spare: Mm,
): { bins: Bin[]; origins: Origin[][] } {
  const bins: Bin[] = [];
  const origins: Origin[][] = [];
  const ownedBin = new Map<number, number>();
  sources.forEach((source, s) => {
    source.stretches.forEach((stretch, t) => {
      const capacity = stretch.to - stretch.from;
      const origin = { source: s, stretch: t };
      if (source.owned === null) {
        bins.push({ capacity, room: capacity + spare, weight: at(weighed.weight, s), limit: Infinity });
        origins.push([origin]);
        return;
      }
      const key = Math.round(capacity / SAME_LENGTH);
      const same = ownedBin.get(key);
      const known = same === undefined ? undefined : bins[same];
      if (same !== undefined && known) {
        bins[same] = {
          ...known,
          capacity: Math.min(known.capacity, capacity),
          limit: known.limit + source.count,
        };
        origins[same]?.push(origin);
        return;
      }
      ownedBin.set(key, bins.length);
      bins.push({ capacity, room: capacity + spare, weight: 0, limit: source.count });
      origins.push([origin]);
    });
  });
  return { bins, origins };
}
