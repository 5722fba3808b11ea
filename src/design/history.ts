import type { Edit } from './edit/edit.ts';

/** One step that can be taken back and done again. */
export interface HistoryStep {
  readonly undo: readonly Edit[];
  readonly redo: readonly Edit[];
  readonly label: string;
  readonly before: readonly string[];
  readonly after: readonly string[];
  readonly merge: string | null;
}

/** Two branches of steps, last one at the end of each. Plain data. */
export interface History {
  readonly done: readonly HistoryStep[];
  readonly undone: readonly HistoryStep[];
}

export const EMPTY_HISTORY: History = { done: [], undone: [] };

/** Steps kept; older ones are forgotten so that a long evening's work stays small. */
export const MOST_STEPS = 500;

/** Adds a step; what was undone is forgotten. A step with the merge key of the last one grows it instead. */
export function record(history: History, step: HistoryStep): History {
  const last = history.done.at(-1);
  if (last && step.merge !== null && last.merge === step.merge && history.undone.length === 0) {
    const merged: HistoryStep = {
      ...step,
      undo: [...step.undo, ...last.undo],
      redo: [...last.redo, ...step.redo],
      before: last.before,
    };
    return { done: [...history.done.slice(0, -1), merged], undone: [] };
  }
  return { done: [...history.done, step].slice(-MOST_STEPS), undone: [] };
}

export function stepBack(history: History): { step: HistoryStep; history: History } | null {
  const step = history.done.at(-1);
  if (!step) return null;
  // A step that was undone and done again never merges with what follows it.
  const closed = { ...step, merge: null };
  return { step, history: { done: history.done.slice(0, -1), undone: [...history.undone, closed] } };
}

export function stepForward(history: History): { step: HistoryStep; history: History } | null {
  const step = history.undone.at(-1);
  if (!step) return null;
  return { step, history: { done: [...history.done, step], undone: history.undone.slice(0, -1) } };
}
