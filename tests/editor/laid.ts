import type { Face } from '../../src/bed/face.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import type { Design } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import type { Layout } from '../../src/layout/laid.ts';

/** A design laid out from nothing; `held`: parts in the hand. */
export const layoutOf = (design: Design, held?: ReadonlySet<string>): Layout =>
  shownFrom(design, held).layout;

export const faceFor = (bed: Design['bed']): Face => faceOf(bed).face;
