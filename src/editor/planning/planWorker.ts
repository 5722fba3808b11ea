import { proxy } from 'comlink';
import { startWorker } from './alive.ts';
import type { HireWorker } from './planLife.ts';
import type { Work } from './worker.ts';

/** Hires workers that plan beside the page, so that the drawing never waits for them. */
export const hirePlanWorker: HireWorker = ({ ready, died }) => {
  const { work, end } = startWorker<Work>(
    () => new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }),
    { ready, died },
  );
  return {
    plan: ({ design, correction, language }, { stage, draft, plan, failed }) =>
      void work
        .plan(design, correction, language, proxy(stage), proxy(draft))
        .then(plan, (error: unknown) => failed(error instanceof Error ? error.message : String(error))),
    shadows: () => work.shadows(),
    cost: ({ design, correction, language }) => work.cost(design, correction, language),
    end,
  };
};
