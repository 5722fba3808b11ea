import type { Edit } from '../../design/edit/edit.ts';
import { replacing } from '../../design/edit/make.ts';
import type { Design, Rule } from '../../design/schema.ts';
import { preview, undo } from '../../design/state.ts';
import { type Document, documentOf, type Trial, tried } from '../document/document.ts';
import { named } from '../edit/arrange.ts';
import { editsToLay } from '../edit/lay.ts';
import { placesPart } from '../edit/loosen.ts';
import { ruleSentence } from '../edit/sentence.ts';
import { stopsTold } from '../edit/stopHere.ts';
import { type CommitOptions, commit } from '../state/commit.ts';
import type { EditorStore, Reading, Release } from '../state/store.ts';
import { t } from '../words/t.ts';
import { asInHand, type InHand, type Snap } from './snapping.ts';

/** How many other readings are offered: more would have to be read instead of seen. */
const MOST_NEXT = 3;

interface Released {
  readonly hand: InHand;
  readonly snap: Snap;
  /** The edits that the gesture makes with a snap, from the design before it. */
  readonly edits: (snap: Snap) => readonly Edit[];
  /** What was done, by the design that comes of it. */
  readonly label: (there: Design) => string;
  /** Said after the label. */
  readonly detail: string;
  readonly options: Omit<CommitOptions, 'say' | 'trial'>;
  /** What the edits of the snap came to in the hand. */
  readonly trial?: Trial;
}

/** Commits what a gesture decided, and says beside the part what holds it now and what else may have been meant. */
export function release(
  store: EditorStore,
  { hand, snap, edits, label, detail, options, trial }: Released,
): boolean {
  const before = store.getState().edit;
  const [only, ...more] = hand.parts;
  const isTold = only !== undefined && more.length === 0 && snap.rules.length > 0;
  const read = (snap: Snap): Reading => {
    const made = edits(snap);
    return readingOf(before.design, preview(before, made), only?.id ?? '', made);
  };
  const held = isTold ? read(snap) : null;
  const next = held ? otherReadings(held, snap.next, read) : [];
  const taken = held?.edits ?? edits(snap);
  const did = label(preview(before, taken));
  const lost = stopsTold(before.design, preview(before, taken));
  const spoken = [`${did}: ${detail}`, ...lost].join('. ');
  if (!commit(store, taken, did, { ...options, trial, say: spoken })) return false;
  const { design, selection } = store.getState().edit;
  if (!held || !only) return true;
  const free = { ...read(asInHand(hand)), rules: [], says: t('release.isFree') };
  store.setState({
    release: { before, design, part: only.id, selection, readings: [free, held, ...next], chosen: 1, label },
  });
  return true;
}

/** Readings that hold the part by something else, the likeliest first. */
function otherReadings(held: Reading, next: Snap['next'], read: (snap: Snap) => Reading): Reading[] {
  const found: Reading[] = [];
  const known = new Set(held.rules.map(({ says }) => says));
  for (const snap of next()) {
    if (found.length === MOST_NEXT) break;
    const reading = read(snap);
    const says = reading.rules.filter((rule) => !known.has(rule.says)).map((rule) => rule.says);
    if (says.length === 0) continue;
    for (const one of says) known.add(one);
    found.push({ ...reading, says: says.join(', ') });
  }
  return found;
}

/** What a design says of a part that it did not say before. */
function readingOf(before: Design, after: Design, part: string, edits: readonly Edit[]): Reading {
  const known = new Set(before.rules);
  const rules = after.rules
    .filter((rule) => !known.has(rule) && placesPart(rule, part))
    .map((rule) => ({ id: rule.id, says: ruleSentence(after, rule) }));
  return { edits, rules, says: rules.map(({ says }) => says).join(', ') };
}

/** Takes another reading of the last release instead: still one step of undo. */
export function readAgain(store: EditorStore, digit: number): boolean {
  const { release, edit } = store.getState();
  const reading = release?.readings[digit];
  if (!release || !reading || edit.design !== release.design) return false;
  return digit === release.chosen || take(store, release, digit, reading);
}

/** Has a rule of the reading that was taken go by another edge of what it is about. */
export function readOtherEdge(store: EditorStore, rule: Rule): void {
  const { release, edit } = store.getState();
  const now = release?.readings[release.chosen];
  if (!release || !now || edit.design !== release.design) return;
  const turned = [...now.edits, replacing('rules', rule)];
  const there = [...turned, ...placing(release.before, turned, release.part)];
  const held = new Set([release.part]);
  const laid = [...there, ...editsToLay(tried(release.before, there, held), held)];
  const isMade = !release.before.design.parts.some((part) => part.id === release.part);
  const unnamed = isMade ? [{ id: release.part, made: 'here' } as const] : [];
  const edits = named(release.before.shown, laid, unnamed);
  const after = preview(release.before, edits);
  take(store, release, release.chosen, readingOf(release.before.design, after, release.part, edits));
}

/** The part where its rules have it: it is what gives way to an edge that it is held to. */
function placing(doc: Document, edits: readonly Edit[], id: string): Edit[] {
  const { design, layout } = tried(doc, edits);
  const part = design.parts.find((one) => one.id === id);
  const box = layout.boxes.get(id);
  return part && box ? [replacing('parts', { ...part, box })] : [];
}

function take(store: EditorStore, release: Release, chosen: number, reading: Reading): boolean {
  const { edit } = store.getState();
  store.setState({ edit: documentOf(undo(edit), edit.shown) });
  const { selection, part, before, label } = release;
  const options = { selection, held: new Set([part]), say: reading.says };
  if (!commit(store, reading.edits, label(preview(before, reading.edits)), options)) {
    store.setState({ edit });
    return false;
  }
  const { design } = store.getState().edit;
  const readings = release.readings.map((one, i) => (i === chosen ? reading : one));
  store.setState({ release: { ...release, design, readings, chosen } });
  return true;
}
