import { boxOfPoints } from '../geometry/ring.ts';
import type { Point, Ring } from '../geometry/shape.ts';
import type { Piece } from './piece.ts';

/** A piece before it is named: neither label nor shown length follow from the piece alone. */
export type Draft = Omit<Piece, 'label' | 'shown'>;

/** A draft with its place along the line in which it lies, where it may share a span with others. */
export interface Placed {
  readonly draft: Draft;
  readonly stretch: Stretch | null;
}

/** A square-ended length on the face: its two end points on the center line. */
export interface Stretch {
  readonly start: Point;
  readonly end: Point;
}

/** Outline moved to the origin of its own box; `-0` never shows. */
export function atOrigin(outline: readonly Point[], rings: readonly Ring[] = []) {
  const box = boxOfPoints(outline);
  const move = (p: Point): Point => ({ x: p.x - box.x + 0, y: p.y - box.y + 0 });
  return { outline: outline.map(move), holes: rings.map((ring) => ring.map(move)), box };
}
