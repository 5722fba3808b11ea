import type { Scripts } from '../script/scripts.ts';
import type { Typeface } from './font/face.ts';

/** What the text of a PDF is set with: the typeface of the sheets, and glyphs for names in other scripts. */
export interface Letters {
  readonly typeface: Typeface;
  readonly scripts: Scripts;
}
