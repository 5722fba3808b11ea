import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Design } from '../../design/schema.ts';
import { type EditState, preview, startState, type Transaction, transact } from '../../design/state.ts';
import { settled } from '../../layout/settle.ts';
import { type Shown, shownFrom } from './shown.ts';

/** What is being worked on, laid out: each is made from the last one, whole. Immutable. */
export interface Document extends EditState {
  /** Of this very design. */
  readonly shown: Shown;
}

/** A design as it is opened, with no way back. */
export const freshDocument = (design: Design): Document => ({
  ...startState(design),
  shown: shownFrom(design),
});

/** A state of editing that came from another one, such as by undo. */
export const documentOf = (edit: EditState, last: Shown): Document => ({
  ...edit,
  shown: edit.design === last.design && last.held.size === 0 ? last : shownFrom(edit.design, undefined, last),
});

/** The document as edits would leave it; for gestures that are not finished. Edits that do not apply change nothing. */
export const tried = (
  doc: Document,
  edits: readonly Edit[],
  held?: ReadonlySet<string>,
  last: Shown = doc.shown,
): Shown => shownFrom(preview(doc, edits), held, last);

/** What some edits of a document came to: the last step of a drag, say. */
export interface Trial {
  readonly doc: Document;
  readonly edits: readonly Edit[];
  readonly shown: Shown;
}

/**
 * Carries edits out as one step of undo; null where they do not fit the design.
 * @param trial what the edits came to, where that is known: it is not laid out again
 */
export function carriedOut(
  doc: Document,
  { edits, ...step }: Transaction,
  held?: ReadonlySet<string>,
  trial?: Trial,
): Document | null {
  const made = trial?.doc === doc && trial.edits === edits ? trial.shown : tried(doc, edits, held);
  const settles = made.design === doc.design ? [] : settling(made);
  const done = transact(doc, { ...step, edits: [...edits, ...settles] });
  if (!done.ok) return null;
  // Where nothing settles it is the very design that was laid out.
  const state = settles.length === 0 ? { ...done.state, design: made.design } : done.state;
  return documentOf(state, made);
}

/** The edits that write solved places into the design, so that nothing jumps back when a rule is taken away. */
function settling({ design, layout }: Shown): Edit[] {
  const boxes = new Map(settled(design, layout).map((s) => [s.part, s.box]));
  return design.parts.flatMap((part) => {
    const box = boxes.get(part.id);
    return box ? [replacing('parts', { ...part, box })] : [];
  });
}
