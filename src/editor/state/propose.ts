import type { Edit } from '../../design/edit/edit.ts';
import { preview } from '../../design/state.ts';
import type { Point } from '../../geometry/shape.ts';
import type { Guide } from '../tool/guide.ts';
import { layoutOf } from './derive.ts';
import type { EditorStore } from './store.ts';

interface Proposal {
  readonly edits: readonly Edit[];
  /** Parts in hand. */
  readonly held: ReadonlySet<string>;
  readonly guides: readonly Guide[];
  readonly at: Point;
  readonly text: string;
}

/** Shows what a gesture would do, laid out with all that follows from it; nothing is decided yet. */
export function propose(store: EditorStore, { edits, held, guides, at, text }: Proposal): void {
  const design = preview(store.getState().edit, edits);
  layoutOf(design, held);
  store.setState((s) => ({
    provisional: { design, guides, live: true },
    hud: { at, text, typed: s.hud?.typed ?? null },
  }));
}
