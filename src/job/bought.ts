import { factsOf, type Saying } from '../design/job/record.ts';
import type { Fact, FactOf } from '../design/job/schema.ts';
import type { Finish } from '../design/schema.ts';
import { grouped } from '../list/grouped.ts';
import { totalOf } from '../list/totals.ts';
import type { Liters } from '../measure/units.ts';

/** What is bought of one thing, all purchases of it together. */
export interface Had {
  /** The last that was said of it. */
  readonly fact: FactOf<'bought'>;
  readonly count: number;
  /** Of the facts that say it. */
  readonly ids: ReadonlySet<string>;
}

/** A line of the shopping list as far as buying it asks. */
interface Line extends Pick<FactOf<'bought'>, 'item' | 'name' | 'size' | 'count'> {
  readonly kind: string;
  readonly each: number;
}

/** What paint is known again by: it does not know which finish it was bought for. */
export const lookOfPaint = ({ kind, color, sheen }: Finish): string => `${kind} ${color} ${sheen}`;

const stemOf = ({ kind, item, size, look = '', spare }: Omit<FactOf<'bought'>, 'id' | 'at' | 'is'>): string =>
  [
    ...['bought', kind, item, look, spare ? 'spare' : ''],
    ...[size.length_mm, size.width_mm, size.volume_l, size.pieces].map((n) => n?.toFixed(3) ?? ''),
  ].join(':');

/**
 * All that is bought and not taken back. Things of a kind are numbered, and what is said twice of a number is said of one
 * thing: two devices that both hear of a purchase count it once, and of two that bought on, each number is there.
 */
export function hadOf(facts: readonly Fact[]): Had[] {
  return [...grouped(factsOf(facts, 'bought'), stemOf).values()].flatMap((all) => {
    const fact = all.at(-1);
    return fact ? [{ fact, count: numbersIn(all), ids: new Set(all.map(({ id }) => id)) }] : [];
  });
}

/** How many numbers some stretches of them hold together. */
function numbersIn(all: readonly FactOf<'bought'>[]): number {
  let [sum, end] = [0, 0];
  for (const { from, count } of [...all].sort((a, b) => a.from - b.from)) {
    sum += Math.max(0, from + count - Math.max(end, from));
    end = Math.max(end, from + count);
  }
  return sum;
}

/** What is said where a line of the shopping list is bought: all of it. Nothing for boards and sheets, which have names. */
export function gotSaying(
  { kind, item, name, size, count, each }: Line,
  { facts, finishes, spare }: { facts: readonly Fact[]; finishes: readonly Finish[]; spare: boolean },
): readonly Saying[] {
  if (kind === 'board' || kind === 'sheet') return [];
  const finish = kind === 'paint' ? finishes.find(({ id }) => id === item) : undefined;
  const thing = {
    ...{ kind: kind as FactOf<'bought'>['kind'], item, name, size },
    ...(finish ? { look: lookOfPaint(finish) } : {}),
    ...(spare ? { spare: true as const } : {}),
    ...{ count, paid: each, from: 0 },
  };
  const stem = stemOf(thing);
  const before = factsOf(facts, 'bought').filter((fact) => stemOf(fact) === stem);
  const from = before.reduce((most, fact) => Math.max(most, fact.from + fact.count), 0);
  return [{ is: 'bought', id: `${stem}:${from}+${count}`, ...thing, from }];
}

/**
 * For which finish each paint that is there serves, by the facts' last: the one that it was bought for while that looks
 * as it did, else the first that looks so; null where none does any more.
 */
export function finishOfPaint({ item, look }: FactOf<'bought'>, finishes: readonly Finish[]): Finish | null {
  const alike = finishes.filter((finish) => lookOfPaint(finish) === look);
  return alike.find(({ id }) => id === item) ?? alike[0] ?? null;
}

/** The finishes with the paint that is bought for them beside what was in the shed. */
export function withBoughtPaint(finishes: readonly Finish[], facts: readonly Fact[]): readonly Finish[] {
  const liters = new Map<string, Liters>();
  for (const { fact, count } of hadOf(facts)) {
    const finish = fact.kind === 'paint' && !fact.spare ? finishOfPaint(fact, finishes) : null;
    if (finish) liters.set(finish.id, totalOf(liters, finish.id) + count * (fact.size.volume_l ?? 0));
  }
  if (liters.size === 0) return finishes;
  return finishes.map((finish) => ({ ...finish, owned_l: finish.owned_l + totalOf(liters, finish.id) }));
}
