import type { Edit } from '../../design/edit/edit.ts';
import { liveFacts } from '../../design/job/record.ts';
import type { Design } from '../../design/schema.ts';
import { redo, redoLabel, undo, undoLabel } from '../../design/state.ts';
import { carriedOut, type Document, documentOf, freshDocument, type Trial } from '../document/document.ts';
import type { Touching } from '../document/touching.ts';
import { t } from '../words/t.ts';
import { emptyDesign } from './language.ts';
import { type EditorState, type EditorStore, inPanes, type SideTab, say } from './store.ts';
import { foreseeTouching, loadTouching, touchingNow } from './touching.ts';

export interface CommitOptions {
  readonly selection?: readonly string[];
  /** Steps in a row with the same key undo as one. */
  readonly merge?: string;
  /** Announced instead of the label. */
  readonly say?: string;
  /** Parts that the hand placed: others give way to them. */
  readonly held?: ReadonlySet<string>;
  /** What the edits came to in the hand. */
  readonly trial?: Trial | undefined;
  /** What it does to what is done is known and wanted. */
  readonly settled?: boolean;
  /** Parts that it is said of what they are: those are not asked about. */
  readonly said?: ReadonlySet<string>;
}

/**
 * Carries edits out as one step of undo and announces it. False when they do not fit the design, and where they touch
 * what is done: that is asked first.
 */
export function commit(
  store: EditorStore,
  edits: readonly Edit[],
  label: string,
  options: CommitOptions = {},
): boolean {
  const { say: spoken, held, trial, settled, said, ...rest } = options;
  const from = store.getState().edit;
  const done = carriedOut(from, { edits, label, ...rest }, held, trial);
  if (!done) {
    store.setState({ provisional: null });
    say(store, t('say.refused', { label }));
    return false;
  }
  const asks = (all: Touching): boolean => {
    const touching = said ? besides(all, said) : all;
    const touched = touching.of(from.shown, done.shown);
    if (touched.length === 0) return false;
    store.setState({
      doneQuestion: { from, edits, label, selection: rest.selection, held, touched, touching },
      provisional: { shown: done.shown, guides: [], live: false },
    });
    return true;
  };
  const isAsked = !settled && liveFacts(from.design.job).length > 0;
  const touching = touchingNow();
  if (isAsked && touching && asks(touching)) return false;
  // What was offered for the design as it was is not offered any more.
  store.setState(({ notice }) => ({
    edit: done,
    provisional: null,
    notice: notice?.offer ? null : notice,
  }));
  say(store, spoken ?? label);
  foreseeTouching(done.design);
  if (isAsked && !touching) askLate(store, from, done, asks);
  return true;
}

const besides = ({ of, ...more }: Touching, said: ReadonlySet<string>): Touching => ({
  ...more,
  of: (before, after) => of(before, after).filter(({ part }) => !said.has(part)),
});

/** What can tell was still on its way: the change is taken back and asked about where nothing was done since. */
function askLate(store: EditorStore, from: Document, done: Document, asks: (touching: Touching) => boolean) {
  loadTouching().then(
    (touching) => {
      if (store.getState().edit === done && asks(touching)) store.setState({ edit: from });
    },
    () => {},
  );
}

/** Selects; in the layout step the fields of what is selected come forward, unless the part list is in use. */
export function select(store: EditorStore, selection: readonly string[]): void {
  store.setState((s) => selected(s, selection));
}

/** Selects what a hand takes; the panes stay as they are until nothing is pressed any more. */
export function selectInHand(store: EditorStore, selection: readonly string[]): void {
  store.setState((s) => {
    const next = selected(s, selection);
    return { ...next, pressed: { ...inPanes(s), edit: next.edit } };
  });
}

const selected = (s: EditorState, selection: readonly string[]) => ({
  edit: { ...s.edit, selection },
  corner: null,
  opening: null,
  tab: tabFor(s, selection.length > 0),
});

function tabFor({ tab, step }: EditorState, some: boolean): SideTab {
  if (tab === 'parts') return tab;
  if (some) return step === 'layout' ? 'part' : tab;
  return tab === 'part' ? 'step' : tab;
}

export const undoStep = (store: EditorStore): void => walk(store, undoLabel, undo, 'say.undone');
export const redoStep = (store: EditorStore): void => walk(store, redoLabel, redo, 'say.redone');

function walk(
  store: EditorStore,
  labelOf: typeof undoLabel,
  step: typeof undo,
  told: 'say.undone' | 'say.redone',
) {
  const label = labelOf(store.getState().edit);
  if (label === null) return;
  store.setState((s) => ({ edit: documentOf(step(s.edit), s.edit.shown), provisional: null, corner: null }));
  say(store, t(told, { label }));
}

/** Takes another design onto the bench; its way back starts anew. */
export function openInto(store: EditorStore, designId: string, design: Design): void {
  foreseeTouching(design);
  store.setState({
    designId,
    edit: freshDocument(design),
    provisional: null,
    frame: null,
    hud: null,
    field: null,
    corner: null,
    opening: null,
    path: [],
    fitted: true,
    tab: 'step',
    tool: 'select',
    stock: null,
  });
}

/** Leaves the bench empty: an empty bed that measures as the design before it did. What was kept stays kept. */
export function putAway(store: EditorStore): void {
  store.setState(({ edit }) => ({
    designId: null,
    edit: freshDocument(emptyDesign(edit.design.measure)),
    provisional: null,
    field: null,
  }));
}
