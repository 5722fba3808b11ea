import type { Mm } from '../../measure/units.ts';
import type { SheetCut } from '../result.ts';
import { type Block, THIN } from './problem.ts';

/** A cut sheet in its own coordinates: the blocks without the kerfs that they were planned with. */
export interface Region {
  readonly x: Mm;
  readonly y: Mm;
  readonly w: Mm;
  readonly h: Mm;
}

/** Where the planned blocks lie on the real sheet. */
export interface Frame {
  readonly length: Mm;
  readonly width: Mm;
  readonly trim: Mm;
  readonly kerf: Mm;
}

/** The real extent of a block; nothing where the blade takes it whole. */
export function regionOfBlock(b: Block, f: Frame): Region {
  return { x: f.trim + b.x, y: f.trim + b.y, w: Math.max(0, b.w - f.kerf), h: Math.max(0, b.h - f.kerf) };
}

/**
 * The cuts in the order a person makes them: the edges are trimmed, then of the cuts that can be made the
 * rips come first and the longest of them before the others, so that a sheet soon is in pieces that one
 * person can hold.
 */
export function sequenceOf(root: Block, f: Frame): SheetCut[] {
  const cuts: SheetCut[] = trimCuts(f);
  const ready: Block[] = root.cut ? [root] : [];
  while (ready.length > 0) {
    ready.sort(first);
    const block = ready.shift();
    if (!block?.cut) break;
    const { kind, low, high } = block.cut;
    const of = regionOfBlock(block, f);
    const size = regionOfBlock(low, f);
    cuts.push({ number: cuts.length + 1, kind, of, fence: kind === 'rip' ? size.h : size.w });
    for (const child of [low, high]) if (child.cut) ready.push(child);
  }
  return cuts;
}

const run = (b: Block): Mm => (b.cut?.kind === 'rip' ? b.w : b.h);

function first(a: Block, b: Block): number {
  if (a.cut?.kind !== b.cut?.kind) return a.cut?.kind === 'rip' ? -1 : 1;
  return Math.abs(run(b) - run(a)) > THIN ? run(b) - run(a) : a.y - b.y || a.x - b.x;
}

/** The four trim cuts: the blade runs in what is cut off, which is never thinner than it. */
export function trimCuts({ length, width, trim, kerf }: Frame): SheetCut[] {
  if (trim <= THIN) return [];
  const near = trim - kerf;
  const [w, h] = [length - 2 * trim, width - 2 * trim];
  return [
    { number: 1, kind: 'rip', of: { x: 0, y: 0, w: length, h: width }, fence: near },
    { number: 2, kind: 'rip', of: { x: 0, y: trim, w: length, h: width - trim }, fence: h },
    { number: 3, kind: 'cross', of: { x: 0, y: trim, w: length, h }, fence: near },
    { number: 4, kind: 'cross', of: { x: trim, y: trim, w: length - trim, h }, fence: w },
  ];
}
