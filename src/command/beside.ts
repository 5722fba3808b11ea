import {
  MessageChannel,
  type MessagePort,
  parentPort,
  receiveMessageOnPort,
  type Worker,
} from 'node:worker_threads';
import type { Design } from '../design/schema.ts';
import { KeptResults } from '../layout/kept.ts';
import { type PlanFile, planFiles } from '../output/files.ts';
import { JOINED_KINDS, PAINTED_KINDS } from '../output/packet/kinds.ts';
import { beginPacket, type PacketBegun } from '../output/packet/packet.ts';
import type { Letters } from '../output/pdf/letters.ts';
import { shadowsOn } from '../output/picture/shadows.ts';
import { cutWithJob } from '../plan/cuttingStage.ts';
import type { Beside, Done, Work } from '../plan/plan.ts';
import { plansOf } from '../plan/stages/patterns.ts';
import type { Joined, Painted, Pictured, Plan } from '../plan/types.ts';
import { readLetters } from './supplies.ts';

/** A second thread, which gets ready; `gone` comes with its end. */
export interface Second {
  readonly worker: Worker;
  readonly gone: Promise<unknown>;
}

/** Memory that both threads see: how many files are begun, and how far each work beside the plan is. */
const SLOTS = { files: 0, cutting: 1, patterns: 2, shadows: 3 } as const;

/** What the second thread does for the first one, and is asked for. */
interface Works extends Work {
  readonly shadows: Pictured;
}
interface Results extends Done {
  readonly shadows: ReturnType<typeof shadowsOn>;
}
type What = keyof Results;

/** Of a work; in between it counts its steps. */
const [NOT_BEGUN, DONE] = [0, -1];

/** Begins a work; false where the other thread has. */
const takes = (begun: Int32Array, what: What): boolean =>
  Atomics.compareExchange(begun, SLOTS[what], NOT_BEGUN, 1) === NOT_BEGUN;

/** Milliseconds without a step of a work after which nobody is taken to be at it. */
const PATIENCE = 3000;

/** Waits for a work of the other thread; false where that has come to a stop. */
function isDone(begun: Int32Array, what: What): boolean {
  for (;;) {
    const step = Atomics.load(begun, SLOTS[what]);
    if (step === DONE) return true;
    const woken = Atomics.wait(begun, SLOTS[what], step, PATIENCE);
    if (woken === 'timed-out' && Atomics.load(begun, SLOTS[what]) === step) return false;
  }
}

/** What the second thread is told first. */
interface Start {
  readonly design: Design;
  readonly begun: Int32Array;
  /** Brings what is done to whoever waits for it. */
  readonly done: MessagePort;
}

/** What it is told of the plan, in this order. */
type Told =
  | { readonly start: Start }
  | { readonly joined: Joined; readonly work: Work }
  | { readonly painted: Painted }
  | { readonly rest: Omit<Plan, keyof Pictured> };

type Bytes = Map<string, Uint8Array>;

/** What makes the plan beside the planner, and its files. */
export interface Hands {
  readonly beside?: Beside;
  /** Makes files, named as they are, in their order. */
  readonly make: (files: readonly PlanFile[]) => Promise<Bytes>;
}

/** One after the other, in this thread. */
export const oneThread: Hands = {
  make: async (files) => {
    const made: Bytes = new Map();
    for (const { name, make } of files) made.set(name, await make());
    return made;
  },
};

/** The second thread has begun it, and nobody else is as soon done. */
const isPacket = ({ name }: PlanFile): boolean => name === 'packet.pdf';

/** Makes files but the packet, each that nobody has begun, and puts them to `made`; lets messages in before each. */
async function makeOpen(files: readonly PlanFile[], begun: Int32Array, made: Bytes): Promise<void> {
  const open = files.filter((file) => !isPacket(file));
  for (;;) {
    await new Promise((resolve) => setImmediate(resolve));
    const file = open[Atomics.add(begun, SLOTS.files, 1)];
    if (!file) return;
    made.set(file.name, await file.make());
  }
}

/**
 * Two threads: the second one gets ready while the plan begins, lays out patterns, cuts boards and sheets and begins the
 * packet while the plan goes on, and then whichever is free takes the next file. What it does not bring, for whatever
 * reason, is made here, so that a fault is told as it would be without it.
 */
