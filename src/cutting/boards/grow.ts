import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import { addUp, totalOf } from '../../list/totals.ts';
import type { Mm } from '../../measure/units.ts';
import type { Budget } from '../budget.ts';
import { type Counts, nothing, type Problem } from './problem.ts';

/** Rows grown side by side, and how many of the best neighbors are tried at the end of each. */
const BEAM = 4;
const NEIGHBORS = 48;

/** A row while it grows. */
interface Grown {
  /** Way in which the last piece lies. */
  readonly last: number;
  readonly item: number;
  readonly before: Grown | null;
  readonly taken: Mm;
  readonly worth: number;
}

interface GrownLoad {
  readonly counts: Counts;
  readonly value: number;
  /** Length that the row leaves. */
  readonly rest: Mm;
}

/**
 * Fills boards from one end to the other, each next piece one whose end goes well with the last: among many
 * pieces with unlike ends there is nearly always one that leaves no wedge, which a choice of pieces by their
 * lengths does not see. Several rows grow side by side (a beam search); those with the most worth for the length
 * they take are kept. Rows for shorter boards are met on the way to those for longer ones.
 *
 * @param must an item that the row starts with, -1 for none
 * @returns for each capacity the row with the most worth; null where none was found or the budget ended
 */
export function growRows(
  p: Problem,
  capacities: readonly Mm[],
  available: Counts,
  worth: readonly number[],
  must: number,
  budget: Budget,
): readonly (GrownLoad | null)[] {
  const { net, followers, charge } = p.joints;
  const most = Math.max(...capacities) + SAME_LENGTH;
  const items = available.flatMap((n, i) => (n > 0 && at(worth, i) > 0 ? [i] : []));
  const byShape: number[][] = net.waysOf.map(() => []);
  for (const item of items) byShape[pick(p.items, item).shape]?.push(item);
  const best: (Grown | null)[] = capacities.map(() => null);
  const offer = (next: Grown, beam: Grown[]) => {
    if (next.taken > most) return;
    capacities.forEach((capacity, c) => {
      if (next.taken <= capacity + SAME_LENGTH && next.worth > (pick(best, c)?.worth ?? 0)) best[c] = next;
    });
    const k = beam.findIndex((g) => g.worth / g.taken < next.worth / next.taken);
    if (k < 0 && beam.length >= BEAM) return;
    beam.splice(k < 0 ? beam.length : k, 0, next);
    if (beam.length > BEAM) beam.pop();
  };
  let beam: Grown[] = [];
  for (const item of must < 0 ? items : [must]) {
    const { length, shape } = pick(p.items, item);
    for (const last of pick(net.waysOf, shape)) {
      offer({ last, item, before: null, taken: length, worth: at(worth, item) }, beam);
    }
  }
  while (beam.length > 0 && !budget.done()) {
    const next: Grown[] = [];
    let weighed = 0;
    for (const row of beam) {
      const used = usedBy(row);
      let tried = 0;
      for (const last of followers(row.last)) {
        weighed += 1;
        for (const item of pick(byShape, pick(net.ways, last).shape)) {
          if (at(available, item) <= totalOf(used, item)) continue;
          tried += 1;
          const taken = row.taken + net.gap(row.last, last) + pick(p.items, item).length;
          offer({ last, item, before: row, taken, worth: row.worth + at(worth, item) }, next);
        }
        if (tried >= NEIGHBORS) break;
      }
      weighed += 2 * tried;
    }
    charge(weighed, budget);
    beam = next;
  }
  return best.map((row, c) => (row === null ? null : loadOf(p, row, at(capacities, c))));
}

function loadOf(p: Problem, row: Grown, capacity: Mm): GrownLoad {
  const counts = nothing(p);
  const ways: number[] = [];
  for (let g: Grown | null = row; g !== null; g = g.before) {
    counts[g.item] = at(counts, g.item) + 1;
    ways.unshift(g.last);
  }
  p.joints.learn(ways);
  return { counts, value: row.worth, rest: capacity - row.taken };
}

function usedBy(row: Grown): Map<number, number> {
  const used = new Map<number, number>();
  for (let g: Grown | null = row; g !== null; g = g.before) addUp(used, g.item);
  return used;
}
