import { parentPort, Worker, workerData } from 'node:worker_threads';
import type { Design } from '../design/schema.ts';
import { type PlanFile, planFiles } from '../output/files.ts';
import type { Plan } from '../plan/types.ts';
import { readLetters } from './supplies.ts';

/** What starts a second thread: the script, and the made file that it runs. */
export interface Second {
  readonly script: string;
  readonly made: string;
}

/** What the second thread is told at its start. */
interface Start {
  readonly made: string;
  readonly design: Design;
}

/** What it is told once there is a plan. `taken` counts the files that one or the other has begun. */
interface Work {
  readonly plan: Plan;
  readonly taken: Int32Array;
}

type Bytes = Map<string, Uint8Array>;

/** Makes the files of a plan, named as they are, in their order. */
export type MakeFiles = (plan: Plan, files: readonly PlanFile[]) => Promise<Bytes>;

/** One after the other, in this thread. */
export const makeHere: MakeFiles = (_, files) => makeInTurn(files, new Int32Array(1));

/** Takes the next file that nobody has begun until there is none. */
async function makeInTurn(files: readonly PlanFile[], taken: Int32Array): Promise<Bytes> {
  const made: Bytes = new Map();
  for (;;) {
    const file = files[Atomics.add(taken, 0, 1)];
    if (!file) return made;
    made.set(file.name, await file.make());
  }
}

/**
 * Two threads: the second one gets ready while the plan is made, and whichever is free takes the next file. What it does
 * not bring, for whatever reason, is made here, so that a fault is told as it would be without it.
 */
export function makeWithSecond({ script, made }: Second, design: Design): MakeFiles {
  const start: Start = { made, design };
  const worker = new Worker(new URL(script), { workerData: start });
  const gone = new Promise<Bytes>((resolve) => {
    for (const end of ['error', 'exit'] as const) worker.once(end, () => resolve(new Map()));
  });
  // A plan that comes to nothing ends without it; whoever listens for messages keeps the process waiting.
  worker.unref();
  return async (plan, files) => {
    const taken = new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT));
    const brought = new Promise<Bytes>((resolve) => worker.once('message', resolve));
    worker.ref();
    worker.postMessage({ plan, taken } satisfies Work);
    const mine = await makeInTurn(files, taken);
    const theirs = await Promise.race([brought, gone]);
    const all: Bytes = new Map();
    for (const { name, make } of files) {
      all.set(name, mine.get(name) ?? theirs.get(name) ?? (await make()));
    }
    return all;
  };
}

/** In the second thread: waits for the plan, makes files as long as there are any, and ends. */
export function besideFirst(): void {
  const { design } = workerData as Start;
  const letters = readLetters(design);
  parentPort?.once('message', async ({ plan, taken }: Work) => {
    parentPort?.postMessage(await makeInTurn(planFiles(plan, letters), taken));
  });
}
