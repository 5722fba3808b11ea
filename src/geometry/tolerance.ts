import type { Deg, Mm } from '../measure/units.ts';

/** Two lengths closer than this are the same length. The model's only length tolerance. */
export const SAME_LENGTH: Mm = 1e-6;
/** Two angles closer than this are the same angle. */
export const SAME_ANGLE: Deg = 1e-7;
/** Largest distance between a curve and the chords that stand for it in polygons. */
export const FLATNESS: Mm = 0.05;
/** On a drawing of a piece, or on a saw, places closer than this are one place. */
export const SAME_PLACE: Mm = 1e-3;
/** Numbers that are the same but for the arithmetic differ by no more than this, or by this share of themselves. */
export { DUST } from '../measure/round.ts';
