import type { StepId } from './steps.ts';
import type { EditorStore } from './store.ts';

/** Opens the pane of a step; on a small screen it comes up over the drawing. */
export function showStep(store: EditorStore, step: StepId): void {
  store.setState({ step, tab: 'step', sheetOpen: true });
}
