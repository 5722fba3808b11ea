import { useCallback, useMemo } from 'react';
import { benchSteps } from '../../cutting/atSaw.ts';
import { liveFacts, type Saying, saying, takenBack } from '../../design/job/record.ts';
import type { Fact } from '../../design/job/schema.ts';
import type { Design } from '../../design/schema.ts';
import { type AtSaw, cutSaying, doneSteps, uncutIds } from '../../job/acts.ts';
import { goesOn } from '../../job/goesOn.ts';
import type { Plan } from '../../plan/types.ts';
import { commit } from './commit.ts';
import { usePlan, useSettledDesign, useStore } from './hooks.ts';
import type { EditorStore } from './store.ts';

/** What holds of the job. */
export function useFacts(): readonly Fact[] {
  const { job } = useSettledDesign();
  return useMemo(() => liveFacts(job), [job]);
}

const put = (store: EditorStore, job: Design['job'], label: string, said: string): boolean =>
  commit(store, [{ kind: 'set', field: 'job', value: job }], label, { say: said });

/**
 * Says something of the job, as one step of undo.
 * @param label what undo calls it
 * @param spoken announced; the label where it is left out
 */
export function sayOfJob(
  store: EditorStore,
  said: readonly Saying[],
  label: string,
  spoken = label,
): boolean {
  return put(store, saying(store.getState().edit.design.job, said), label, spoken);
}

/** Takes back what was said under some ids. */
export function takeBackOfJob(
  store: EditorStore,
  ids: ReadonlySet<string>,
  label: string,
  spoken = label,
): boolean {
  const { job } = store.getState().edit.design;
  return job !== undefined && put(store, takenBack(job, ids), label, spoken);
}

/** The steps at the saw of a plan, which of them are done, and the way to say so. */
export function useSawing(plan: Plan | null) {
  const store = useStore();
  const facts = useFacts();
  const steps = useMemo(() => (plan ? benchSteps(plan.cutting, plan.joinery.pieces) : []), [plan]);
  const ticked = useMemo(
    () => (plan ? doneSteps(steps, { facts, stocks: plan.stocks }) : NONE),
    [plan, steps, facts],
  );
  const tick = useCallback(
    (ids: readonly string[], on: boolean, label: string) => {
      if (!plan) return;
      const at = atSaw(plan, store.getState().edit.design);
      const some = steps.filter(({ id }) => ids.includes(id));
      if (on) sayOfJob(store, unique(some.flatMap((step) => cutSaying(step, at))), label);
      else takeBackOfJob(store, new Set(some.flatMap((step) => [...uncutIds(step, at)])), label);
    },
    [plan, steps, store],
  );
  return { facts, steps, ticked, tick };
}

const NONE: ReadonlySet<string> = new Set();

/** Two pieces of one board both say that it is there. */
const unique = (said: readonly Saying[]): Saying[] => [...new Map(said.map((one) => [one.id, one])).values()];

/** A plan as acts at the saw look at it, with what holds by now. */
export const atSaw = (plan: Plan, design: Design): AtSaw => ({
  ...{ cutting: plan.cutting, stocks: plan.stocks, shop: plan.design.shop },
  ...{ planned: liveFacts(plan.design.job), facts: liveFacts(design.job) },
});

/**
 * The plan that wood may be cut by: of the design as it is, or as it was before some of it was cut as that plan has it.
 * Null while another one is on its way.
 */
export function useSawPlan(): Plan | null {
  const { plan, of, stale, draft } = usePlan();
  const design = useSettledDesign();
  return useMemo(() => {
    if (!plan || !of || draft) return null;
    if (!stale) return plan;
    const { job: then, ...was } = of;
    const { job: now, ...is } = design;
    const same = (Object.keys({ ...was, ...is }) as (keyof typeof is)[]).every((key) => was[key] === is[key]);
    return same && goesOn(liveFacts(then), liveFacts(now)) ? plan : null;
  }, [plan, of, stale, draft, design]);
}
