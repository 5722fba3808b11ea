import { at, pick } from '../../list/at.ts';
import type { Budget } from '../budget.ts';
import { someOf } from '../random.ts';
import { fullest } from './assemble.ts';
import { packSheet } from './blocks.ts';
import { type Filled, planOf } from './fill.ts';
import { areaOf, countsOn, type SheetLoad, type SheetPlan, type SheetProblem } from './problem.ts';

/** Sets of sheets looked through for those that may do. */
const MOST_SETS = 50_000;
/** A set is worth trying for so many times the area of a lighter one. */
const MORE_ROOM = 1.02;
/** Ways of filling tried for each sheet beside putting parts together. */
const TRIES = 6;
/** How far chance bends what a piece is worth, and how much it gains each time it is left over. */
const STIR = 0.25;
/** Up to this power of its area a piece is worth more for each unit of it, as while plans are made sheet by sheet. */
const MOST_LEAN = 0.1;
const GAIN = 1.03;
/** Sheets filled again in one round, and owned ones of each kind that lie idle and take part. */
const MOST_REDONE = 3;
const IDLE = 2;

/**
 * Sheets to buy: how many of each kind, less than `under` in weight and no less than `bound`, with area enough. A set
 * that gives hardly more area than a lighter one is no easier and is left out. The heaviest, which is the easiest, first.
 */
export function setsBelow(p: SheetProblem, under: number, bound: number): number[][] {
  const area = p.items.reduce((sum, i) => sum + i.area * i.count, 0);
  const owned = p.bins.reduce((sum, b) => (b.weight === 0 ? sum + b.w * b.h * b.limit : sum), 0);
  const found: { readonly set: number[]; readonly weight: number; readonly area: number }[] = [];
  const set = p.bins.map(() => 0);
  let steps = 0;
  const go = (b: number, weight: number, sum: number): void => {
    steps += 1;
    if (weight >= under || steps > MOST_SETS) return;
    if (b === p.bins.length) {
      if (weight >= bound && sum + owned >= area) found.push({ set: [...set], weight, area: sum });
      return;
    }
    const bin = pick(p.bins, b);
    if (bin.weight === 0) {
      go(b + 1, weight, sum);
      return;
    }
    for (let n = 0; weight + n * bin.weight < under; n++) {
      set[b] = n;
      go(b + 1, weight + n * bin.weight, sum + n * bin.w * bin.h);
    }
    set[b] = 0;
  };
  go(0, 0, 0);
  found.sort((a, b) => a.weight - b.weight || b.area - a.area);
  let most = 0;
  const kept = found.filter((f) => {
    const more = f.area > most * MORE_ROOM;
    if (more) most = f.area;
    return more;
  });
  return kept.reverse().map((f) => f.set);
}

/** A sheet of the set, and what is cut from it. */
interface Slot {
  readonly bin: number;
  readonly filled: Pick<Filled, 'root' | 'counts'> | null;
}

/**
 * Puts all pieces onto a given set of sheets, beside those that are owned, or as many as the budget lets it: some
 * sheets are taken apart and filled again with what was left over, for as long as the budget lasts and something is
 * left. What stays over gains in worth. Null when something stays over in the end.
 *
 * @param start a plan on other sheets; what of it goes onto these is kept to begin with
 */
export function ontoSet(
  p: SheetProblem,
  set: readonly number[],
  start: SheetPlan,
  random: () => number,
  budget: Budget,
): SheetPlan | null {
  const worth = p.items.map(() => 1);
  let slots = slotsOf(p, set, start.loads);
  let over = p.items.map(({ count }, i) =>
    slots.reduce((n, s) => (s.filled ? n - at(s.filled.counts, i) : n), count),
  );
  let left = areaOf(p, over);
  while (left > 0 && !budget.done()) {
    const redo = chosen(slots, random);
    const need = [...over];
    for (const { filled } of redo) {
      filled?.counts.forEach((n, i) => {
        need[i] = at(need, i) + n;
      });
    }
    const lean = MOST_LEAN * random();
    const bent = worth.map((v, i) => v * pick(p.items, i).area ** lean * (1 + STIR * (random() - 0.5)));
    const again = redo.map(({ bin }): Slot => {
      const filled = mostWorth(p, bin, need, bent, random, budget);
      filled?.counts.forEach((n, i) => {
        need[i] = at(need, i) - n;
      });
      return { bin, filled };
    });
    need.forEach((n, i) => {
      if (n > 0) worth[i] = at(worth, i) * GAIN;
    });
    const leftNow = areaOf(p, need);
    if (leftNow > left) continue;
    slots = [...slots.filter((s) => !redo.includes(s)), ...again];
    over = need;
    left = leftNow;
  }
  if (left > 0) return null;
  return planOf(
    p,
    slots.flatMap(({ bin, filled }) => (filled === null ? [] : [{ bin, root: filled.root }])),
  );
}

/** The sheets of a set with those that are owned; each takes over what a plan cuts from one like it. */
function slotsOf(p: SheetProblem, set: readonly number[], loads: readonly SheetLoad[]): Slot[] {
  return p.bins.flatMap((bin, b) => {
    const like = loads.filter((load) => load.bin === b);
    const many = bin.weight === 0 ? Math.min(bin.limit, like.length + IDLE) : at(set, b);
    return Array.from({ length: many }, (_, k): Slot => {
      const load = like[k];
      return { bin: b, filled: load === undefined ? null : { root: load.root, counts: countsOn(p, [load]) } };
    });
  });
}

/** Sheets to fill again: one that is empty, if there is one, and one to three others. The larger ones come first. */
function chosen(slots: readonly Slot[], random: () => number): Slot[] {
  const empty = slots.find((s) => s.filled === null);
  const picked = someOf(
    slots.filter((s) => s !== empty),
    MOST_REDONE,
    random,
  );
  const redo = empty === undefined ? picked : [empty, ...picked];
  return redo.sort((a, b) => a.bin - b.bin);
}

function mostWorth(
  p: SheetProblem,
  bin: number,
  need: readonly number[],
  worth: readonly number[],
  random: () => number,
  budget: Budget,
): Filled | null {
  const packed = packSheet(p, bin, need, (i) => at(worth, i), budget);
  const filled = fullest(
    p,
    bin,
    need,
    areaOf(p, need),
    { tries: TRIES, stir: STIR, search: false, lean: 0 },
    random,
    budget,
  );
  const value = (f: Filled | null) =>
    f === null ? 0 : f.counts.reduce((sum, n, i) => sum + n * pick(p.items, i).area * at(worth, i), 0);
  const best = value(packed) >= value(filled) ? packed : filled;
  return best === null || best.area === 0 ? null : best;
}
