import type { Design } from '../../design/schema.ts';
import { formatAngle, formatNumber, formatReading } from '../../measure/format.ts';
import type { Deg, Mm } from '../../measure/units.ts';
import { LANGUAGES, styleIn } from '../../plan/words/languages.ts';
import { spoken } from '../words/t.ts';

/** A length as the design shows lengths. */
export const lengthText = (design: Pick<Design, 'measure'>, mm: Mm): string =>
  formatReading(mm, styleIn(spoken(), design.measure));

/** A plain number in the notation of the language on screen. */
export const numberText = (value: number, digits: number): string =>
  formatNumber(value, digits, LANGUAGES[spoken()].notation);

export const angleText = (angle: Deg): string => formatAngle(angle, LANGUAGES[spoken()].notation);
