import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import type { Piece } from './piece.ts';

/** A piece before it is named: neither label nor shown length follow from the piece alone. */
export type Draft = Omit<Piece, 'label' | 'shown'>;

/** A draft with its edges as they lie on the face, where it may share a span with others. */
export interface Placed {
  readonly draft: Draft;
  readonly kind: 'stick' | 'panel';
  readonly stretch: Stretch | null;
}

/** The long edges of a stick on the face, in its own direction; null where its cuts leave none. */
export type Stretch = Readonly<
  Record<'left' | 'right', { readonly start: Point; readonly end: Point } | null>
>;

/** Outline moved to the origin of its own box; `-0` never shows. */
export function atOrigin(outline: readonly Point[], rings: readonly Ring[] = []) {
  const box = boxOfPoints(outline);
  const move = (p: Point): Point => ({ x: p.x - box.x + 0, y: p.y - box.y + 0 });
  return { outline: outline.map(move), holes: rings.map((ring) => ring.map(move)), box };
}
