import {
  MessageChannel,
  type MessagePort,
  parentPort,
  receiveMessageOnPort,
  Worker,
  workerData,
} from 'node:worker_threads';
import type { Cutting } from '../cutting/result.ts';
import type { Design } from '../design/schema.ts';
import { KeptResults } from '../layout/kept.ts';
import { type PlanFile, pictureFiles, planFiles } from '../output/files.ts';
import { JOINED_KINDS, PAINTED_KINDS } from '../output/packet/kinds.ts';
import { beginPacket, type PacketBegun } from '../output/packet/packet.ts';
import { type CutWork, cutWithJob } from '../plan/cuttingStage.ts';
import type { Beside } from '../plan/plan.ts';
import type { Joined, Painted, Pictured, Plan } from '../plan/types.ts';
import { readLetters } from './supplies.ts';

/** What starts a second thread: the script, and the made file that it runs. */
export interface Second {
  readonly script: string;
  readonly made: string;
}

/** Memory that both threads see: how many files of each sort are begun, and how far the cutting is. */
const SLOTS = { packet: 0, pictures: 1, others: 2, cutting: 3 } as const;
type Sort = 'packet' | 'pictures' | 'others';

/** Where each thread looks for files to make: the second one has begun the packet and the pictures. */
const ORDER = {
  first: ['others', 'pictures', 'packet'],
  second: ['packet', 'others', 'pictures'],
} as const satisfies Record<string, readonly Sort[]>;

/** Of the cutting; in between it counts its steps. */
const [NOT_BEGUN, DONE] = [0, -1];

/** Begins the cutting; false where the other thread has. */
const takesCutting = (begun: Int32Array): boolean =>
  Atomics.compareExchange(begun, SLOTS.cutting, NOT_BEGUN, 1) === NOT_BEGUN;

/** Milliseconds without a step of the cutting after which nobody is taken to be at it. */
const PATIENCE = 3000;

/** Waits for the cutting of the other thread; false where that has come to a stop. */
function isCut(begun: Int32Array): boolean {
  for (;;) {
    const step = Atomics.load(begun, SLOTS.cutting);
    if (step === DONE) return true;
    const woken = Atomics.wait(begun, SLOTS.cutting, step, PATIENCE);
    if (woken === 'timed-out' && Atomics.load(begun, SLOTS.cutting) === step) return false;
  }
}

/** What the second thread is told at its start. */
interface Start {
  readonly made: string;
  readonly design: Design;
  readonly begun: Int32Array;
  /** Brings the cutting to whoever waits for it. */
  readonly cut: MessagePort;
}

/** What it is told of the plan, in this order; boards and sheets are to be cut with the first of it. */
type Told =
  | { readonly joined: Joined; readonly cut: CutWork }
  | { readonly painted: Painted }
  | { readonly rest: Omit<Plan, keyof Pictured> };

type Bytes = Map<string, Uint8Array>;

/** What makes the plan beside the planner, and its files. */
export interface Hands {
  readonly beside?: Beside;
  /** Makes the files of a plan, named as they are, in their order. */
  readonly make: (plan: Plan, files: readonly PlanFile[]) => Promise<Bytes>;
}

/** One after the other, in this thread. */
export const oneThread: Hands = {
  make: async (_, files) => {
    const made: Bytes = new Map();
    for (const { name, make } of files) made.set(name, await make());
    return made;
  },
};

/** Makes files of one sort, each that nobody has begun, and puts them to `made`; lets messages in between. */
async function makeOpen(
  files: readonly PlanFile[],
  sort: Sort,
  begun: Int32Array,
  made: Bytes,
  goesOn: () => boolean = () => true,
): Promise<void> {
  while (goesOn()) {
    const file = files[Atomics.add(begun, SLOTS[sort], 1)];
    if (!file) return;
    made.set(file.name, await file.make());
    await new Promise((resolve) => setImmediate(resolve));
  }
}

/** The files of a plan by their sort. */
function sorted(plan: Plan, files: readonly PlanFile[]): Readonly<Record<Sort, readonly PlanFile[]>> {
  const pictures = new Set(pictureFiles(plan).map(({ name }) => name));
  const sortOf = ({ name }: PlanFile): Sort =>
    pictures.has(name) ? 'pictures' : name === 'packet.pdf' ? 'packet' : 'others';
  const of = (sort: Sort) => files.filter((file) => sortOf(file) === sort);
  return { packet: of('packet'), pictures: of('pictures'), others: of('others') };
}

