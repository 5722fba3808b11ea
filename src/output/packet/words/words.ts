import type { Language } from '../../../plan/words/languages.ts';
import { DE } from './de.ts';
import { EN } from './en.ts';
import { ES } from './es.ts';
import type { PacketWords } from './shape.ts';

/** What the packet says by language; a language without its table does not compile. */
export const PACKET_WORDS: Readonly<Record<Language, PacketWords>> = { en: EN, de: DE, es: ES };
