import type { Face } from '../../bed/face.ts';
import { faceOf } from '../../bed/faceOf.ts';
import type { Design } from '../../design/schema.ts';
import type { Layout } from '../../layout/laid.ts';
import { layOut } from '../../layout/layout.ts';
import { createMemory } from '../../layout/memory.ts';
import { stocksOf } from './tables.ts';

const faces = new WeakMap<Design['bed'], Face>();
const layouts = new WeakMap<Design, Layout>();
/** One memory for all of this tab's layouts: a drag step lays out again only what it touches. */
const memory = createMemory();

/** The face of a bed, computed once for each bed. */
export function faceFor(bed: Design['bed']): Face {
  let face = faces.get(bed);
  if (!face) {
    face = faceOf(bed).face;
    faces.set(bed, face);
  }
  return face;
}

/**
 * The layout of a design, computed once for each design; quick enough to follow a drag. `held`: parts that
 * the hand holds, to which others give way; it counts when the design is laid out for the first time.
 */
export function layoutOf(design: Design, held?: ReadonlySet<string>): Layout {
  let layout = layouts.get(design);
  if (!layout) {
    const input = {
      design,
      face: faceFor(design.bed),
      keepClears: design.keepClears,
      stocks: stocksOf(design),
    };
    layout = layOut(held ? { ...input, held } : input, memory);
    layouts.set(design, layout);
  }
  return layout;
}
