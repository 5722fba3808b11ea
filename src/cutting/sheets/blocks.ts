import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, lastOf, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { Filled } from './fill.ts';
import { filledWith, type Made } from './made.ts';
import type { SheetProblem } from './problem.ts';

/** Pieces put together, with what they are worth for the area that they take. */
type Part = Made & {
  readonly value: number;
  readonly rate: number;
  /** Items, each once, and how many of each. */
  readonly items: readonly number[];
  readonly times: readonly number[];
};

/** Parts of up to so many pieces are put together, and so many of each number of pieces are kept. */
const MOST_PIECES = 6;
const MOST_PARTS = 240;
/** Parts that fill the sheet from edge to edge one way, and rows of such parts, that are kept. */
const MOST_SLABS = 300;
const MOST_ROWS = 40;
/** Pairs of parts that are looked at in the time of one node of a search. */
const PAIRS = 100;

/** What is put together, within which limits. */
interface Task {
  readonly w: Mm;
  readonly h: Mm;
  readonly need: readonly number[];
  /** Two parts are joined where their sides differ by no more than this share. */
  readonly slack: number;
  readonly budget: Budget;
}

/**
 * Fills one sheet by putting pieces together to ever larger parts that waste little (after P. Y. Wang, Operations
 * Research 31, 1983), of these slabs from one edge of the sheet to the other, and of slabs the sheet. The best at
 * each step are kept, so that it is quick and not exact.
 *
 * @param worth value of a piece of an item for each unit of its area; 1 for the fullest sheet
 */
export function packSheet(
  p: SheetProblem,
  bin: number,
  need: readonly number[],
  worth: (item: number) => number,
  budget: Budget,
): Filled | null {
  const { w, h } = pick(p.bins, bin);
  const pieces = need.reduce((a, b) => a + b, 0);
  const task: Task = { w, h, need, slack: Math.min(0.3, Math.max(0.04, 1 / pieces)), budget };
  const levels = partsFor(task, singles(p, task, worth));
  const all = levels.flat();
  const best = [...packed(task, all, 'rip'), ...packed(task, all, 'cross')].reduce<Part | null>(
    (a, b) => (a === null || b.value > a.value ? b : a),
    null,
  );
  return best && filledWith(p, bin, best);
}

function singles(p: SheetProblem, { w, h, need }: Task, worth: (item: number) => number): Part[] {
  return p.items.flatMap(({ ways, area }, item): Part[] => {
    if (at(need, item) === 0) return [];
    const rate = worth(item);
    return ways
      .filter((t) => t.w <= w + SAME_LENGTH && t.h <= h + SAME_LENGTH)
      .map((t) => ({ ...t, item, value: area * rate, rate, items: [item], times: [1] }));
  });
}

/** Counts of one part, to see whether others go with it. */
function counter(need: readonly number[]) {
  const left = Int32Array.from(need);
  const add = (item: number, n: number) => {
    left[item] = at(left, item) + n;
  };
  return {
    take: (part: Part) => {
      for (let k = 0; k < part.items.length; k++) add(at(part.items, k), -at(part.times, k));
    },
    give: (part: Part) => {
      for (let k = 0; k < part.items.length; k++) add(at(part.items, k), at(part.times, k));
    },
    has: ({ items, times }: Part): boolean => {
      for (let k = 0; k < items.length; k++) if (at(left, at(items, k)) < at(times, k)) return false;
      return true;
    },
  };
}

function joined(kind: 'rip' | 'cross', low: Part, high: Part): Part {
  const across = kind === 'cross';
  const w = across ? low.w + high.w : Math.max(low.w, high.w);
  const h = across ? Math.max(low.h, high.h) : low.h + high.h;
  const items = [...low.items];
  const times = [...low.times];
  high.items.forEach((item, k) => {
    const known = items.indexOf(item);
    if (known >= 0) times[known] = at(times, known) + at(high.times, k);
    else {
      items.push(item);
      times.push(at(high.times, k));
    }
  });
  const value = low.value + high.value;
  return { kind, w, h, low, high, value, rate: value / (w * h), items, times };
}

