import { proxy, type Remote, wrap } from 'comlink';
import type { Design } from '../../design/schema.ts';
import type { PrinterCorrection } from '../../patterns/result.ts';
import type { Plan } from '../../plan/types.ts';
import type { Language } from '../../plan/words/languages.ts';
import type { Work } from '../worker.ts';
import type { PlanMaker } from './planner.ts';

/** A plan that nobody wants any more gets this long to end by itself before its worker is ended. */
const PATIENCE_MS = 1500;

/** Plans made in a worker, so that the drawing never waits for them. */
export function workerMaker(): PlanMaker {
  let worker: Worker | null = null;
  let remote: Remote<Work> | null = null;
  let running: { readonly giveUp: () => void } | null = null;
  let impatient: ReturnType<typeof setTimeout> | undefined;

  const start = (): Remote<Work> => {
    worker ??= new Worker(new URL('../worker.ts', import.meta.url), { type: 'module' });
    remote ??= wrap<Work>(worker);
    return remote;
  };
  const stop = () => {
    worker?.terminate();
    worker = null;
    remote = null;
  };

  return {
    make: (design: Design, correction: PrinterCorrection, language: Language, onStage) => {
      const plan = new Promise<Plan | null>((resolve, reject) => {
        const mine = { giveUp: () => resolve(null) };
        running = mine;
        start()
          .plan(design, correction, language, proxy(onStage))
          .then(resolve, reject)
          .finally(() => {
            if (running !== mine) return;
            running = null;
            clearTimeout(impatient);
          });
      });
      return plan;
    },
    shadows: () => start().shadows(),
    cancel: () => {
      if (!running) return;
      const { giveUp } = running;
      clearTimeout(impatient);
      // Its memory is worth more than a short wait; a long search is cut off.
      impatient = setTimeout(() => {
        if (!running) return;
        stop();
        running = null;
        giveUp();
      }, PATIENCE_MS);
    },
  };
}
