import { cutting } from './section/cutting.ts';
import { densities } from './section/densities.ts';
import { division } from './section/division.ts';
import { fasteners } from './section/fasteners.ts';
import { files } from './section/files.ts';
import { fonts } from './section/fonts.ts';
import { lettering } from './section/lettering.ts';
import { lifting } from './section/lifting.ts';
import { lumber } from './section/lumber.ts';
import { mattresses } from './section/mattresses.ts';
import { miter } from './section/miter.ts';
import { paint } from './section/paint.ts';
import { paper } from './section/paper.ts';
import { squaring } from './section/squaring.ts';
import { units } from './section/units.ts';
import type { Section } from './table.ts';

/** One file for each section of the check values, in their order. */
export const SECTIONS: readonly Section[] = [
  miter,
  lumber,
  paper,
  units,
  mattresses,
  lettering,
  densities,
  paint,
  fasteners,
  cutting,
  lifting,
  division,
  fonts,
  files,
  squaring,
];
