import type { Design } from '../../design/schema.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { Plan } from '../../plan/types.ts';
import { onSpoken, spoken } from '../words/t.ts';
import { type HireWorker, type PlanJob, PlanLife, type PlanProblem } from './planLife.ts';

export interface PlanState {
  /** The last plan that came, of the open design as it is or as it was. */
  readonly plan: Plan | null;
  /** The design that it is of, as it was asked for. */
  readonly of: Design | null;
  /** The plan is not of the design as it is now, or a better one of it is on its way. */
  readonly stale: boolean;
  /** The plan is of the design as it is now, and fewer boards and sheets are still looked for. */
  readonly draft: boolean;
  readonly progress: { readonly stage: string; readonly share: number } | null;
  /** Why there will be no plan of the design as it is now. */
  readonly problem: PlanProblem | null;
}

declare const current: unique symbol;
/** A plan of the design as it was when it was asked for. Only the planner gives one, and only of that. */
export type CurrentPlan = Plan & { readonly [current]: true };

/** Thrown where there is no plan to wait for. */
export class NoPlan extends Error {
  readonly problem: PlanProblem;
  constructor(problem: PlanProblem) {
    super(problem.kind === 'failed' ? problem.why : problem.kind);
    this.problem = problem;
  }
}

export type Planner = ReturnType<typeof createPlanner>;

/** What the planner follows of the editor's store. */
interface Followed {
  readonly designId: string | null;
  readonly edit: { readonly design: Design };
  readonly correction: PlanJob['correction'];
}

interface Store {
  getState(): Followed;
  subscribe(listener: (now: Followed, before: Followed) => void): unknown;
}

/** Keeps the plan up with the design and says what of it is old. `onRestart`: the worker died and was replaced. */
export function createPlanner(store: Store, hire: HireWorker, onRestart: () => void = () => {}) {
  let wanted: PlanJob | null = null;
  let made: { readonly job: PlanJob; readonly plan: Plan; readonly draft: boolean } | null = null;
  let state: PlanState = { plan: null, of: null, stale: true, draft: false, progress: null, problem: null };
  const listeners = new Set<() => void>();
  const set = (next: Partial<Pick<PlanState, 'progress' | 'problem'>>) => {
    const current = made !== null && made.job === wanted;
    const draft = current && made?.draft === true;
    state = {
      ...state,
      ...next,
      plan: made?.plan ?? null,
      of: made?.job.design ?? null,
      stale: !current || draft,
      draft,
    };
    for (const listener of listeners) listener();
  };

  const life = new PlanLife(hire, {
    progress: (stage, share) => set({ progress: { stage, share } }),
    draft: (job, plan) => {
      // A job that is tried again keeps the plan that it had.
      if (made?.job === job && !made.draft) return;
      made = { job, plan, draft: true };
      set({});
    },
    plan: (job, plan) => {
      if (job.of !== wanted?.of) return;
      made = { job, plan, draft: false };
      set({ progress: null, problem: null });
    },
    problem: (_, problem) => set({ progress: null, problem }),
    restarted: onRestart,
  });

  const ask = () => {
    const { designId, edit, correction } = store.getState();
    wanted = designId === null ? null : { of: designId, design: edit.design, correction, language: spoken() };
    if (made?.job.of !== wanted?.of) made = null;
    life.ask(wanted);
    set({ progress: null, problem: null });
  };
  store.subscribe((now, before) => {
    if (
      now.edit.design !== before.edit.design ||
      now.designId !== before.designId ||
      now.correction !== before.correction
    )
      ask();
  });
  onSpoken(ask);

  const subscribe = (listener: () => void) => {
    listeners.add(listener);
    return () => {
      listeners.delete(listener);
    };
  };

  const retry = () => {
    set({ problem: null });
    life.retry();
  };

  return {
    subscribe,
    get: (): PlanState => state,
    retry,
    /** What a design would still cost in place of the open one; null where nobody can tell. */
    cost: async (design: Design): Promise<number | null> =>
      wanted === null ? null : life.cost({ ...wanted, design }).catch(() => null),
    shadows: (): Promise<readonly ShadowArea[]> => life.shadows(),
    /**
     * The plan of the design as it is, waited for where it has not come yet. A design that is changed meanwhile is
     * waited for too. Rejects with the signal's reason, with `NoPlan` where there will be none, and with an abort
     * when another design is opened.
     */
    current: (signal: AbortSignal): Promise<CurrentPlan> =>
      new Promise((resolve, reject) => {
        const of = wanted?.of;
        const leave = () => {
          stop();
          signal.removeEventListener('abort', look);
        };
        const look = () => {
          const gone = signal.aborted || wanted === null || wanted.of !== of;
          if (!gone && state.stale && !state.problem) return;
          leave();
          if (signal.aborted) reject(signal.reason);
          else if (gone) reject(new DOMException('Another design was opened.', 'AbortError'));
          else if (state.problem) reject(new NoPlan(state.problem));
          else resolve(state.plan as CurrentPlan);
        };
        const stop = subscribe(look);
        signal.addEventListener('abort', look);
        // A worker that died is given another try by whoever wants its plan.
        if (state.problem && state.problem.kind !== 'failed') retry();
        look();
      }),
  };
}
