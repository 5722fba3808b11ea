import { boxAround } from '../../geometry/box.ts';
import { commit } from '../state/commit.ts';
import { type EditorStore, say } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { movableBoxes } from './movable.ts';
import { editsToResize, type Resized, type Sizing } from './resizeSelection.ts';
import { selectionName } from './selection.ts';
import { ruleSentence } from './sentence.ts';

/** Gives the selected parts other sizes together, as one step of undo, and names the rules that it lets go. */
export function sizeSelection(store: EditorStore, sizings: readonly Sizing[]): void {
  const { selection, shown } = store.getState().edit;
  commitSizes(store, editsToResize(shown, selection, sizings));
}

/** The same, as it was worked out before; null: nothing gives way. */
export function commitSizes(store: EditorStore, resized: Resized | null): void {
  const { design, selection, shown } = store.getState().edit;
  const name = selectionName(design, selection);
  if (!resized) {
    store.setState({ notice: { tone: 'warn', text: t('say.nothingGives', { name }) } });
    return;
  }
  const { rules, boxes } = shown.layout;
  const lines = resized.letGo.map((rule) => ruleSentence(design, rule, rules));
  const label = t('did.resize', { name });
  const held = new Set(movableBoxes(design, boxes, selection).keys());
  if (!commit(store, resized.edits, label, { held, say: label })) return;
  const { design: now, shown: there } = store.getState().edit;
  const box = boxAround(movableBoxes(now, there.layout.boxes, selection).values());
  if (box)
    say(
      store,
      `${label}: ${t('say.size', { width: lengthText(now, box.w), height: lengthText(now, box.h) })}`,
    );
  if (lines.length > 0) store.setState({ notice: { tone: 'warn', text: t('say.letGoOf', { name }), lines } });
}
