import type { PlanMaker } from './planner.ts';

/** Plans made in a worker, so that the drawing never waits for them. */
export function workerMaker(): PlanMaker {
  return { make: async () => null, cancel: () => {} };
}
