import type { StepId } from '../pane/steps.ts';
import type { EditorStore } from '../state/store.ts';

/** Opens the pane of a step; on a small screen it comes up over the drawing. */
export function showStep(store: EditorStore, step: StepId): void {
  store.setState({ step, tab: 'step', sheetOpen: true });
}