export function twoThreads({ worker, gone }: Second, design: Design): Hands {
  const begun = new Int32Array(
    new SharedArrayBuffer(Object.keys(SLOTS).length * Int32Array.BYTES_PER_ELEMENT),
  );
  const { port1: brings, port2: done } = new MessageChannel();
  const tell = (told: Told, ports: readonly MessagePort[] = []) => worker.postMessage(told, ports);
  tell({ start: { design, begun, done } }, [done]);
  const brought: { [W in What]: Results[W] | null } = { cutting: null, patterns: null, shadows: null };
  const asked =
    <W extends What>(what: W) =>
    (): Results[W] | null => {
      if (takes(begun, what) || !isDone(begun, what)) return null;
      for (let one = receiveMessageOnPort(brings); one; one = receiveMessageOnPort(brings)) {
        Object.assign(brought, one.message);
      }
      return brought[what];
    };
  return {
    beside: {
      joined: (joined, work) => {
        tell({ joined, work });
        return { cutting: asked('cutting'), patterns: asked('patterns') };
      },
      painted: (painted) => tell({ painted }),
      planned: (plan) => {
        const { cutting, fastening, patterns, shopping, total, checks } = plan;
        tell({ rest: { cutting, fastening, patterns, shopping, total, checks } });
        const shadows = asked('shadows')();
        if (shadows) shadowsOn.know(plan, shadows);
      },
    },
    make: async (files) => {
      const brought = new Promise<Bytes>((resolve) => worker.once('message', resolve));
      // Until here a plan that comes to nothing ends without it.
      worker.ref();
      const mine: Bytes = new Map();
      await makeOpen(files, begun, mine);
      const theirs = await Promise.race([brought, gone.then((): Bytes => new Map())]);
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
  const made: Bytes = new Map();
  const known: Partial<Plan> = {};
  // One object grows to the plan: what was found for the first pages is known to the others.
  const grown = <P extends Partial<Plan>>(more: Partial<Plan>): P => Object.assign(known, more) as P;
  let packet: PacketBegun = {};
  let started: (Start & { readonly letters: Letters }) | null = null;
  parentPort?.on('message', async (told: Told) => {
    if ('start' in told) {
      started = { ...told.start, letters: readLetters(told.start.design) };
      return;
    }
    if (!started) return;
    const { begun, done, letters } = started;
    if ('joined' in told) {
      workFor('patterns', told.work.patterns, begun, done);
      workFor('cutting', told.work.cutting, begun, done);
      packet = beginPacket(JOINED_KINDS, grown<Joined>(told.joined));
    } else if ('painted' in told) {
      const pictured = grown<Pictured>(told.painted);
      workFor('shadows', pictured, begun, done);
      packet = { ...packet, ...beginPacket(PAINTED_KINDS, pictured) };
    } else {
      const plan = grown<Plan>(told.rest);
      const files = planFiles(plan, letters, packet);
      for (const { name, make } of files.filter(isPacket)) made.set(name, await make());
      await makeOpen(files, begun, made);
      parentPort?.postMessage(made);
      parentPort?.close();
    }
  });
}

/** How each work is done; `steps` is asked every now and then. */
const HOW: { readonly [W in What]: (work: Works[W], steps: () => void) => Results[W] } = {
  cutting: (work, steps) => {
    // Asked every some hundred steps.
    const cancelled = () => {
      steps();
      return false;
    };
    return cutWithJob(work, { nodes: work.nodes, watch: { cancelled }, results: new KeptResults() });
  },
  patterns: plansOf,
  shadows: shadowsOn,
};

/** Does a work, unless the first thread has begun; a fault is left to that, which comes to the same and tells it. */
function workFor<W extends What>(what: W, work: Works[W], begun: Int32Array, port: MessagePort): void {
  if (!takes(begun, what)) return;
  try {
    const done = HOW[what](work, () => Atomics.add(begun, SLOTS[what], 1));
    port.postMessage({ [what]: done });
  } finally {
    Atomics.store(begun, SLOTS[what], DONE);
    Atomics.notify(begun, SLOTS[what]);
  }
}
