import type { Axis, Edge } from '../../design/schema.ts';
import { align } from '../../layout/arrange/align.ts';
import type { Arranged, Arranging } from '../../layout/arrange/arranged.ts';
import { mirrorCopy } from '../../layout/arrange/mirror.ts';
import { commit } from '../state/commit.ts';
import type { EditorStore } from '../state/store.ts';
import { t } from '../words/t.ts';
import { arrangingOf, editsToArrange } from './arrange.ts';
import { partsIn } from './movable.ts';
import { selectionName } from './selection.ts';

/** Arranges the selected parts in one step of undo; what it adds is selected then. Nothing without a part. */
export function arrangeSelection(
  store: EditorStore,
  make: (on: Arranging, ids: readonly string[]) => Arranged,
): void {
  const { design, selection, shown } = store.getState().edit;
  const ids = partsIn(design, selection);
  if (ids.length === 0) return;
  const arranged = make(arrangingOf(shown), ids);
  const edits = editsToArrange(shown, arranged);
  const options = arranged.add.length > 0 ? { selection: arranged.add.map((p) => p.id) } : {};
  if (edits.length > 0)
    commit(store, edits, t('did.arrange', { name: selectionName(design, selection) }), options);
}

/** Copies parts to the other side of the middle of the face, the selected ones where none are given. */
export function mirrorSelection(store: EditorStore, axis: Axis, parts?: readonly string[]): void {
  arrangeSelection(store, (on, ids) =>
    mirrorCopy(on, parts ?? ids, { axis, about: { of: 'face', side: 'mid' } }),
  );
}

/** Brings the same edge of the selected parts into one line: of a single part, into that of the face. */
export function alignSelection(store: EditorStore, axis: Axis, side: Edge['side'], hold: boolean): void {
  arrangeSelection(store, (on, ids) =>
    align(on, ids, { axis, side, hold, ...(ids.length === 1 ? { to: { of: 'face', side } } : {}) }),
  );
}
