import { actWords } from './de/acts.ts';
import { bedWords } from './de/bed.ts';
import { benchWords } from './de/bench.ts';
import { builtWords } from './de/built.ts';
import { checkWords } from './de/checks.ts';
import { cornerWords } from './de/corners.ts';
import { exportWords } from './de/export.ts';
import { fixingWords } from './de/fixing.ts';
import { jobWords } from './de/job.ts';
import { keyWords } from './de/keys.ts';
import { letteringWords } from './de/lettering.ts';
import { nameWords } from './de/names.ts';
import { pagesWords } from './de/pages.ts';
import { paintWords } from './de/paint.ts';
import { partWords } from './de/parts.ts';
import { photoWords } from './de/photo.ts';
import { sawWords } from './de/saw.ts';
import { shellWords } from './de/shell.ts';
import { swingWords } from './de/swing.ts';
import { woodWords } from './de/wood.ts';
import type { Words } from './en.ts';

export { fileWords as file } from './de/file.ts';
export { starterNames } from './de/starters.ts';

/** German. */
export const de: Words = {
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