/** The same pieces in as much room: of those one is enough. */
const keyOf = ({ items, times, w, h }: Part): number =>
  Math.round(
    1e3 *
      (items.reduce((sum, item, k) => sum + at(times, k) * Math.sqrt(item + 2), 0) * 977 + 3.1 * w + 1.7 * h),
  );

/** Keeps the parts with the most worth for their area. */
function keeper(most: number, rated: (part: Part) => number) {
  let list: { readonly part: Part; readonly rate: number }[] = [];
  const known = new Set<number>();
  let least = -1;
  const cut = () => {
    list.sort((a, b) => b.rate - a.rate);
    list = list.slice(0, most);
    if (list.length === most) least = lastOf(list).rate;
  };
  return {
    wants: (rate: number): boolean => rate > least,
    keep: (part: Part) => {
      const key = keyOf(part);
      if (known.has(key)) return;
      known.add(key);
      list.push({ part, rate: rated(part) });
      if (list.length >= 2 * most) cut();
    },
    best: (): Part[] => {
      cut();
      return list.map(({ part }) => part);
    },
  };
}

/** Index of the first part in rising order of a side that is not under `from`. */
function firstFrom(list: readonly Part[], side: 'w' | 'h', from: Mm): number {
  let low = 0;
  let high = list.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (pick(list, mid)[side] < from) low = mid + 1;
    else high = mid;
  }
  return low;
}

const rising = (list: readonly Part[], side: 'w' | 'h'): Part[] =>
  [...list].sort((a, b) => a[side] - b[side]);

const WAYS = [
  { kind: 'cross', along: 'w', across: 'h' },
  { kind: 'rip', along: 'h', across: 'w' },
] as const;

/** The best parts of one piece, of two, and so on. */
function partsFor(task: Task, single: readonly Part[]): Part[][] {
  const levels: Part[][] = [[...single]];
  const sorted = { w: [rising(single, 'w')], h: [rising(single, 'h')] };
  const count = counter(task.need);
  for (let n = 2; n <= MOST_PIECES && !task.budget.done(); n++) {
    const kept = keeper(MOST_PARTS, (part) => part.rate);
    for (let a = 1; a <= n / 2; a++) {
      for (const low of pick(levels, a - 1)) {
        count.take(low);
        for (const way of WAYS) {
          pairUp(task, low, pick(sorted[way.across], n - a - 1), way, (high, rate) => {
            if (kept.wants(rate) && count.has(high)) kept.keep(joined(way.kind, low, high));
          });
        }
        count.give(low);
      }
    }
    const level = kept.best();
    levels.push(level);
    sorted.w.push(rising(level, 'w'));
    sorted.h.push(rising(level, 'h'));
  }
  return levels;
}

/** Offers the parts that go beside another without much waste, with the rate that both would have. */
function pairUp(
  task: Task,
  low: Part,
  list: readonly Part[],
  { along, across }: (typeof WAYS)[number],
  offer: (high: Part, rate: number) => void,
): void {
  const side = low[across];
  const room = task[along] - low[along] + SAME_LENGTH;
  const to = side / (1 - task.slack);
  let k = firstFrom(list, across, side * (1 - task.slack));
  const start = k;
  for (; k < list.length; k++) {
    const high = pick(list, k);
    if (high[across] > to) break;
    if (high[along] > room) continue;
    const area = (low[along] + high[along]) * Math.max(side, high[across]);
    offer(high, (low.value + high.value) / area);
  }
  for (let spent = start; spent < k; spent += PAIRS) task.budget.spend();
}