/**
 * Two threads: the second one gets ready while the plan begins, cuts boards and sheets and makes the pictures while the
 * plan goes on, and then whichever is free takes the next file. What it does not bring, for whatever reason, is made
 * here, so that a fault is told as it would be without it.
 */
export function twoThreads({ script, made }: Second, design: Design): Hands {
  const begun = new Int32Array(
    new SharedArrayBuffer(Object.keys(SLOTS).length * Int32Array.BYTES_PER_ELEMENT),
  );
  const { port1: brings, port2: cut } = new MessageChannel();
  const start: Start = { made, design, begun, cut };
  const worker = new Worker(new URL(script), { workerData: start, transferList: [cut] });
  const gone = new Promise<Bytes>((resolve) => {
    for (const end of ['error', 'exit'] as const) worker.once(end, () => resolve(new Map()));
  });
  // A plan that comes to nothing ends without it; whoever listens for messages keeps the process waiting.
  worker.unref();
  const tell = (told: Told) => worker.postMessage(told);
  return {
    beside: {
      joined: (joined, work) => {
        tell({ joined, cut: work });
        return () => {
          if (takesCutting(begun) || !isCut(begun)) return null;
          return (receiveMessageOnPort(brings)?.message as Cutting | undefined) ?? null;
        };
      },
      painted: (painted) => tell({ painted }),
      planned: ({ cutting, fastening, marks, patterns, shopping, total, checks }) =>
        tell({ rest: { cutting, fastening, marks, patterns, shopping, total, checks } }),
    },
    make: async (plan, files) => {
      const brought = new Promise<Bytes>((resolve) => worker.once('message', resolve));
      worker.ref();
      const mine: Bytes = new Map();
      const sorts = sorted(plan, files);
      for (const sort of ORDER.first) await makeOpen(sorts[sort], sort, begun, mine);
      const theirs = await Promise.race([brought, gone]);
      const all: Bytes = new Map();
      for (const { name, make } of files) {
        all.set(name, mine.get(name) ?? theirs.get(name) ?? (await make()));
      }
      return all;
    },
  };
}

/** In the second thread: does what it is asked for as long as there is any of it, and ends. */
export function besideFirst(): void {
  const { design, begun, cut } = workerData as Start;
  const letters = readLetters(design);
  const made: Bytes = new Map();
  const known: Partial<Plan> = {};
  // One object grows to the plan: what was found for the first pages is known to the others.
  const grown = <P extends Partial<Plan>>(more: Partial<Plan>): P => Object.assign(known, more) as P;
  let packet: PacketBegun = {};
  let isWhole = false;
  parentPort?.on('message', async (told: Told) => {
    if ('joined' in told) {
      cutFor(told.cut, begun, cut);
      packet = beginPacket(JOINED_KINDS, grown<Joined>(told.joined));
    } else if ('painted' in told) {
      const pictured = grown<Pictured>(told.painted);
      packet = { ...packet, ...beginPacket(PAINTED_KINDS, pictured) };
      await makeOpen(pictureFiles(pictured), 'pictures', begun, made, () => !isWhole);
    } else {
      isWhole = true;
      const plan = grown<Plan>(told.rest);
      const sorts = sorted(plan, planFiles(plan, letters, packet));
      for (const sort of ORDER.second) await makeOpen(sorts[sort], sort, begun, made);
      parentPort?.postMessage(made);
      parentPort?.close();
    }
  });
}

/** Cuts, unless the first thread has begun; a fault is left to that, which comes to the same and tells it. */
function cutFor(work: CutWork, begun: Int32Array, port: MessagePort): void {
  if (!takesCutting(begun)) return;
  try {
    // Asked every some hundred steps.
    const cancelled = () => Atomics.add(begun, SLOTS.cutting, 1) === DONE;
    port.postMessage(
      cutWithJob(work, { nodes: work.nodes, watch: { cancelled }, results: new KeptResults() }),
    );
  } finally {
    Atomics.store(begun, SLOTS.cutting, DONE);
    Atomics.notify(begun, SLOTS.cutting);
  }
}
