import type { Design } from '../../design/schema.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import type { Plan } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import { onSpoken, spoken } from '../words/t.ts';
import type { EditorStore } from './store.ts';

export interface PlanState {
  readonly plan: Plan | null;
  /** A newer one is on its way. */
  readonly stale: boolean;
  readonly progress: { readonly stage: string; readonly share: number } | null;
  readonly problem: string | null;
}

/** What computes plans: a worker, or a stand-in in tests. */
export interface PlanMaker {
  /** Null when it was cancelled. */
  readonly make: (
    design: Design,
    correction: PrinterCorrection,
    language: Language,
    onStage: (stage: string, share: number) => void,
  ) => Promise<Plan | null>;
  readonly cancel: () => void;
  /** Shadows of the last plan made. */
  readonly shadows: () => Promise<readonly ShadowArea[]>;
}

/** Time after the last edit before a plan is begun, so that a run of edits makes one. */
const QUIET_MS = 120;

/** Keeps the plan up with the design: waits for a pause, drops what an edit has made old, latest wins. */
export function createPlanner(store: EditorStore, maker: PlanMaker) {
  let state: PlanState = { plan: null, stale: true, progress: null, problem: null };
  const listeners = new Set<() => void>();
  const set = (next: Partial<PlanState>) => {
    state = { ...state, ...next };
    for (const listener of listeners) listener();
  };
  let timer: ReturnType<typeof setTimeout> | undefined;
  let asked: Design | null = null;
  let busy = false;
  let next: Design | null = null;

  const run = async (design: Design) => {
    asked = design;
    busy = true;
    try {
      const plan = await maker.make(design, store.getState().correction, spoken(), (stage, share) => {
        if (asked === design) set({ progress: { stage, share } });
      });
      if (asked === design && plan) set({ plan, stale: false, progress: null, problem: null });
    } catch (error) {
      if (asked === design) {
        set({
          stale: false,
          progress: null,
          problem: error instanceof Error ? error.message : String(error),
        });
      }
    }
    busy = false;
    const waiting = next;
    next = null;
    if (waiting) void run(waiting);
  };

  const ask = (design: Design) => {
    set({ stale: true });
    clearTimeout(timer);
    asked = null;
    next = null;
    if (busy) maker.cancel();
    timer = setTimeout(() => {
      if (busy) next = design;
      else void run(design);
    }, QUIET_MS);
  };

  store.subscribe((now, before) => {
    if (now.designId === null) return;
    if (now.designId !== before.designId) set({ plan: null });
    const changed = now.edit.design !== before.edit.design || now.designId !== before.designId;
    if (changed || now.correction !== before.correction) ask(now.edit.design);
  });

  onSpoken(() => {
    const { designId, edit } = store.getState();
    if (designId !== null) ask(edit.design);
  });

  return {
    subscribe: (listener: () => void) => {
      listeners.add(listener);
      return () => {
        listeners.delete(listener);
      };
    },
    get: () => state,
    shadows: maker.shadows,
  };
}
