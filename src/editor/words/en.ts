import { actWords } from './en/acts.ts';
import { bedWords } from './en/bed.ts';
import { benchWords } from './en/bench.ts';
import { builtWords } from './en/built.ts';
import { checkWords } from './en/checks.ts';
import { cornerWords } from './en/corners.ts';
import { exportWords } from './en/export.ts';
import { fixingWords } from './en/fixing.ts';
import { jobWords } from './en/job.ts';
import { keyWords } from './en/keys.ts';
import { letteringWords } from './en/lettering.ts';
import { nameWords } from './en/names.ts';
import { pagesWords } from './en/pages.ts';
import { paintWords } from './en/paint.ts';
import { partWords } from './en/parts.ts';
import { photoWords } from './en/photo.ts';
import type { sawWords } from './en/saw.ts';
import { shellWords } from './en/shell.ts';
import { swingWords } from './en/swing.ts';
import { woodWords } from './en/wood.ts';

/** American English: every string of the interface by its key. Another language is a table of the same keys. */
export const en = {
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
  ...exportWords,
  ...keyWords,
} as const;

/** With those that come with the part of the page that says them (`late.ts`). */
export type WordKey = keyof typeof en | keyof typeof sawWords;
export type Words = Readonly<Record<WordKey, string>>;
