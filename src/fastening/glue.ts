import type { Region } from '../geometry/shape.ts';
import { trueAreaOf } from '../geometry/trueArea.ts';
import type { Glue } from '../materials/types.ts';
import type { Liters, Mm } from '../measure/units.ts';

/** One bead for each such width of contact. Common practice, no source. */
const BEAD_EVERY: Mm = 75;
const MM3_PER_LITER = 1e6;

/** Wet film that paper is laid in, in millimeters: 6 mil, as makers of white glue tell it for sheets; from memory. */
const FILM: Mm = 0.15;

/** Glue under a sheet of paper. */
export const glueUnder = (paper: Region): Liters => (trueAreaOf(paper) * FILM) / MM3_PER_LITER;

/** Length of the beads under a contact: one along a strip, side by side under a sheet. */
export function beadLength(contact: Region, width: Mm): Mm {
  if (width <= 0) return 0;
  const beads = Math.max(1, Math.round(width / BEAD_EVERY));
  return (trueAreaOf(contact) / width) * beads;
}

/** Glue of a bead: its cross section times its length. */
export function glueFor(glue: Glue | null, length: Mm): Liters {
  return glue ? (glue.bead_mm2 * length) / MM3_PER_LITER : 0;
}
