import type { Screw } from '../materials/types.ts';
import type { Mm } from '../measure/units.ts';

/** What is drilled for a screw: a hole that it passes through, or one that its thread cuts into. */
export type Bit = { readonly through: Mm } | { readonly soft: Mm; readonly hard: Mm };

/** Root of a wood screw's thread over its shank: Wood Handbook, chapter 8, from memory. */
const ROOT = 2 / 3;
/** Lead hole over that root, in softwood and in hardwood: Wood Handbook, text with Eq. 8-10 (check-values, section 9). */
const LEAD = { soft: 0.7, hard: 0.9 } as const;

/** The bit for a screw of the table. Board is drilled as hardwood is: 85 to 90 % of the root (check-values-2, section 21). */
export function bitFor({ diameter, hole }: Screw): Bit {
  if (hole !== undefined) return { through: hole };
  return { soft: LEAD.soft * ROOT * diameter, hard: LEAD.hard * ROOT * diameter };
}
