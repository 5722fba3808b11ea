import type { BenchStep } from '../cutting/atSaw.ts';
import { doneAmong, nextOpen } from '../cutting/atSaw.ts';
import { factsOf, type Saying } from '../design/job/record.ts';
import type { Fact } from '../design/job/schema.ts';
import type { Box } from '../geometry/shape.ts';
import type { Step } from '../marks/result.ts';

type Act = Step['act'];

/** What a step of the order of work comes to: wood that is sawn, parts that are on for good, paint, or none of them. */
const KIND: Readonly<Record<Act, 'saw' | 'fasten' | 'paint' | 'all' | 'other'>> = {
  prepare: 'all',
  'cut-sheets': 'saw',
  'cut-boards': 'saw',
  notch: 'other',
  groove: 'other',
  'prime-backs': 'paint',
  'mask-glue': 'other',
  'mask-joints': 'other',
  'paint-before': 'paint',
  mark: 'all',
  'paint-ground': 'paint',
  'dry-fit': 'other',
  fix: 'fasten',
  'cut-in-place': 'other',
  assemble: 'fasten',
  bend: 'fasten',
  'measure-in-place': 'fasten',
  letter: 'paint',
  'paint-around-letters': 'paint',
  'mount-letters': 'other',
  'mount-print': 'other',
  'paint-after': 'paint',
  'last-coat': 'paint',
  'fit-hardware': 'fasten',
  'try-swing': 'all',
};

export const kindOf = ({ act }: Pick<Step, 'act'>) => KIND[act];

interface Done {
  readonly id: string;
  readonly part: string | null;
  readonly of: string | null;
  readonly finish: string | null;
}

/** What a step consists of: each painting of it, each part, or it as a whole. */
function consistsOf({ act, parts, paints }: Step): readonly Done[] {
  const id = (part: string, of = '') => `done:${act}:${part}:${of}`;
  if (paints.length > 0)
    return paints.map(({ part, of, finish }) => ({ id: id(part, of), part, of, finish }));
  if (parts.length > 0) return parts.map((part) => ({ id: id(part), part, of: null, finish: null }));
  return [{ id: id(''), part: null, of: null, finish: null }];
}

/** What is said where a step is done; parts that are fastened are said to be where they lie. */
export const stepSaying = (step: Step, boxes: ReadonlyMap<string, Box>): readonly Saying[] =>
  consistsOf(step).map((one): Saying => {
    const box = one.part !== null && kindOf(step) === 'fasten' ? boxes.get(one.part) : undefined;
    return { is: 'done', act: step.act, ...one, box: box ? [box.x, box.y, box.w, box.h] : null };
  });

export const stepIds = (step: Step): ReadonlySet<string> => new Set(consistsOf(step).map(({ id }) => id));

/** How much of something is done. */
export interface Count {
  readonly done: number;
  readonly all: number;
}

export interface WorkInput {
  readonly steps: readonly Step[];
  /** At the saw, and which of them are done. */
  readonly sawing: readonly BenchStep[];
  readonly sawn: ReadonlySet<string>;
  readonly facts: readonly Fact[];
}

export interface Work {
  readonly done: ReadonlySet<Step>;
  readonly cut: Count;
  readonly fastened: Count;
  readonly painted: Count;
  /** What comes next; null where all is done. */
  readonly next: Step | null;
  /** The next thing at the saw, where that is what comes next. */
  readonly atSaw: BenchStep | null;
  /** Parts whose paint was put on last, or comes next. */
  readonly wet: readonly string[];
  /** What can be done while that dries: it touches none of it, and waits for nothing else. */
  readonly meanwhile: readonly Step[];
}

/**
 * How far the work is, and what comes next. What is sawn is known from the pieces; what is painted counts while it is to
 * be painted in that finish.
 */
export function workOf({ steps, sawing, sawn, facts }: WorkInput): Work {
  const said = new Map(factsOf(facts, 'done').map((fact) => [fact.id, fact]));
  const isSaid = ({ id, finish }: Done) => said.get(id)?.finish === finish;
  const cutDone = doneAmong(sawing, sawn);
  const pieces = sawing.filter((step) => step.kind !== 'sheet-cut');
  const isCut = (form: (sheet: boolean) => boolean) =>
    pieces.every((step) => !form(step.piece.form === 'sheet') || cutDone.has(step.id));
  const isDone = (step: Step): boolean => {
    if (step.act === 'cut-sheets') return isCut((sheet) => sheet);
    if (step.act === 'cut-boards') return isCut((sheet) => !sheet);
    return consistsOf(step).every(isSaid);
  };
  const done = new Set(steps.filter(isDone));
  const counted = (kind: 'fasten' | 'paint'): Count => {
    const all = steps.filter((step) => kindOf(step) === kind).flatMap(consistsOf);
    return { done: all.filter(isSaid).length, all: all.length };
  };
  const open = steps.filter((step) => !done.has(step));
  const { next, wet } = comesNext(steps, open, said);
  const sawNext = next && kindOf(next) === 'saw' ? nextCut(sawing, cutDone, next) : null;
  return {
    ...{ done, next, wet, atSaw: sawNext },
    cut: { done: pieces.filter(({ id }) => cutDone.has(id)).length, all: pieces.length },
    ...{ fastened: counted('fasten'), painted: counted('paint') },
    meanwhile: wet.length === 0 ? [] : open.filter((step) => step !== next && isFree(step, open, wet)),
  };
}

function nextCut(sawing: readonly BenchStep[], done: ReadonlySet<string>, { act }: Step): BenchStep | null {
  const own = sawing.filter(
    (step) => (act === 'cut-sheets') === (step.kind === 'sheet-cut' || step.kind === 'sheet-piece'),
  );
  const at = nextOpen(own, done, own.length - 1);
  return at === null ? null : (own[at] ?? null);
}

/** The first step that is open and touches no wet paint; where all do, the first. */
function comesNext(
  steps: readonly Step[],
  open: readonly Step[],
  said: ReadonlyMap<string, { readonly at: number }>,
): { readonly next: Step | null; readonly wet: readonly string[] } {
  const [first] = open;
  if (!first) return { next: null, wet: [] };
  // The last that was said is wet where it was paint: nobody knows for how long.
  const when = (step: Step) => Math.max(0, ...consistsOf(step).map(({ id }) => said.get(id)?.at ?? 0));
  const last = steps.reduce<Step | null>((a, b) => (when(b) > (a ? when(a) : 0) ? b : a), null);
  const wet = last && kindOf(last) === 'paint' && !open.includes(last) ? last.parts : [];
  if (wet.length > 0) return { next: open.find((step) => isFree(step, open, wet)) ?? first, wet };
  return { next: first, wet: kindOf(first) === 'paint' ? first.parts : [] };
}

const shares = (a: readonly string[], b: readonly string[]): boolean => a.some((part) => b.includes(part));

/** Whether a step can be done now: it touches nothing wet, and waits for no step before it that is open. */
function isFree(step: Step, open: readonly Step[], wet: readonly string[]): boolean {
  if (shares(step.parts, wet)) return false;
  return open.every((other) => other.number >= step.number || !waitsFor(step, other));
}

function waitsFor(step: Step, earlier: Step): boolean {
  if (step.act === 'try-swing' || earlier.act === 'prepare') return true;
  const fastens = kindOf(step) === 'fasten' || step.act === 'dry-fit';
  if (earlier.act === 'mark' || (fastens && kindOf(earlier) === 'fasten')) return fastens;
  // Nothing can be done with a part before it is sawn, and each thing with it in its order.
  return shares(step.parts, earlier.parts);
}
