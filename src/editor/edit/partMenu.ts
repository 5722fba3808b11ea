import type { Point } from '../../geometry/shape.ts';
import type { EditorStore, PartMenuAt } from '../state/store.ts';

/** Opens the menu of what is selected at a place of the window; `too`: what was selected before and may be wanted too. */
export function openPartMenu(
  store: EditorStore,
  at: Point,
  opened: PartMenuAt['opened'],
  too: PartMenuAt['too'] = null,
): void {
  store.setState({ partMenu: { at, opened, too } });
}
