import { actWords } from './en/acts.ts';
import { bedWords } from './en/bed.ts';
import { benchWords } from './en/bench.ts';
import { jobWords } from './en/job.ts';
import type { late } from './en/late.ts';
import { nameWords } from './en/names.ts';
import { shellWords } from './en/shell.ts';

/** American English: every string of the interface by its key. Another language is a table of the same keys. */
export const en = {
  ...shellWords,
  ...actWords,
  ...bedWords,
  ...nameWords,
  ...jobWords,
  ...benchWords,
} as const;

/** With those that come later. */
export type WordKey = keyof typeof en | keyof typeof late;
export type Words = Readonly<Record<WordKey, string>>;
