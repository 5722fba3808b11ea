import type { Deg, Mm } from '../measure/units.ts';

/** How the drawings of boards and sheets write figures; wording belongs to whoever draws. */
export interface CuttingText {
  readonly length: (mm: Mm) => string;
  readonly angle: (deg: Deg) => string;
  /** Written on a rest that is kept, such as `offcut 24 in`. */
  readonly offcut: (along: Mm, across?: Mm) => string;
}
