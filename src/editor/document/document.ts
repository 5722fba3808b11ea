import type { Edit } from '../../design/edit/edit.ts';
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
  shown: edit.design === last.design ? last : shownFrom(edit.design, undefined, last),
});

/** The document as edits would leave it; for gestures that are not finished. Edits that do not apply change nothing. */
export const tried = (
  doc: Document,
  edits: readonly Edit[],
  held?: ReadonlySet<string>,
  last: Shown = doc.shown,
): Shown => shownFrom(preview(doc, edits), held, last);

/** Carries edits out as one step of undo; null where they do not fit the design. */
export function carriedOut(
  doc: Document,
  { edits, ...step }: Transaction,
  held?: ReadonlySet<string>,
): Document | null {
  const made = tried(doc, edits, held);
  const done = transact(doc, {
    ...step,
    edits: [...edits, ...(made.design === doc.design ? [] : settling(made))],
  });
  return done.ok ? documentOf(done.state, made) : null;
}

/** The edits that write solved places into the design, so that nothing jumps back when a rule is taken away. */
function settling({ design, layout }: Shown): Edit[] {
  const boxes = new Map(settled(design, layout).map((s) => [s.part, s.box]));
  return design.parts.flatMap((part) => {
    const box = boxes.get(part.id);
    return box ? [{ kind: 'replace', list: 'parts', id: part.id, item: { ...part, box } } as const] : [];
  });
}
