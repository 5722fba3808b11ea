import { at, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import { planOf } from './fill.ts';
import { cutOut, type Made } from './made.ts';
import { leaf, type SheetLoad, type SheetPlan, type SheetProblem, THIN } from './problem.ts';

/** Sets of items are numbered in mixed radix; more sets than this are too many to try. */
const MOST_SETS = 4096;

/**
 * The least weight and, among plans of that weight, the largest rest, by trying every guillotine pattern:
 * for every set of items all smallest blocks that hold it (none can be narrower without being higher),
 * built from the smallest blocks of its parts, then the best way to share the items among sheets. Null
 * when there are too many sets or the budget ends first.
 */
export function exactPlan(p: SheetProblem, limits: readonly number[], budget: Budget): SheetPlan | null {
  const radix = p.items.map((i) => i.count + 1);
  const sets = radix.reduce((a, b) => a * b, 1);
  if (sets > MOST_SETS) return null;
  const blocks = smallestBlocks(p, radix, sets, budget);
  return blocks === null ? null : shared(p, blocks, radix, limits, budget);
}

const digits = (set: number, radix: readonly number[]): number[] =>
  radix.map((r) => {
    const d = set % r;
    set = (set - d) / r;
    return d;
  });

/** Every part of a set that takes no more of any item than the set has, the empty one and the set left out. */
function partsOf(set: number, radix: readonly number[]): number[] {
  let parts = [0];
  let unit = 1;
  digits(set, radix).forEach((most, i) => {
    const grown: number[] = [];
    for (let n = 0; n <= most; n++) for (const q of parts) grown.push(q + n * unit);
    parts = grown;
    unit *= at(radix, i);
  });
  return parts.filter((q) => q !== 0 && q !== set);
}

function smallestBlocks(
  p: SheetProblem,
  radix: readonly number[],
  sets: number,
  budget: Budget,
): Made[][] | null {
  const room = p.bins.map((b) => ({ w: b.w + THIN, h: b.h + THIN }));
  const blocks: Made[][] = [[]];
  const unitOf: number[] = [];
  let unit = 1;
  for (const r of radix) {
    unitOf.push(unit);
    unit *= r;
  }
  for (let set = 1; set < sets; set++) {
    const found: Made[] = [];
    const add = (made: Made) => {
      if (!room.some((r) => made.w <= r.w && made.h <= r.h)) return;
      if (found.some((f) => f.w <= made.w + THIN && f.h <= made.h + THIN)) return;
      const kept = found.filter((f) => !(made.w <= f.w + THIN && made.h <= f.h + THIN));
      found.length = 0;
      found.push(...kept, made);
    };
    const single = unitOf.indexOf(set);
    if (single >= 0) for (const t of pick(p.items, single).ways) add({ ...t, item: single });
    for (const part of partsOf(set, radix)) {
      if (part > set - part) continue;
      for (const low of pick(blocks, part)) {
        for (const high of pick(blocks, set - part)) {
          if (!budget.spend()) return null;
          add({ w: low.w + high.w, h: Math.max(low.h, high.h), kind: 'cross', low, high });
          add({ w: Math.max(low.w, high.w), h: low.h + high.h, kind: 'rip', low, high });
        }
      }
    }
    blocks.push(found);
  }
  return blocks;
}

interface Share {
  readonly weight: number;
  readonly rest: number;
  readonly bin: number;
  readonly part: number;
  readonly made: Made | null;
}

const outerRest = (w: Mm, h: Mm, made: Made): number => Math.max(w * (h - made.h), (w - made.w) * h);

/** Dynamic program over the sets still to place and the owned sheets still there. */
function shared(
  p: SheetProblem,
  blocks: readonly (readonly Made[])[],
  radix: readonly number[],
  limits: readonly number[],
  budget: Budget,
): SheetPlan | null {
  const free = [...limits];
  const memo = new Map<string, Share>();
  let stopped = false;
  const best = (set: number): Share => {
    if (set === 0) return { weight: 0, rest: 0, bin: -1, part: 0, made: null };
    const key = `${set}/${free.map((n) => (Number.isFinite(n) ? n : '')).join()}`;
    const known = memo.get(key);
    if (known) return known;
    let top: Share = { weight: Infinity, rest: 0, bin: -1, part: 0, made: null };
    const all = digits(set, radix);
    const first = all.findIndex((n) => n > 0);
    for (const part of [...partsOf(set, radix), set]) {
      // The first item left is on the next sheet: every sharing is met once.
      if (at(digits(part, radix), first) === 0) continue;
      for (let b = 0; b < p.bins.length; b++) {
        if (at(free, b) <= 0) continue;
        if (!budget.spend()) {
          stopped = true;
          return top;
        }
        const { w, h, weight } = pick(p.bins, b);
        let made: Made | null = null;
        for (const m of pick(blocks, part)) {
          if (m.w > w + THIN || m.h > h + THIN) continue;
          if (made === null || outerRest(w, h, m) > outerRest(w, h, made) + THIN) made = m;
        }
        if (made === null) continue;
        free[b] = at(free, b) - 1;
        const others = best(set - part);
        free[b] = at(free, b) + 1;
        const sum = weight + others.weight;
        const rest = Math.max(outerRest(w, h, made), others.rest);
        if (sum < top.weight || (sum === top.weight && rest > top.rest + THIN)) {
          top = { weight: sum, rest, bin: b, part, made };
        }
      }
    }
    memo.set(key, top);
    return top;
  };
  let set = blocks.length - 1;
  const whole = best(set);
  if (stopped || whole.weight === Infinity) return null;
  const loads: SheetLoad[] = [];
  while (set > 0) {
    const step = best(set);
    if (step.made === null) return null;
    const { w, h } = pick(p.bins, step.bin);
    loads.push({ bin: step.bin, root: cutOut(leaf(0, 0, w, h), step.made) });
    free[step.bin] = at(free, step.bin) - 1;
    set -= step.part;
  }
  return planOf(p, loads);
}
