import { describe, expect, it } from 'vitest';
import { NO_SUPPLIES, USUAL_SPARE } from '../../src/design/defaults.ts';
import { liveFacts, mergedJobs, type Saying, saying, takenBack } from '../../src/design/job/record.ts';
import type { Job } from '../../src/design/job/schema.ts';
import { openDesign } from '../../src/design/open.ts';
import type { Design } from '../../src/design/schema.ts';
import { gotSaying, hadOf } from '../../src/job/bought.ts';
import { touchedBy } from '../../src/job/touched.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import type { Plan, ShoppingLine } from '../../src/plan/types.ts';
import { chanceOf } from '../chance.ts';
import { SUPPLIES, starter } from './starters.ts';

const planner = createPlanner();
const planOf = (design: Design): Plan => planner(design, SUPPLIES);
const begin = starter('bread-shop');
const first = planOf(begin);

const isSupply = ({ kind, owned }: ShoppingLine) => kind !== 'board' && kind !== 'sheet' && !owned;
const buying = (line: ShoppingLine, { finishes, job }: Design): readonly Saying[] =>
  gotSaying(line, { facts: liveFacts(job), finishes, spare: line.spare === true });
function bought(design: Design, lines: readonly ShoppingLine[]): Design {
  let now = design;
  for (const line of lines) now = { ...now, job: saying(now.job, buying(line, now)) };
  return now;
}
const money = (lines: readonly ShoppingLine[]) => lines.reduce((sum, line) => sum + line.price, 0);

/** Least money for at least so much, by trying every number of each size: independent of the way the tool chooses. */
function least(need: number, sizes: readonly { volume: number; price: number }[]): number {
  const [size, ...others] = sizes;
  if (need <= 1e-6) return 0;
  if (!size) return Number.POSITIVE_INFINITY;
  let best = Number.POSITIVE_INFINITY;
  for (let n = 0; n <= Math.ceil(need / size.volume); n++)
    best = Math.min(best, n * size.price + least(need - n * size.volume, others));
  return best;
}

/** There is enough of everything, and what is still to be bought of paint costs the least that it can. */
function isEnough(plan: Plan): void {
  const { design, shopping, tables } = plan;
  const held = (kind: string, is: (line: ShoppingLine) => boolean, of: 'volume_l' | 'pieces' | 'length_mm') =>
    shopping
      .filter((line) => line.kind === kind && is(line))
      .reduce((sum, line) => sum + line.count * (line.size[of] ?? 0), 0);
  for (const use of plan.finish.uses) {
    const of = (line: ShoppingLine) => line.item === use.finish;
    expect(held('paint', of, 'volume_l')).toBeGreaterThan(use.volume - 1e-5);
    const finish = design.finishes.find(({ id }) => id === use.finish);
    const sizes = (finish?.containers ?? []).flatMap(({ container, price }) =>
      tables.containers.filter(({ id }) => id === container).map(({ volume }) => ({ volume, price })),
    );
    const there = held('paint', (line) => of(line) && line.owned, 'volume_l');
    const spent = money(shopping.filter((line) => line.kind === 'paint' && of(line)));
    if (sizes.length > 0) expect(spent).toBeCloseTo(least(use.volume - there, sizes), 6);
  }
  for (const { fastener, length, count } of plan.fastening.use) {
    const kind = tables.brads.some(({ id }) => id === fastener) ? 'brads' : 'screws';
    const is = ({ item, size }: ShoppingLine) => item === fastener && size.length_mm === length;
    expect(held(kind, is, 'pieces')).toBeGreaterThanOrEqual(count);
  }
  const primer = plan.finish.uses.reduce((sum, use) => sum + use.primer, 0);
  expect(held('primer', () => true, 'volume_l')).toBeGreaterThan(primer - 1e-5);
  expect(held('glue', () => true, 'volume_l')).toBeGreaterThan(plan.fastening.glue - 1e-5);
  expect(plan.total).toBeCloseTo(money(shopping), 6);
}

