import type { Design } from '../../design/schema.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import type { Plan } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';

/** What a plan is made of. Its object is its identity: a plan is of this job and of no other. */
export interface PlanJob {
  /** The id under which the design is open. */
  readonly of: string;
  readonly design: Design;
  readonly correction: PrinterCorrection;
  readonly language: Language;
}

/** `script`: it could not be loaded. `died`: it ended while it was wanted, or gave no sign of life for long. */
export type Death = 'script' | 'died';

export type PlanProblem = { readonly kind: 'failed'; readonly why: string } | { readonly kind: Death };

export interface PlanAnswers {
  readonly stage: (stage: string, share: number) => void;
  /** The plan as far as it is found; a better one follows. */
  readonly draft: (plan: Plan) => void;
  readonly plan: (plan: Plan) => void;
  readonly failed: (why: string) => void;
}

/** A worker as its owner sees it. It has one job at a time. */
export interface PlanWorker {
  readonly plan: (job: PlanJob, answers: PlanAnswers) => void;
  /** Shadows of the last plan made. */
  readonly shadows: () => Promise<readonly ShadowArea[]>;
  /** What a design would still cost: it takes no plan's place. */
  readonly cost: (job: PlanJob) => Promise<number>;
  /** Ends it at once; it answers nothing any more. */
  readonly end: () => void;
}

/** Starts a worker, which tells when it can take a job and when it died. Neither is told before this returns. */
export type HireWorker = (told: {
  readonly ready: () => void;
  readonly died: (why: Death) => void;
}) => PlanWorker;

/** What became of the jobs. */
export interface LifeTold {
  readonly progress: (stage: string, share: number) => void;
  /** A plan of the last job asked for, which a better one will take the place of. */
  readonly draft: (job: PlanJob, plan: Plan) => void;
  /** In the order of the jobs; of an older job than the last one too, where that was made before it was given up. */
  readonly plan: (job: PlanJob, plan: Plan) => void;
  /** There will be no plan of the last job until it is tried again. */
  readonly problem: (job: PlanJob, problem: PlanProblem) => void;
  /** The worker died and another one has taken up the job. */
  readonly restarted: () => void;
}

/**
 * An edit that comes so soon after another one is of a run, and is planned when no other has come for as long: a run of
 * edits makes two plans, of its first and of its last.
 */
export const QUIET_MS = 120;
/** A plan that nobody wants any more gets this long to end by itself: its memory is worth more than a short wait. */
export const PATIENCE_MS = 1500;
/** A script that has not come by then is taken for one that does not come. */
export const LOADING_MS = 60_000;
/** A stage of a plan that lasts longer than this is taken for one that never ends. */
export const SILENCE_MS = 180_000;

/** A timer that runs once at a time. */
function alarm() {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const off = () => {
    clearTimeout(timer);
    timer = undefined;
  };
  return {
    on: () => timer !== undefined,
    off,
    set: (ms: number, ring: () => void) => {
      off();
      timer = setTimeout(() => {
        timer = undefined;
        ring();
      }, ms);
    },
  };
}

/**
 * The one owner of the worker that plans: it starts it, gives it the last job that was asked for, ends it when it
 * works too long at an old one, and starts another when it dies. Every job that is the last one asked for ends in its
 * plan or in a problem. Each callback of a worker is bound to that worker and its job, and each timer is put out with
 * what it waited for, so that nothing of an earlier one can touch a later one.
 */
export class PlanLife {
  readonly #hire: HireWorker;
  readonly #told: LifeTold;
  /** The worker at hand, and whether it can take a job yet. */
  #hand: { worker: PlanWorker | null; ready: boolean } | null = null;
  #wanted: PlanJob | null = null;
  #running: PlanJob | null = null;
  /** The job that needs nothing more: planned, or told as a problem. */
  #answered: PlanJob | null = null;
  #deathsInARow = 0;
  readonly #quiet = alarm();
  /** On while the last edit is so new that another one makes a run with it. */
  readonly #lately = alarm();
  readonly #patience = alarm();
  readonly #silence = alarm();

