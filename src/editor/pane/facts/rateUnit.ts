import { isInch, type MeasureStyle } from '../../../measure/style.ts';
import {
  GRAVITY,
  KG_PER_POUND,
  LITERS_PER_US_GALLON,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
} from '../../../measure/units.ts';
import type { FieldUnit } from '../../control/form/UnitField.tsx';

/** Spreading rate: square meters a liter inside. */
export const rateUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit)
    ? { name: 'sq ft/gal', size: M2_PER_SQUARE_FOOT / LITERS_PER_US_GALLON }
    : { name: 'm²/L', size: 1 };

/** Amounts of paint: liters inside, quarts on a US can. */
export const canUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit) ? { name: 'qt', size: LITERS_PER_US_GALLON / 4 } : { name: 'L', size: 1 };

/** Small amounts, of glue: liters inside, fluid ounces on a US bottle. */
export const ounceUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit) ? { name: 'fl oz', size: LITERS_PER_US_GALLON / 128 } : { name: 'mL', size: 0.001 };

/** Thickness of a dry film: micrometers inside; a mil is a thousandth of an inch. */
export const filmUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit) ? { name: 'mil', size: MM_PER_INCH } : { name: 'µm', size: 1 };

/** Mass as a person says it: kilograms inside. */
export const massUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit) ? { name: 'lb', size: KG_PER_POUND } : { name: 'kg', size: 1 };

/** A force at the hand: newtons inside. */
export const forceUnit = ({ unit }: MeasureStyle): FieldUnit =>
  isInch(unit) ? { name: 'lb', size: KG_PER_POUND * GRAVITY } : { name: 'N', size: 1 };
