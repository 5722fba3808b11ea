import { DUST } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import { groupOf } from '../../list/grouped.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import type { Made } from './made.ts';
import { pointUnder } from './points.ts';
import type { ValueTable } from './unlimited.ts';
import { madeOf, placementsOf, type ValuedLayout, type ValuedType, type Way } from './valued.ts';

/** A block put together from pieces: one of them, or two blocks side by side or one upon the other. */
interface Built {
  readonly w: Mm;
  readonly h: Mm;
  readonly value: number;
  /** Copies of each type. */
  readonly counts: readonly number[];
  /** No pattern that holds this block is worth more. */
  readonly bound: number;
  readonly made: Made;
}

/**
 * Best-first search of K. V. Viswanathan and A. Bagchi (Operations Research 41, 1993): blocks grow by
 * joining, the block that promises most is taken first, and what lies around it is bounded by the table of
 * unlimited values, where there is one, and by the worth of the copies left in the area left. When the most promising block
 * promises no more than the best one found, that one is optimal.
 */
export function bestLimited(
  sheet: { readonly w: Mm; readonly h: Mm },
  types: readonly ValuedType[],
  ways: readonly Way[],
  table: ValueTable | null,
  budget: Budget,
): ValuedLayout {
  const limit = types.map((t) =>
    Math.min(t.max ?? Infinity, Math.floor((sheet.w * sheet.h) / (t.w * t.h) + DUST)),
  );
  const around = table ? roundAbout(sheet, table) : () => Infinity;
  const rates = types.map((_, i) => i).sort((a, b) => rate(types, b) - rate(types, a) || a - b);
  const spare = (w: Mm, h: Mm, counts: readonly number[]): number => {
    let area = sheet.w * sheet.h - w * h;
    let sum = 0;
    for (const i of rates) {
      const t = pick(types, i);
      const n = Math.min(at(limit, i) - at(counts, i), area / (t.w * t.h));
      sum += n * t.value;
      area -= n * t.w * t.h;
      if (area <= DUST) break;
    }
    return sum;
  };
  const build = (made: Made, value: number, counts: number[]): Built => ({
    w: made.w,
    h: made.h,
    value,
    counts,
    bound: value + Math.min(around(made.w, made.h), spare(made.w, made.h, counts)),
    made,
  });

  const open = heap();
  const known = new Map<string, Built[]>();
  let best: Built | null = null;
  const offer = (b: Built): void => {
    if (best === null || b.value > best.value + DUST) best = b;
    if (b.bound <= best.value + DUST && b !== best) return;
    const key = b.counts.join();
    const same = groupOf(known, key);
    if (same.some((s) => s.w <= b.w + DUST && s.h <= b.h + DUST)) return;
    known.set(key, [...same.filter((s) => !(b.w <= s.w && b.h <= s.h)), b]);
    open.push(b);
  };
  for (const { w, h, type, turned } of ways) {
    if (at(limit, type) < 1) continue;
    const counts = types.map((_, i) => (i === type ? 1 : 0));
    offer(build({ w, h, item: type, turned }, pick(types, type).value, counts));
  }

  const closed: Built[] = [];
  let proved = true;
  const join = (a: Built, b: Built, kind: 'rip' | 'cross'): void => {
    const made = madeOf(kind, a.made, b.made);
    if (made.w > sheet.w + DUST || made.h > sheet.h + DUST) return;
    const counts = a.counts.map((n, i) => n + at(b.counts, i));
    if (counts.some((n, i) => n > at(limit, i))) return;
    offer(build(made, a.value + b.value, counts));
  };
  for (let block = open.pop(); block !== null; block = open.pop()) {
    const top: Built | null = best;
    if (top !== null && block.bound <= (top as Built).value + DUST) break;
    closed.push(block);
    for (const other of closed) {
      if (!budget.spend()) {
        proved = false;
        break;
      }
      join(block, other, 'cross');
      join(block, other, 'rip');
    }
    if (!proved) break;
  }
  const found: Built | null = best;
  if (found === null) return { value: 0, made: null, layout: [], proved: true };
  const { value, made } = found as Built;
  return { value, made, layout: placementsOf(made), proved };
}

const rate = (types: readonly ValuedType[], i: number): number => {
  const t = pick(types, i);
  return t.value / (t.w * t.h);
};

interface Step {
  readonly to: number;
  readonly strip: number;
}

/**
 * Most that can be added around a block until the sheet is full: the block grows to the right or upward by
 * strips, each worth its entry in the table of unlimited values.
 */
function roundAbout(sheet: { readonly w: Mm; readonly h: Mm }, t: ValueTable): (w: Mm, h: Mm) => number {
  const rows = t.ys.length;
  const more = new Float64Array(t.xs.length * rows);
  // Strips from each point to every later one: the block may also grow by less than a piece is wide, as
  // waste beside a larger neighbor. The last strip reaches the edge of the sheet.
  const grow = (points: readonly Mm[], limit: Mm): Step[][] =>
    points.map((p, i) =>
      points.slice(i + 1).map((q, k) => {
        const to = i + 1 + k;
        return { to, strip: pointUnder(points, (to === points.length - 1 ? limit : q) - p) };
      }),
    );
  const wider = grow(t.xs, sheet.w);
  const higher = grow(t.ys, sheet.h);
  for (let i = t.xs.length - 1; i >= 0; i--) {
    for (let j = rows - 1; j >= 0; j--) {
      let best = 0;
      for (const { to, strip } of pick(wider, i)) {
        best = Math.max(best, at(t.value, strip * rows + j) + at(more, to * rows + j));
      }
      for (const { to, strip } of pick(higher, j)) {
        best = Math.max(best, at(t.value, i * rows + strip) + at(more, i * rows + to));
      }
      more[i * rows + j] = best;
    }
  }
  return (w, h) => at(more, pointUnder(t.xs, w) * rows + pointUnder(t.ys, h));
}

/** Blocks in falling order of bound, then of value. */
function heap(): { push(b: Built): void; pop(): Built | null } {
  const list: Built[] = [];
  const before = (a: number, b: number): boolean => {
    const p = pick(list, a);
    const q = pick(list, b);
    return p.bound > q.bound || (p.bound === q.bound && p.value > q.value);
  };
  const swap = (a: number, b: number): void => {
    const p = pick(list, a);
    list[a] = pick(list, b);
    list[b] = p;
  };
  return {
    push(b) {
      list.push(b);
      for (let k = list.length - 1; k > 0; ) {
        const up = (k - 1) >> 1;
        if (!before(k, up)) break;
        swap(k, up);
        k = up;
      }
    },
    pop() {
      const top = list[0];
      const last = list.pop();
      if (top === undefined || last === undefined) return null;
      if (list.length === 0) return top;
      list[0] = last;
      for (let k = 0; ; ) {
        let next = 2 * k + 1;
        if (next >= list.length) break;
        if (next + 1 < list.length && before(next + 1, next)) next += 1;
        if (!before(next, k)) break;
        swap(k, next);
        k = next;
      }
      return top;
    },
  };
}
