import { readLetters } from '../../src/command/supplies.ts';
import { starter } from '../plan/starters.ts';

/** What the PDFs of the tests are set with: the typeface of the sheets, and no fonts of other scripts. */
export const LETTERS = readLetters(starter('bread-shop'));
