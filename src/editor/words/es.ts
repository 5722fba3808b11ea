import type { Words } from './en.ts';
import { actWords } from './es/acts.ts';
import { bedWords } from './es/bed.ts';
import { benchWords } from './es/bench.ts';
import { builtWords } from './es/built.ts';
import { checkWords } from './es/checks.ts';
import { cornerWords } from './es/corners.ts';
import { exportWords } from './es/export.ts';
import { fixingWords } from './es/fixing.ts';
import { jobWords } from './es/job.ts';
import { keyWords } from './es/keys.ts';
import { letteringWords } from './es/lettering.ts';
import { nameWords } from './es/names.ts';
import { pagesWords } from './es/pages.ts';
import { paintWords } from './es/paint.ts';
import { partWords } from './es/parts.ts';
import { photoWords } from './es/photo.ts';
import { sawWords } from './es/saw.ts';
import { shellWords } from './es/shell.ts';
import { swingWords } from './es/swing.ts';
import { woodWords } from './es/wood.ts';

export { fileWords as file } from './es/file.ts';
export { starterNames } from './es/starters.ts';

/** Spanish. */
export const es: Words = {
  ...shellWords,
  ...actWords,
  ...bedWords,
  ...partWords,
  ...builtWords,
  ...nameWords,
  ...cornerWords,
  ...photoWords,
  ...jobWords,
  ...checkWords,
  ...swingWords,
  ...woodWords,
  ...paintWords,
  ...fixingWords,
  ...letteringWords,
  ...pagesWords,
  ...benchWords,
  ...sawWords,
  ...exportWords,
  ...keyWords,
};
