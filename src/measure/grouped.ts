import { pick } from '../list/at.ts';
import type { Notation } from './style.ts';
import type { Grouped } from './token.ts';

/** Figures with marks or spaces among them; a space counts only where just three figures follow. */
const FIGURES = /\d*(?:[.,]\d+|[ \u00a0\u202f]\d{3}(?![\d/\u2044]))+/y;
const SPACES = /[\u00a0\u202f]/g;

const ONE_MARK = /^(\d*)([.,])(\d+)$/;
const GROUPS = /^[1-9]\d{0,2}([., ])\d{3}(?:\1\d{3})*$/;
const GROUPS_AND_DECIMALS = /^([1-9]\d{0,2}([., ])\d{3}(?:\2\d{3})*)(?!\2)[.,](\d+)$/;
/** What could be thousands where three figures follow: not nothing, and no more than three. */
const LEAD = /^[1-9]\d{0,2}$/;

/** Reads numbers whose thousands are set off, or whose decimals stand behind either language's mark. */
export const groupedWith =
  (decimalMark: Notation['decimalMark']): Grouped =>
  (text, at) => {
    FIGURES.lastIndex = at;
    const found = FIGURES.exec(text)?.[0];
    if (found === undefined) return null;
    const plain = plainOf(found.replace(SPACES, ' '), decimalMark);
    if (plain !== null) return { kind: 'number', at, text: found, value: Number(plain) };
    const expected = 'thousands written close, such as 1200, or one decimal mark, such as 1.2';
    return { ok: false, at, found, expected };
  };

/** The figures with a decimal point alone; null where they can be read in two ways, or in none. */
function plainOf(typed: string, decimalMark: Notation['decimalMark']): string | null {
  const one = ONE_MARK.exec(typed);
  if (one) {
    const [, whole = '', mark, decimals = ''] = one;
    const twoWays = mark !== decimalMark && decimals.length === 3 && LEAD.test(whole);
    return twoWays ? null : `${whole}.${decimals}`;
  }
  if (GROUPS.test(typed)) return typed.replace(/[., ]/g, '');
  const both = GROUPS_AND_DECIMALS.exec(typed);
  return both && `${pick(both, 1).replace(/[., ]/g, '')}.${both[3]}`;
}
