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
import type { late } from './en/late.ts';
import { nameWords } from './en/names.ts';
import { paintWords } from './en/paint.ts';
import { partWords } from './en/parts.ts';
import { photoWords } from './en/photo.ts';
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
  ...benchWords,
  ...exportWords,
  ...keyWords,
} as const;

/** With those that come later. */
export type WordKey = keyof typeof en | keyof typeof late;
export type Words = Readonly<Record<WordKey, string>>;
