import type { Design } from '../../design/schema.ts';
import { formatAngle, formatLength, formatNumber, formatReading } from '../../measure/format.ts';
import { stepOf, wholeDown, wholeUp } from '../../measure/round.ts';
import { isInch, type MeasureStyle } from '../../measure/style.ts';
import { type Deg, MM_PER_INCH, type Mm } from '../../measure/units.ts';
import { LANGUAGES, styleIn } from '../../plan/words/languages.ts';
import { spoken } from './t.ts';

/** A length as the design shows lengths. */
export const lengthText = (design: Pick<Design, 'measure'>, mm: Mm): string =>
  formatReading(mm, styleIn(spoken(), design.measure));

/** A plain number in the notation of the language on screen. */
export const numberText = (value: number, digits: number): string =>
  formatNumber(value, digits, LANGUAGES[spoken()].notation);

export const angleText = (angle: Deg): string => formatAngle(angle, LANGUAGES[spoken()].notation);

/** From here on a limit is told in whole inches. */
const WHOLE_FROM = 4 * MM_PER_INCH;

/** A limit in a figure that is easy to say and within it: nobody counts sixteenths thirty feet away. */
export function limitText(limit: Mm, style: MeasureStyle, side: 'least' | 'most'): string {
  const step = isInch(style.unit) && Math.abs(limit) >= WHOLE_FROM ? MM_PER_INCH : stepOf(style);
  // A limit that is itself a whole figure stays it.
  const steps = side === 'most' ? wholeDown(limit / step) : wholeUp(limit / step);
  return formatLength(steps * step, style);
}
