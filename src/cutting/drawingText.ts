import type { Deg, Mm } from '../measure/units.ts';

/** How the drawings of boards and sheets write figures; wording belongs to whoever draws. */
export interface CuttingText {
  readonly length: (mm: Mm) => string;
  readonly angle: (deg: Deg) => string;
  /** Written on a rest that is kept, such as `offcut 24 in`. */
  readonly offcut: (along: Mm, across?: Mm) => string;
}

/** Name of the place where a piece lies in its board or sheet, for marks that lead there. */
export const placeOfPiece = (label: string): string => `piece ${label}`;
