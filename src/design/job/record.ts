import { sameValue } from '../../list/sameValue.ts';
import type { Fact, FactOf, Job } from './schema.ts';

/**
 * What is done, as a record that two devices can both write and put together without asking each other. A fact has an
 * id that follows from what it is of, so that both name the same alike; of two that were said of one thing the later
 * counts, and of two at once the one that says it is done. Nothing is ever taken out: what is taken back says so.
 */

/** A fact before it is said. */
export type Saying = { [K in Fact['is']]: Omit<FactOf<K>, 'at' | 'gone'> }[Fact['is']];

/** What was said, to be said again. */
export const withoutStamp = <F extends Fact>({ at: _, gone: __, ...said }: F): Omit<F, 'at' | 'gone'> => said;

const NOTHING: Job = { facts: [] };

/** What holds now, the earlier said first. */
export const liveFacts = (job: Job | undefined): readonly Fact[] =>
  job
    ? job.facts.filter(({ gone }) => !gone).sort((a, b) => a.at - b.at || (a.id < b.id ? -1 : 1))
    : NOTHING.facts;

export const factsOf = <K extends Fact['is']>(facts: readonly Fact[], is: K): readonly FactOf<K>[] =>
  facts.filter((fact): fact is FactOf<K> => fact.is === is);

const clockOf = (...jobs: readonly (Job | undefined)[]): number =>
  jobs.reduce((latest, job) => job?.facts.reduce((most, { at }) => Math.max(most, at), latest) ?? latest, 0);

/** The fact as a text, its fields in one order: of two that say different things at once one has to go first everywhere. */
const told = (fact: Fact): string =>
  JSON.stringify(Object.entries(fact).sort(([a], [b]) => (a < b ? -1 : 1)));

/** Which of two facts of one id counts. */
function later(a: Fact, b: Fact): Fact {
  if (a.at !== b.at) return a.at > b.at ? a : b;
  if (a.gone !== b.gone) return a.gone ? b : a;
  return told(a) >= told(b) ? a : b;
}

/**
 * Two records put together. In whatever order and however often records are put together, what comes out is the same
 * (`tests/design/job.test.ts`): for each id there is one order of facts, and the last of them stays.
 */
export function mergedJobs(a: Job | undefined, b: Job | undefined): Job | undefined {
  if (!a || !b) return a ?? b;
  const byId = new Map<string, Fact>();
  for (const fact of [...a.facts, ...b.facts]) {
    const known = byId.get(fact.id);
    byId.set(fact.id, known ? later(known, fact) : fact);
  }
  return { facts: [...byId.values()].sort((p, q) => (p.id < q.id ? -1 : 1)) };
}

/** The record with more said, all at once. */
export const saying = (job: Job | undefined, said: readonly Saying[]): Job => {
  const at = clockOf(job) + 1;
  const now = said.map((one): Fact => ({ ...one, at }) as Fact);
  const ids = new Set(now.map(({ id }) => id));
  return { facts: [...(job ?? NOTHING).facts.filter(({ id }) => !ids.has(id)), ...now] };
};

/** The record with some of what holds taken back. */
export const takenBack = (job: Job, ids: ReadonlySet<string>): Job => {
  const at = clockOf(job) + 1;
  return {
    facts: job.facts.map((fact) => (ids.has(fact.id) && !fact.gone ? { ...fact, at, gone: true } : fact)),
  };
};

/**
 * A record that is to say what another one says: undo and redo go to an earlier state, and another device must hear of
 * it as of something said later, or it would bring back what was taken back. Nothing is forgotten.
 */
export function succeeding(now: Job | undefined, wanted: Job | undefined): Job | undefined {
  if (!now || now === wanted) return wanted;
  const at = clockOf(now, wanted) + 1;
  const [held, next] = [now, wanted ?? NOTHING].map(({ facts }) => new Map(facts.map((f) => [f.id, f])));
  const facts = [...new Map([...(held ?? []), ...(next ?? [])]).keys()].flatMap((id): Fact[] => {
    const [is, to] = [held?.get(id), next?.get(id)];
    if (!is) return to ? [to] : [];
    if (!to) return [is.gone ? is : { ...is, at, gone: true }];
    // What is later than all that was known of it was said after it.
    if (sameValue(is, to) || to.at > is.at) return [to];
    return saysSame(is, to) ? [is] : [{ ...to, at }];
  });
  return { facts };
}

const saysSame = (a: Fact, b: Fact): boolean =>
  a.gone === b.gone && (a.gone === true || sameValue({ ...a, at: 0 }, { ...b, at: 0 }));
