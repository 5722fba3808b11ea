import { applyEdits, type Edit, type EditProblem } from './edit/edit.ts';
import { EMPTY_HISTORY, type History, record, stepBack, stepForward } from './history.ts';
import type { Design } from './schema.ts';

/** What is being worked on: the design, what is selected, and the way back. Immutable. */
export interface EditState {
  readonly design: Design;
  /** Ids of parts, keep-clears or groups. */
  readonly selection: readonly string[];
  readonly history: History;
}

/** What a person did, as one step: the edits, what to call it, and what is selected afterwards. */
export interface Transaction {
  readonly edits: readonly Edit[];
  /** Shown with undo and redo, such as "Move left stile". */
  readonly label: string;
  /** Kept when absent. */
  readonly selection?: readonly string[];
  /** Steps in a row with the same key are one step of undo (a run of arrow keys, say). */
  readonly merge?: string;
}

export type TransactResult =
  | { readonly ok: true; readonly state: EditState }
  | { readonly ok: false; readonly problem: EditProblem };

export function startState(design: Design): EditState {
  return { design, selection: [], history: EMPTY_HISTORY };
}

/** Carries a transaction out as one step of undo, or leaves the state as it is and says why. */
export function transact(state: EditState, transaction: Transaction): TransactResult {
  const done = applyEdits(state.design, transaction.edits);
  if (!done.ok) return done;
  const selection = transaction.selection ?? state.selection;
  if (transaction.edits.length === 0) return { ok: true, state: { ...state, selection } };
  const history = record(state.history, {
    undo: done.inverse,
    redo: transaction.edits,
    label: transaction.label,
    before: state.selection,
    after: selection,
    merge: transaction.merge ?? null,
  });
  return { ok: true, state: { design: done.design, selection, history } };
}

/** The design as it would be; for gestures that are not finished. Edits that do not apply change nothing. */
export function preview(state: EditState, edits: readonly Edit[]): Design {
  const done = applyEdits(state.design, edits);
  return done.ok ? done.design : state.design;
}

/** Takes the last step back, selection included. The same state comes back when there is none. */
export function undo(state: EditState): EditState {
  const back = stepBack(state.history);
  return back ? stepped(state, back.history, back.step.undo, back.step.before) : state;
}

/** Does again what was undone last. */
export function redo(state: EditState): EditState {
  const next = stepForward(state.history);
  return next ? stepped(state, next.history, next.step.redo, next.step.after) : state;
}

export const undoLabel = (state: EditState): string | null => state.history.done.at(-1)?.label ?? null;
export const redoLabel = (state: EditState): string | null => state.history.undone.at(-1)?.label ?? null;

/** Steps of the history always fit the design they were recorded on; if not, the history is corrupt. */
function stepped(
  { design }: EditState,
  history: History,
  edits: readonly Edit[],
  selection: EditState['selection'],
): EditState {
  const done = applyEdits(design, edits);
  if (!done.ok) throw new Error(`history does not fit the design: ${done.problem.code} ${done.problem.id}`);
  return { design: done.design, selection, history };
}