  constructor(hire: HireWorker, told: LifeTold) {
    this.#hire = hire;
    this.#told = told;
  }

  /** Asks for the plan of a job instead of all before it; null: none is wanted any more. */
  ask(job: PlanJob | null): void {
    this.#wanted = job;
    if (this.#running !== null && !this.#patience.on()) {
      this.#patience.set(PATIENCE_MS, () => {
        this.#letGo();
        this.#next();
      });
    }
    this.#quiet.off();
    if (job === null) return;
    // The script loads while the person may still be at it.
    if (this.#hand === null) this.#start();
    if (this.#lately.on()) this.#quiet.set(QUIET_MS, () => this.#next());
    this.#lately.set(QUIET_MS, () => {});
    // One that stands alone is planned while the page draws it.
    this.#next();
  }

  /** Tries the last job again after a problem. */
  retry(): void {
    this.#answered = null;
    this.#next();
  }

  /** Shadows of the last plan made; none where its worker is gone. */
  shadows(): Promise<readonly ShadowArea[]> {
    return this.#hand?.ready && this.#hand.worker ? this.#hand.worker.shadows() : Promise.resolve([]);
  }

  /** What the wood and all else of a job would still cost; null where the worker is gone. */
  async cost(job: PlanJob): Promise<number | null> {
    return this.#hand?.ready && this.#hand.worker ? this.#hand.worker.cost(job) : null;
  }

  /** Nothing is left of the worker, whether it was ended or died. */
  #letGo(): void {
    this.#hand?.worker?.end();
    this.#hand = null;
    this.#running = null;
    this.#patience.off();
    this.#silence.off();
  }

  #died(why: Death): void {
    this.#letGo();
    const wanted = this.#wanted;
    if (wanted === null || wanted === this.#answered) return;
    this.#deathsInARow++;
    // An edit that was just made is tried before anything is told of the last one.
    if (this.#quiet.on()) return;
    if (why === 'script' || this.#deathsInARow > 1) {
      this.#answered = wanted;
      this.#told.problem(wanted, { kind: why });
      return;
    }
    this.#told.restarted();
    this.#next();
  }

  #start(): void {
    const mine: { worker: PlanWorker | null; ready: boolean } = { worker: null, ready: false };
    this.#hand = mine;
    this.#silence.set(LOADING_MS, () => this.#died('script'));
    mine.worker = this.#hire({
      ready: () => {
        if (this.#hand !== mine || mine.ready) return;
        mine.ready = true;
        this.#silence.off();
        this.#next();
      },
      died: (why) => {
        if (this.#hand === mine) this.#died(why);
      },
    });
  }

  /** Goes on with what is due, if it can be gone on with now. */
  #next(): void {
    const job = this.#wanted;
    if (job === null || job === this.#answered || this.#running !== null || this.#quiet.on()) return;
    if (this.#hand === null) this.#start();
    const worker = this.#hand?.ready ? this.#hand.worker : null;
    if (!worker) return;
    this.#running = job;
    this.#listen();
    worker.plan(job, this.#answersOf(worker, job));
  }

  #listen(): void {
    this.#silence.set(SILENCE_MS, () => this.#died('died'));
  }

  #answersOf(worker: PlanWorker, job: PlanJob): PlanAnswers {
    const isMine = () => this.#hand?.worker === worker && this.#running === job;
    const heard = (tell: () => void) => {
      if (!isMine()) return;
      this.#listen();
      if (job === this.#wanted) tell();
    };
    const ended = (tell: () => void) => {
      if (!isMine()) return;
      this.#running = null;
      this.#deathsInARow = 0;
      this.#patience.off();
      this.#silence.off();
      if (job === this.#wanted) this.#answered = job;
      tell();
      this.#next();
    };
    return {
      stage: (stage, share) => heard(() => this.#told.progress(stage, share)),
      draft: (plan) => heard(() => this.#told.draft(job, plan)),
      plan: (plan) => ended(() => this.#told.plan(job, plan)),
      failed: (why) =>
        ended(() => {
          if (job === this.#answered) this.#told.problem(job, { kind: 'failed', why });
        }),
    };
  }
}
