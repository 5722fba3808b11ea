import { type FractionStyle, isInch, type MeasureStyle, STEPS_PER_INCH } from '../../measure/style.ts';
import { inches, type Mm } from '../../measure/units.ts';

/** Up to here a measure is one of a kerf, a margin or a brad, where a sixteenth light is another measure. */
const SMALL = inches(1);
const FRACTIONS = ['8', '16', '32', '64'] as const;

/** The style that shows a small measure as it is: in the finer fractions that it takes, where there are such. */
export function finer(value: Mm, style: MeasureStyle): MeasureStyle {
  if (!isInch(style.unit) || Math.abs(value) >= SMALL) return style;
  if (style.fraction === 'decimal') return style;
  const from = FRACTIONS.indexOf(style.fraction);
  const steps = (fraction: FractionStyle) => (value / inches(1)) * STEPS_PER_INCH[fraction];
  const exact = FRACTIONS.slice(from).find(
    (fraction) => Math.abs(steps(fraction) - Math.round(steps(fraction))) < 1e-6,
  );
  return exact ? { ...style, fraction: exact } : style;
}
