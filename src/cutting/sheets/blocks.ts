import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, firstFrom, lastOf, pick, real } from '../../list/at.ts';
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
  /** A number for what it holds: parts of the same items have the same. */
  readonly mark: number;
};

/** Two parts that may be joined, or one by itself, with what they are kept for. */
interface Offer {
  readonly kind: 'rip' | 'cross';
  readonly low: Part;
  readonly high: Part | null;
  readonly rate: number;
}

/** Parts of up to so many pieces are put together, and so many of each number of pieces are kept. */
const MOST_PIECES = 6;
const MOST_PARTS = 240;
/** Parts that fill the sheet from edge to edge one way, and rows of such parts, that are kept. */
const MOST_SLABS = 300;
const MOST_ROWS = 40;
/** Pairs of parts that are looked at in the time of one node of a search. */
const PAIRS = 250;

/** What is put together, within which limits. */
interface Task {
  readonly w: Mm;
  readonly h: Mm;
  readonly need: readonly number[];
  /** Most that a unit of area can be worth. */
  readonly most: number;
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
  const most = Math.max(...p.items.map((_, i) => (at(need, i) > 0 ? worth(i) : 0)));
  const task: Task = { w, h, need, most, slack: Math.min(0.3, Math.max(0.04, 1 / pieces)), budget };
  const levels = partsFor(task, singles(p, task, worth));
  const all = levels.flat().sort((a, b) => b.value - a.value);
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
      .map((t) => ({
        ...t,
        item,
        value: area * rate,
        rate,
        items: [item],
        times: [1],
        mark: Math.sqrt(item + 2),
      }));
  });
}

interface Counter {
  take(part: Part): void;
  give(part: Part): void;
  has(part: Part): boolean;
}

