import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Filled } from './fill.ts';
import { areaOf, type Block, leaf, type SheetProblem, THIN } from './problem.ts';

/**
 * A block that holds a given set of items with nothing to spare: an item in one of its ways, or two
 * smaller blocks side by side (`cross`) or one upon the other (`rip`).
 */
export type Made =
  | { readonly w: Mm; readonly h: Mm; readonly item: number; readonly turned: boolean }
  | {
      readonly w: Mm;
      readonly h: Mm;
      readonly kind: 'rip' | 'cross';
      readonly low: Made;
      readonly high: Made;
    };

/** Cuts a block out of a larger one, the larger rest first and whole, then cuts it up. */
export function cutOut(block: Block, made: Made): Block {
  const over = { w: block.w - made.w, h: block.h - made.h };
  const rip = block.w * over.h >= over.w * block.h;
  for (const kind of rip ? (['rip', 'cross'] as const) : (['cross', 'rip'] as const)) {
    const spare = kind === 'rip' ? over.h : over.w;
    if (spare > THIN)
      return inTwo(
        block,
        kind,
        kind === 'rip' ? made.h : made.w,
        (low) => cutOut(low, made),
        (b) => b,
      );
  }
  if ('item' in made) return { ...block, item: made.item, turned: made.turned };
  const size = made.kind === 'rip' ? made.low.h : made.low.w;
  return inTwo(
    block,
    made.kind,
    size,
    (b) => cutOut(b, made.low),
    (b) => cutOut(b, made.high),
  );
}

function inTwo(
  block: Block,
  kind: 'rip' | 'cross',
  size: Mm,
  low: (b: Block) => Block,
  high: (b: Block) => Block,
): Block {
  const { x, y, w, h } = block;
  const [a, b] =
    kind === 'rip'
      ? [leaf(x, y, w, size), leaf(x, y + size, w, h - size)]
      : [leaf(x, y, size, h), leaf(x + size, y, w - size, h)];
  return { ...block, cut: { kind, low: low(a), high: high(b) } };
}

/** A sheet from which a block is cut. */
export function filledWith(p: SheetProblem, bin: number, made: Made): Filled {
  const { w, h } = pick(p.bins, bin);
  const counts = p.items.map(() => 0);
  countInto(counts, made);
  return { root: cutOut(leaf(0, 0, w, h), made), counts, area: areaOf(p, counts) };
}

function countInto(counts: number[], made: Made): void {
  if ('item' in made) {
    counts[made.item] = at(counts, made.item) + 1;
    return;
  }
  countInto(counts, made.low);
  countInto(counts, made.high);
}
