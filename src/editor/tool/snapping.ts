import type { Edit } from '../../design/edit/edit.ts';
import type { Design, Rule } from '../../design/schema.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Layout } from '../../layout/laid.ts';
import type { Mm } from '../../measure/units.ts';
import type { EditorState } from '../state/store.ts';
import type { Guide } from './guide.ts';

/** What a drag is drawn to: how far, what is shown for it, and the rules that releasing would hold. */
export interface Snap {
  readonly dx: Mm;
  readonly dy: Mm;
  readonly guides: readonly Guide[];
  readonly rules: readonly Rule[];
}

export const NO_SNAP: Snap = { dx: 0, dy: 0, guides: [], rules: [] };

type Side = 'low' | 'high' | 'both' | null;

export interface Snapped {
  /** What is dragged; left out of what it can snap to. */
  readonly ids: readonly string[];
  readonly box: Box;
  readonly sides: { readonly x: Side; readonly y: Side };
}

export function snapBox(_state: EditorState, _layout: Layout, _snapped: Snapped): Snap {
  return NO_SNAP;
}

export function ruleEdits(
  _design: Design,
  _ids: ReadonlySet<string>,
  _snap: Snap,
  _created?: string,
): Edit[] {
  return [];
}
