import type { Design } from '../../design/schema.ts';
import type { Point } from '../../geometry/shape.ts';
import { layoutOf } from '../document/derive.ts';
import type { Guide } from '../document/guide.ts';
import type { EditorStore } from './store.ts';

interface Proposal {
  /** What it would come to. */
  readonly design: Design;
  /** Parts in hand. */
  readonly held: ReadonlySet<string>;
  readonly guides: readonly Guide[];
  readonly at: Point;
  readonly text: string;
}

/** Shows what a gesture would do, laid out with all that follows from it; nothing is decided yet. */
export function propose(store: EditorStore, { design, held, guides, at, text }: Proposal): void {
  layoutOf(design, held);
  store.setState((s) => ({
    provisional: { design, guides, live: true },
    hud: { at, text, typed: s.hud?.typed ?? null },
  }));
}