/** Counts of one part, to see whether others go with it. */
function counter(need: readonly number[]): Counter {
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

function joined({ kind, low, high }: Offer): Part {
  if (high === null) return low;
  const { w, h } = sidesOf(kind, low, high);
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
  return { kind, w, h, low, high, value, rate: value / (w * h), items, times, mark: low.mark + high.mark };
}

const sidesOf = (kind: 'rip' | 'cross', low: Part, high: Part) =>
  kind === 'cross'
    ? { w: low.w + high.w, h: Math.max(low.h, high.h) }
    : { w: Math.max(low.w, high.w), h: low.h + high.h };

/** The same pieces in as much room: of those one is enough. */
function keyOf({ kind, low, high }: Offer): number {
  const { w, h } = high === null ? low : sidesOf(kind, low, high);
  return Math.round(1e3 * ((low.mark + (high?.mark ?? 0)) * 977 + 3.1 * w + 1.7 * h));
}

/** Keeps the offers with the highest rates, and joins only those. */
class Keeper {
  /** No offer of a lower rate is kept any more. */
  least = -1;
  #list: Offer[] = [];
  readonly #known = new Set<number>();
  readonly #most: number;

  constructor(most: number) {
    this.#most = most;
  }

  keep(offer: Offer): void {
    if (offer.rate <= this.least) return;
    const key = keyOf(offer);
    if (this.#known.has(key)) return;
    this.#known.add(key);
    this.#list.push(offer);
    if (this.#list.length >= 2 * this.#most) this.#cut();
  }

  best(): Part[] {
    this.#cut();
    return this.#list.map(joined);
  }

  #cut(): void {
    this.#list.sort((a, b) => b.rate - a.rate);
    this.#list.length = Math.min(this.#list.length, this.#most);
    if (this.#list.length === this.#most) this.least = lastOf(this.#list).rate;
  }
}

const WAYS = [
  { kind: 'cross', along: 'w', across: 'h' },
  { kind: 'rip', along: 'h', across: 'w' },
] as const;
type Direction = (typeof WAYS)[number];

/** Parts, and their figures as bare numbers: most of them are looked at and left. */
interface Rank {
  readonly parts: readonly Part[];
  readonly across: Float64Array;
  readonly along: Float64Array;
  readonly value: Float64Array;
}

function figures(parts: readonly Part[], way: Direction): Rank {
  const n = parts.length;
  const rank = { parts, across: new Float64Array(n), along: new Float64Array(n), value: new Float64Array(n) };
  for (let k = 0; k < n; k++) {
    const part = pick(parts, k);
    rank.across[k] = part[way.across];
    rank.along[k] = part[way.along];
    rank.value[k] = part.value;
  }
  return rank;
}

/** In rising order of the side across. */
const rising = (parts: readonly Part[], way: Direction): Rank =>
  figures(
    [...parts].sort((a, b) => a[way.across] - b[way.across]),
    way,
  );

/** The best parts of one piece, of two, and so on. */
function partsFor(task: Task, single: readonly Part[]): Part[][] {
  const levels: Part[][] = [[...single]];
  const ranks = WAYS.map((way) => [rising(single, way)]);
  const count = counter(task.need);
  for (let n = 2; n <= MOST_PIECES && !task.budget.done(); n++) {
    const kept = new Keeper(MOST_PARTS);
    for (let a = 1; a <= n / 2; a++) {
      for (const low of pick(levels, a - 1)) {
        count.take(low);
        WAYS.forEach((way, k) => {
          const most = task[way.along] - low[way.along] + SAME_LENGTH;
          const list = pick(pick(ranks, k), n - a - 1);
          pairUp(task, low, list, { way, least: 0, most, length: 0 }, count, kept);
        });
        count.give(low);
      }
    }
    const level = kept.best();
    levels.push(level);
    WAYS.forEach((way, k) => {
      pick(ranks, k).push(rising(level, way));
    });
  }
  return levels;
}

/** What may go beside a part: how long, and over which length its worth is reckoned, both together where it is 0. */
interface Beside {
  readonly way: Direction;
  readonly least: Mm;
  readonly most: Mm;
  readonly length: Mm;
}

/** Offers the parts that go beside another without much waste. */
function pairUp(
  task: Task,
  low: Part,
  { parts, across, along, value }: Rank,
  { way, least, most, length }: Beside,
  count: Counter,
  kept: Keeper,
): void {
  const side = low[way.across];
  const long = low[way.along];
  const to = side / (1 - task.slack);
  let k = firstFrom(across, side * (1 - task.slack));
  const start = k;
  for (; k < parts.length; k++) {
    const other = real(across, k);
    if (other > to) break;
    const more = real(along, k);
    if (more > most || more < least) continue;
    const area = (length || long + more) * Math.max(other, side);
    const rate = (low.value + real(value, k)) / area;
    if (rate <= kept.least) continue;
    const high = pick(parts, k);
    if (count.has(high)) kept.keep({ kind: way.kind, low, high, rate });
  }
  for (let spent = start; spent < k; spent += PAIRS) task.budget.spend();
}

/** Whole sheets of slabs that reach from edge to edge: upright ones side by side, or lying ones upon each other. */
function packed(task: Task, parts: readonly Part[], kind: 'rip' | 'cross'): Part[] {
  const [across, along] = WAYS;
  const slabWay = kind === 'rip' ? along : across;
  const rowWay = kind === 'rip' ? across : along;
  const length = task[slabWay.along];
  const slabs = figures(slabsOf(task, parts, slabWay), slabWay);
  const all = figures(parts, slabWay);
  const count = counter(task.need);
  const full: Part[] = [];
  let best = 0;
  const finish = (row: Part) => {
    const wide = task[rowWay.along] - row[rowWay.along];
    if (row.value + wide * length * task.most <= best) return;
    const filled = filledUp(task, row, all, rowWay, slabWay);
    if (filled.value > best) {
      best = filled.value;
      full.push(filled);
    }
  };
  let rows = slabs.parts.map((part, last) => ({ part, last })).slice(0, MOST_ROWS);
  while (rows.length > 0 && !task.budget.done()) {
    const next: (Offer & { readonly last: number })[] = [];
    let least = -1;
    const cut = () => {
      next.sort((a, b) => b.rate - a.rate);
      next.length = Math.min(next.length, MOST_ROWS);
    };
    for (const { part, last } of rows) {
      count.take(part);
      const wide = part[rowWay.along];
      const room = task[rowWay.along] - wide + SAME_LENGTH;
      for (let k = last; k < slabs.parts.length; k++) {
        const thick = real(slabs.across, k);
        if (thick > room) continue;
        const rate = (part.value + real(slabs.value, k)) / ((wide + thick) * length);
        if (rate <= least) continue;
        const slab = pick(slabs.parts, k);
        if (!count.has(slab)) continue;
        next.push({ kind: rowWay.kind, low: part, high: slab, last: k, rate });
        if (next.length >= 2 * MOST_ROWS) {
          cut();
          least = lastOf(next).rate;
        }
      }
      count.give(part);
      for (let spent = last; spent < slabs.parts.length; spent += PAIRS) task.budget.spend();
      finish(part);
    }
    cut();
    rows = next.map((offer) => ({ part: joined(offer), last: offer.last }));
  }
  return full;
}

/** Parts, and pairs of parts, that reach nearly from edge to edge; those with the most worth for a whole slab. */
function slabsOf(task: Task, parts: readonly Part[], way: Direction): Part[] {
  const length = task[way.along];
  const kept = new Keeper(MOST_SLABS);
  const count = counter(task.need);
  const order = rising(parts, way);
  const shortest = length * (1 - 2 * task.slack);
  for (const low of parts) {
    const long = low[way.along];
    if (long >= shortest)
      kept.keep({ kind: way.kind, low, high: null, rate: low.value / (length * low[way.across]) });
    count.take(low);
    const most = Math.min(long, length - long + SAME_LENGTH);
    if (most >= shortest - long)
      pairUp(task, low, order, { way, least: shortest - long, most, length }, count, kept);
    count.give(low);
  }
  return kept.best();
}

/** The room beside a row is filled with the parts of most worth that go there, one upon the other. */
function filledUp(
  task: Task,
  row: Part,
  { parts, across, along }: Rank,
  rowWay: Direction,
  slabWay: Direction,
): Part {
  const count = counter(task.need);
  count.take(row);
  const wide = task[rowWay.along] - row[rowWay.along] + SAME_LENGTH;
  let beside: Part | null = null;
  for (;;) {
    const long: Mm = task[slabWay.along] - (beside?.[slabWay.along] ?? 0) + SAME_LENGTH;
    let k = 0;
    while (
      k < parts.length &&
      (real(across, k) > wide || real(along, k) > long || !count.has(pick(parts, k)))
    )
      k++;
    for (let spent = 0; spent < k; spent += PAIRS) task.budget.spend();
    if (k === parts.length) break;
    const best = pick(parts, k);
    count.take(best);
    beside = beside === null ? best : joined({ kind: slabWay.kind, low: beside, high: best, rate: 0 });
  }
  return beside === null ? row : joined({ kind: rowWay.kind, low: row, high: beside, rate: 0 });
}
