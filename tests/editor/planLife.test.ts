import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { newDesign } from '../../src/design/defaults.ts';
import {
  type HireWorker,
  LOADING_MS,
  PATIENCE_MS,
  type PlanAnswers,
  type PlanJob,
  PlanLife,
  QUIET_MS,
  SILENCE_MS,
} from '../../src/editor/planning/planLife.ts';
import type { Plan } from '../../src/plan/types.ts';
import { type Chance, chanceOf } from '../chance.ts';

const RUNS = Number(process.env.SHOWFACE_LIVES ?? 2000);

const jobOf = (n: number): PlanJob => ({
  of: 'a',
  design: newDesign(undefined, `Face ${n}`),
  correction: { x: 1, y: 1 },
  language: 'en',
});
/** A stand-in for a plan, which names the job it is of. */
const planOf = (job: PlanJob) => ({ design: job.design }) as Plan;

const newness = (job: PlanJob | undefined): number => Number(job?.design.name.slice(5));

/** What a worker will do, as chance or a test has it; times in milliseconds. */
interface Fate {
  /** Until it can take a job; null: it never can, and tells nothing. */
  readonly loads: number | null;
  /** Until its script fails to load. */
  readonly fails?: number | undefined;
  /** How long a job takes, of each job in turn; null: it never ends, and tells nothing. */
  readonly takes: (job: PlanJob) => number | null;
  /** Whether a job ends in a failure instead of a plan. */
  readonly throws?: ((job: PlanJob) => boolean) | undefined;
  /** From its start to its death, and whether that is told. */
  readonly dies?: { readonly after: number; readonly told: boolean } | undefined;
}

interface Crew {
  readonly hire: HireWorker;
  readonly hired: () => number;
  /** Workers that were neither ended nor died. */
  readonly alive: () => number;
}

/** Workers that follow their fate; one that was ended or died does nothing more, as a real one. */
function crewOf(fateOf: (n: number) => Fate): Crew {
  let hired = 0;
  const living = new Set<number>();
  const hire: HireWorker = ({ ready, died }) => {
    const n = hired++;
    const fate = fateOf(n);
    living.add(n);
    const later = (ms: number, act: () => void) => {
      setTimeout(() => {
        if (living.has(n)) act();
      }, ms);
    };
    if (fate.loads !== null && fate.fails === undefined) later(fate.loads, ready);
    if (fate.fails !== undefined) {
      later(fate.fails, () => {
        living.delete(n);
        died('script');
      });
    }
    if (fate.dies) {
      const { told, after } = fate.dies;
      later(after, () => {
        living.delete(n);
        if (told) died('died');
      });
    }
    const plan = (job: PlanJob, answers: PlanAnswers) => {
      const takes = fate.takes(job);
      if (takes === null) return;
      later(takes / 2, () => answers.stage('layout', 0.5));
      later(takes * 0.6, () => answers.draft(planOf(job)));
      later(takes, () => {
        if (fate.throws?.(job)) answers.failed('it broke');
        else answers.plan(planOf(job));
      });
    };
    return { plan, shadows: async () => [], cost: async () => 0, end: () => void living.delete(n) };
  };
  return { hire, hired: () => hired, alive: () => living.size };
}

/** Everything that was told, in its order. */
type Told = {
  readonly what: 'plan' | 'problem' | 'restarted';
  readonly job?: PlanJob;
  readonly kind?: string;
};

