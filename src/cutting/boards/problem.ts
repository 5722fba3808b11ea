import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { Fit, Joints } from './joints.ts';

/** Pieces that are alike for cutting: same length, same ends. */
export interface Item {
  readonly length: Mm;
  readonly shape: number;
  /** Length and its share of the gaps: sizes on a board never add up to more than its `room`. */
  readonly size: Mm;
  readonly count: number;
}

/** Stretches of board that are alike. */
export interface Bin {
  readonly capacity: Mm;
  /** Capacity in terms of sizes. */
  readonly room: Mm;
  /** Zero for what is owned. */
  readonly weight: number;
  /** How many there are; `Infinity` for what can be bought. */
  readonly limit: number;
}

/** How many of each item; the index is the item's. */
export type Counts = readonly number[];

/** One filled stretch. */
export interface Load {
  readonly bin: number;
  readonly counts: Counts;
}

export interface Problem {
  /** Longest size first. */
  readonly items: readonly Item[];
  readonly bins: readonly Bin[];
  readonly joints: Joints;
  readonly shapes: number;
  roundUp(weight: number): number;
}

export const weightOf = (p: Problem, loads: readonly Load[]): number =>
  loads.reduce((sum, l) => sum + pick(p.bins, l.bin).weight, 0);

export const nothing = (p: Problem): number[] => new Array<number>(p.items.length).fill(0);
export const demand = (p: Problem): number[] => p.items.map((i) => i.count);
export function totalOf(counts: Counts): number {
  let sum = 0;
  for (let i = 0; i < counts.length; i++) sum += at(counts, i);
  return sum;
}

/** Length of board that the items take side by side, the gaps between them included. */
export function taken(p: Problem, counts: Counts): Mm {
  const n = totalOf(counts);
  if (n === 0) return 0;
  let bare = 0;
  for (let i = 0; i < counts.length; i++) {
    if (at(counts, i) > 0) bare += pick(p.items, i).length * at(counts, i);
  }
  if (p.joints.constant !== null) return bare + (n - 1) * p.joints.constant;
  return bare + p.joints.row(shapeCounts(p, counts)).gaps;
}

export function shapeCounts(p: Problem, counts: Counts): number[] {
  const shapes = new Array<number>(p.shapes).fill(0);
  p.items.forEach((item, i) => {
    shapes[item.shape] = at(shapes, item.shape) + at(counts, i);
  });
  return shapes;
}

/** Whether the items fit side by side: by the widest gaps where that is enough, else in their best order. */
export function fits(p: Problem, counts: Counts, capacity: Mm, budget: Budget): Fit {
  let n = 0;
  let bare = 0;
  for (let i = 0; i < counts.length; i++) {
    const c = at(counts, i);
    if (c === 0) continue;
    n += c;
    bare += c * pick(p.items, i).length;
  }
  const room = capacity + SAME_LENGTH - bare;
  const { constant, widest } = p.joints;
  if (Math.max(0, n - 1) * (constant ?? widest) <= room) return 'yes';
  return constant === null ? p.joints.fit(shapeCounts(p, counts), room, budget) : 'no';
}

export const minus = (from: Counts, less: Counts): number[] => from.map((n, i) => n - at(less, i));
export const plus = (a: Counts, b: Counts): number[] => a.map((n, i) => n + at(b, i));
