import type { Point } from '../../geometry/shape.ts';
import type { Guide } from '../document/guide.ts';
import type { Shown } from '../document/shown.ts';
import type { EditorStore } from './store.ts';

interface Proposal {
  /** What it would come to, with the parts in hand held. */
  readonly shown: Shown;
  readonly guides: readonly Guide[];
  readonly at: Point;
  readonly text: string;
}

/** Shows what a gesture would do, with all that follows from it; nothing is decided yet. */
export function propose(store: EditorStore, { shown, guides, at, text }: Proposal): void {
  store.setState((s) => ({
    provisional: { shown, guides, live: true },
    hud: { at, text, typed: s.hud?.typed ?? null },
  }));
}