describe('what is bought of the list', () => {
  it('is there and not paid again: the list costs less by exactly its price, whichever lines they are', () => {
    isEnough(first);
    const chance = chanceOf(22);
    const lines = first.shopping.filter(isSupply);
    expect(new Set(lines.map(({ kind }) => kind)).size).toBeGreaterThan(4);
    for (let round = 0; round < 6; round++) {
      const some = lines.filter(() => chance() < 0.5);
      const plan = planOf(bought(begin, some));
      // The cheapest of all, less some of it, is the cheapest for the rest: else a cheaper one had been there for all.
      expect(plan.total).toBeCloseTo(first.total - money(some), 6);
      expect(plan.shopping.filter(({ got }) => got).length).toBe(some.length);
      isEnough(plan);
    }
    const done = planOf(bought(begin, lines));
    expect(done.shopping.filter(isSupply)).toEqual([]);
    expect(done.total).toBeCloseTo(money(first.shopping) - money(lines), 6);
  });

  it('serves whatever is planned since, and only what is missing is bought for the least', () => {
    const chance = chanceOf(7);
    for (let round = 0; round < 6; round++) {
      const some = first.shopping.filter(isSupply).filter(() => chance() < 0.6);
      const design = bought(begin, some);
      const waste = chance() * 0.9;
      const finishes = design.finishes.map((one) => ({ ...one, coats: 1 + Math.floor(chance() * 4) }));
      isEnough(planOf({ ...design, finishes, paint: { ...design.paint, waste } }));
    }
  });

  it('is to be bought again where that was taken back, and is kept in the file', () => {
    const design = bought(begin, first.shopping.filter(isSupply));
    const opened = openDesign(JSON.stringify(design));
    expect(opened.ok && liveFacts(opened.design.job)).toEqual(liveFacts(design.job));
    const ids = new Set(planOf(design).shopping.flatMap(({ got }) => [...(got?.ids ?? [])]));
    const back = planOf({ ...design, ...(design.job ? { job: takenBack(design.job, ids) } : {}) });
    expect(back.shopping).toEqual(first.shopping);
  });

  it('beyond what is needed is a purchase of its own, and stays to be bought when the rest is there', () => {
    const supplies = { ...NO_SUPPLIES, ...begin.supplies, spare: { ...USUAL_SPARE, one: true } };
    const design = { ...begin, supplies };
    const lines = planOf(design).shopping.filter(isSupply);
    const [spare, needed] = [lines.filter((l) => l.spare), lines.filter((l) => !l.spare)];
    expect(spare.length).toBeGreaterThan(2);
    const left = planOf(bought(design, needed)).shopping.filter(isSupply);
    expect(left.map(({ kind, item, count }) => `${kind} ${item} ${count}`)).toEqual(
      spare.map(({ kind, item, count }) => `${kind} ${item} ${count}`),
    );
    const rest = planOf(bought(design, spare)).shopping.filter(isSupply);
    expect(rest).toEqual(needed);
  });
});

describe('paint that is bought', () => {
  const can = first.shopping.filter((line) => line.kind === 'paint' && !line.owned);
  const design = bought(begin, can);
  const at = (of: Design) => ({
    ...{ facts: liveFacts(of.job), parts: [], pieces: [], stocks: new Map() },
    finishes: of.finishes,
  });
  const [line] = can;
  const recolored: Design = {
    ...design,
    finishes: design.finishes.map((one) => (one.id === line?.item ? { ...one, color: '#123456' } : one)),
  };

  it('is told of before its color is changed, and the new one is to be paid', () => {
    expect(touchedBy(at(design), at(recolored))).toEqual([{ part: line?.item, how: 'unused' }]);
    const own = money(can.filter(({ item }) => item === line?.item));
    expect(own).toBeGreaterThan(0);
    const plan = planOf(recolored);
    expect(plan.total).toBeCloseTo(planOf(design).total + own, 6);
    // It is still there, and serves again when the color is as it was.
    expect(plan.shopping.filter(({ got }) => got).length).toBe(can.length);
    expect(planOf({ ...recolored, finishes: design.finishes }).total).toBeCloseTo(planOf(design).total, 6);
  });

  it('is not asked about where its price, its name or its finish changes that it does not look by', () => {
    const finishes = design.finishes.map((one) => ({ ...one, name: `${one.name} 2`, coats: 4, owned_l: 1 }));
    expect(touchedBy(at(design), at({ ...design, finishes }))).toEqual([]);
  });
});

it('said by two devices counts once for each thing, in whatever order they are put together', () => {
  const chance = chanceOf(3);
  const [line] = first.shopping.filter((one) => one.kind === 'screws' || one.kind === 'brads');
  if (!line) throw new Error('no fasteners');
  for (let round = 0; round < 200; round++) {
    const start = chance() < 0.5 ? begin : bought(begin, [{ ...line, count: 1 + Math.floor(chance() * 3) }]);
    const sets: Set<number>[] = [];
    const devices = [0, 1, 2].map((): Job | undefined => {
      let now: Design = start;
      // Independent: boxes by their numbers, a set for each device.
      const mine = new Set<number>();
      const had = hadOf(liveFacts(start.job)).reduce((sum, { count }) => sum + count, 0);
      for (let n = 0; n < had; n++) mine.add(n);
      for (let buys = Math.floor(chance() * 3); buys > 0; buys--) {
        const count = 1 + Math.floor(chance() * 4);
        for (let n = 0; n < count; n++) mine.add(mine.size);
        now = bought(now, [{ ...line, count }]);
      }
      sets.push(mine);
      return now.job;
    });
    const all = new Set(sets.flatMap((set) => [...set])).size;
    const [a, b, c] = devices;
    for (const job of [
      mergedJobs(mergedJobs(a, b), c),
      mergedJobs(c, mergedJobs(b, a)),
      mergedJobs(mergedJobs(c, a), mergedJobs(b, c)),
    ]) {
      expect(hadOf(liveFacts(job)).reduce((sum, { count }) => sum + count, 0)).toBe(all);
    }
  }
});