/** Whole sheets of slabs that reach from edge to edge: upright ones side by side, or lying ones upon each other. */
function packed(task: Task, parts: readonly Part[], kind: 'rip' | 'cross'): Part[] {
  const [across, along] = WAYS;
  const slabWay = kind === 'rip' ? along : across;
  const rowWay = kind === 'rip' ? across : along;
  const length = task[slabWay.along];
  const slabs = slabsOf(task, parts, slabWay);
  const count = counter(task.need);
  interface Row {
    readonly part: Part;
    readonly last: number;
  }
  const full: Part[] = [];
  let best = 0;
  const finish = (row: Part) => {
    const filled = filledUp(task, row, parts, rowWay, slabWay);
    if (filled.value > best) {
      best = filled.value;
      full.push(filled);
    }
  };
  let rows: Row[] = slabs.map((part, last) => ({ part, last })).slice(0, MOST_ROWS);
  while (rows.length > 0 && !task.budget.done()) {
    const next: (Row & { readonly rate: number })[] = [];
    let least = -1;
    for (const { part, last } of rows) {
      count.take(part);
      const room = task[rowWay.along] - part[rowWay.along] + SAME_LENGTH;
      for (let k = last; k < slabs.length; k++) {
        const slab = pick(slabs, k);
        if (slab[rowWay.along] > room) continue;
        const rate = (part.value + slab.value) / ((part[rowWay.along] + slab[rowWay.along]) * length);
        if (rate <= least || !count.has(slab)) continue;
        next.push({ part: joined(rowWay.kind, part, slab), last: k, rate });
        if (next.length >= 2 * MOST_ROWS) {
          next.sort((a, b) => b.rate - a.rate);
          next.length = MOST_ROWS;
          least = pick(next, MOST_ROWS - 1).rate;
        }
      }
      count.give(part);
      for (let spent = last; spent < slabs.length; spent += PAIRS) task.budget.spend();
      finish(part);
    }
    rows = next.sort((a, b) => b.rate - a.rate).slice(0, MOST_ROWS);
  }
  return full;
}

/** Parts, and pairs of parts, that reach nearly from edge to edge; those with the most worth for a whole slab. */
function slabsOf(task: Task, parts: readonly Part[], way: (typeof WAYS)[number]): Part[] {
  const length = task[way.along];
  const rated = (part: Part) => part.value / (length * part[way.across]);
  const kept = keeper(MOST_SLABS, rated);
  const count = counter(task.need);
  const order = rising(parts, way.across);
  const shortest = length * (1 - 2 * task.slack);
  for (const low of parts) {
    if (low[way.along] >= shortest && kept.wants(rated(low))) kept.keep(low);
    count.take(low);
    pairUp(task, low, order, way, (high) => {
      const long = low[way.along] + high[way.along];
      if (long < shortest || low[way.along] < high[way.along]) return;
      const rate = (low.value + high.value) / (length * Math.max(low[way.across], high[way.across]));
      if (kept.wants(rate) && count.has(high)) kept.keep(joined(way.kind, low, high));
    });
    count.give(low);
  }
  return kept.best();
}

/** The room beside a row is filled with the parts of most worth that go there, one upon the other. */
function filledUp(
  task: Task,
  row: Part,
  parts: readonly Part[],
  rowWay: (typeof WAYS)[number],
  slabWay: (typeof WAYS)[number],
): Part {
  const count = counter(task.need);
  count.take(row);
  const wide = task[rowWay.along] - row[rowWay.along] + SAME_LENGTH;
  let beside: Part | null = null;
  for (;;) {
    const long: Mm = task[slabWay.along] - (beside?.[slabWay.along] ?? 0) + SAME_LENGTH;
    let best: Part | null = null;
    for (const part of parts) {
      if (part[rowWay.along] > wide || part[slabWay.along] > long) continue;
      if ((best === null || part.value > best.value) && count.has(part)) best = part;
    }
    for (let spent = 0; spent < parts.length; spent += PAIRS) task.budget.spend();
    if (best === null) break;
    count.take(best);
    beside = beside === null ? best : joined(slabWay.kind, beside, best);
  }
  return beside === null ? row : joined(rowWay.kind, row, beside);
}
