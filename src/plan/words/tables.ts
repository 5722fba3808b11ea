import { DE } from './de.ts';
import { EN } from './en.ts';
import { ES } from './es.ts';
import type { Language } from './languages.ts';
import type { PlanWords } from './words.ts';

/** Every sentence of the plan by language; a language without its table does not compile. */
export const PLAN_WORDS: Readonly<Record<Language, PlanWords>> = { en: EN, de: DE, es: ES };