function live(crew: Crew) {
  const told: Told[] = [];
  const drafts: PlanJob[] = [];
  const life = new PlanLife(crew.hire, {
    progress: () => {},
    draft: (job, plan) => {
      expect(plan.design).toBe(job.design);
      // Nothing newer has been planned.
      expect(told.every((t) => t.what !== 'plan' || newness(t.job) <= newness(job))).toBe(true);
      drafts.push(job);
    },
    plan: (job, plan) => {
      expect(plan.design).toBe(job.design);
      told.push({ what: 'plan', job });
    },
    problem: (job, { kind }) => told.push({ what: 'problem', job, kind }),
    restarted: () => told.push({ what: 'restarted' }),
  });
  return { life, told, drafts };
}

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe('the life of the worker that plans', () => {
  it('goes on planning when a plan ends by itself and the next begins within the time it was given', () => {
    const crew = crewOf(() => ({ loads: 10, takes: () => 1000 }));
    const { life, told } = live(crew);
    // Each edit makes the running plan old; each of those ends by itself within the patience.
    const jobs = [0, 1, 2, 3, 4, 5].map(jobOf);
    for (const job of jobs) {
      life.ask(job);
      vi.advanceTimersByTime(700);
    }
    vi.advanceTimersByTime(QUIET_MS + 1000 + PATIENCE_MS);
    expect(told.at(-1)).toEqual({ what: 'plan', job: jobs.at(-1) });
    expect(crew.hired()).toBe(1);
  });

  it('plans an edit that stands alone at once, and of a run of edits the first and the last', () => {
    const crew = crewOf(() => ({ loads: 10, takes: () => 20 }));
    const { life, told } = live(crew);
    life.ask(jobOf(0));
    vi.advanceTimersByTime(1000);
    const alone = jobOf(1);
    life.ask(alone);
    vi.advanceTimersByTime(25);
    expect(told.at(-1)).toEqual({ what: 'plan', job: alone });
    vi.advanceTimersByTime(1000);
    const run = Array.from({ length: 12 }, (_, n) => jobOf(2 + n));
    const before = told.length;
    for (const job of run) {
      life.ask(job);
      vi.advanceTimersByTime(QUIET_MS - 20);
    }
    vi.advanceTimersByTime(QUIET_MS + 30);
    expect(told.slice(before)).toEqual([run[0], run.at(-1)].map((job) => ({ what: 'plan', job })));
  });

  it('tells a draft of the last job only, before its plan', () => {
    const crew = crewOf(() => ({ loads: 10, takes: () => 1000 }));
    const { life, told, drafts } = live(crew);
    const [old, last] = [jobOf(0), jobOf(1)];
    life.ask(old);
    vi.advanceTimersByTime(QUIET_MS + 400);
    life.ask(last);
    vi.advanceTimersByTime(QUIET_MS + 3000);
    expect(drafts).toEqual([last]);
    expect(told.at(-1)).toEqual({ what: 'plan', job: last });
  });

  it('ends a worker that stays at an old job beyond its patience, however many edits follow', () => {
    const crew = crewOf((n) => ({ loads: 10, takes: () => (n === 0 ? null : 50) }));
    const { life, told } = live(crew);
    life.ask(jobOf(0));
    vi.advanceTimersByTime(QUIET_MS + 10);
    let last = jobOf(1);
    for (let n = 1; n <= 4; n++) {
      last = jobOf(n);
      life.ask(last);
      vi.advanceTimersByTime(PATIENCE_MS / 3);
    }
    vi.advanceTimersByTime(PATIENCE_MS);
    expect(told).toEqual([{ what: 'plan', job: last }]);
    expect(crew.hired()).toBe(2);
    expect(crew.alive()).toBe(1);
  });

  it('restarts a dead worker once with a message, then tells the problem and waits to be asked', () => {
    const crew = crewOf(() => ({ loads: 10, takes: () => 500, dies: { after: 300, told: true } }));
    const { life, told } = live(crew);
    const job = jobOf(0);
    life.ask(job);
    vi.advanceTimersByTime(10 * SILENCE_MS);
    expect(told).toEqual([{ what: 'restarted' }, { what: 'problem', job, kind: 'died' }]);
    expect(crew.hired()).toBe(2);
    life.retry();
    vi.advanceTimersByTime(10 * SILENCE_MS);
    expect(told.at(-1)).toEqual({ what: 'problem', job, kind: 'died' });
    expect(crew.hired()).toBe(3);
  });

  it('tells at once of a script that cannot be loaded, and after a while of one that does not come', () => {
    for (const fate of [{ loads: null, fails: 200 }, { loads: null }]) {
      const crew = crewOf(() => ({ ...fate, takes: () => 10 }));
      const { life, told } = live(crew);
      const job = jobOf(0);
      life.ask(job);
      vi.advanceTimersByTime(fate.fails ?? LOADING_MS);
      expect(told).toEqual([{ what: 'problem', job, kind: 'script' }]);
      expect(crew.alive()).toBe(0);
    }
  });

  it('notices a worker that falls silent, and one that dies with nothing to do costs nothing', () => {
    const silent = crewOf((n) => ({ loads: 10, takes: () => (n === 0 ? null : 10) }));
    const first = live(silent);
    const job = jobOf(0);
    first.life.ask(job);
    vi.advanceTimersByTime(QUIET_MS + SILENCE_MS + 100);
    expect(first.told).toEqual([{ what: 'restarted' }, { what: 'plan', job }]);

    const idle = crewOf((n) => ({
      loads: 10,
      takes: () => 10,
      dies: n === 0 ? { after: 5000, told: true } : undefined,
    }));
    const second = live(idle);
    second.life.ask(job);
    vi.advanceTimersByTime(6000);
    expect(second.told).toEqual([{ what: 'plan', job }]);
    const next = jobOf(1);
    second.life.ask(next);
    vi.advanceTimersByTime(1000);
    expect(second.told.at(-1)).toEqual({ what: 'plan', job: next });
  });

  it('gives a plan or a message after every edit, and the last plan is of the last design', () => {
    const tally = { edits: 0, plans: 0, problems: 0, restarts: 0, workers: 0 };
    for (let run = 0; run < RUNS; run++) {
      const chance = chanceOf(run);
      // A third of the runs has sound workers only: those owe a plan, not a message.
      const sound = chance() < 1 / 3;
      const crew = crewOf(() => (sound ? soundBy(chance) : fateBy(chance)));
      const { life, told } = live(crew);
      const edits = 1 + Math.floor(chance() * 12);
      let last: PlanJob | null = null;
      for (let n = 0; n < edits; n++) {
        // Now and then the design is put away.
        last = chance() < 0.05 ? null : jobOf(n);
        life.ask(last);
        tally.edits++;
        vi.advanceTimersByTime(chance() < 0.5 ? chance() * 300 : chance() * 4000);
        if (chance() < 0.05) life.retry();
        expect(crew.alive()).toBeLessThanOrEqual(1);
      }
      // Two silences in a row and what goes before them is the longest that it can take.
      vi.advanceTimersByTime(PATIENCE_MS + QUIET_MS + 2 * (LOADING_MS + SILENCE_MS) + 60_000);
      const answers = told.filter((t) => t.what !== 'restarted' && t.job === last);
      if (last !== null) expect(answers.length, `run ${run}`).toBeGreaterThan(0);
      const plans = told.filter((t) => t.what === 'plan').map((t) => newness(t.job));
      expect(
        plans.every((n, i) => i === 0 || n >= (plans[i - 1] ?? 0)),
        `run ${run}: plans in the order of edits`,
      ).toBe(true);
      // Unless the worker fails it again and again, the last word on the last design is its plan.
      const verdict = told.findLast((t) => t.what !== 'restarted');
      if (last !== null) expect(verdict?.job, `run ${run}`).toBe(last);
      if (last !== null && sound) expect(verdict?.what, `run ${run}`).toBe('plan');
      tally.plans += plans.length;
      tally.problems += told.filter((t) => t.what === 'problem').length;
      tally.restarts += told.filter((t) => t.what === 'restarted').length;
      tally.workers += crew.hired();
      vi.clearAllTimers();
    }
    process.stdout.write(`${RUNS} lives: ${JSON.stringify(tally)}\n`);
    // The runs meet everything that can happen, often.
    for (const count of Object.values(tally)) expect(count).toBeGreaterThan(RUNS / 20);
  });
});

/** A worker that loads and plans, now and then for long. */
const soundBy = (chance: Chance): Fate => ({
  loads: chance() * 2000,
  takes: () => chance() * (chance() < 0.3 ? 5000 : 400),
});

/** A worker as chance has it: most are sound, some are slow, silent, deadly or missing. */
function fateBy(chance: Chance): Fate {
  const at = chance();
  const slow = chance() * 3000;
  return {
    loads: at < 0.03 ? null : chance() * (at < 0.1 ? 5000 : 200),
    fails: at > 0.95 ? chance() * 500 : undefined,
    takes: () => (at > 0.1 && at < 0.13 ? null : chance() < 0.3 ? slow : chance() * 400),
    throws: at > 0.13 && at < 0.2 ? () => chance() < 0.5 : undefined,
    dies: at > 0.2 && at < 0.45 ? { after: chance() * 6000, told: chance() < 0.8 } : undefined,
  };
}
