import { builtWords } from './built.ts';
import { checkWords } from './checks.ts';
import { cornerWords } from './corners.ts';
import { exportWords } from './export.ts';
import { fixingWords } from './fixing.ts';
import { keyWords } from './keys.ts';
import { paintWords } from './paint.ts';
import { partWords } from './parts.ts';
import { photoWords } from './photo.ts';
import { swingWords } from './swing.ts';
import { woodWords } from './wood.ts';

/** What the bench at a desk says, in all its panes. */
export const deskWords = {
  ...partWords,
  ...builtWords,
  ...cornerWords,
  ...photoWords,
  ...checkWords,
  ...swingWords,
  ...woodWords,
  ...paintWords,
  ...fixingWords,
  ...exportWords,
  ...keyWords,
} as const;
