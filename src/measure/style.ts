import { MM_PER_INCH, type Mm } from './units.ts';

/** The unit a person works in. In `in` and `ft-in` a bare number is inches. */
export type LengthUnit = 'in' | 'ft-in' | 'mm' | 'cm';
/** Smallest inch fraction shown, by its denominator, or decimals. */
export type FractionStyle = '8' | '16' | '32' | '64' | 'decimal';

/** How a language writes figures. */
export interface Notation {
  readonly decimalMark: '.' | ',';
  /** Where a sign such as `$` stands; letters such as `EUR` always follow the number. */
  readonly currency: 'before' | 'behind';
  /** Said of a reading whose true length is a little longer, or shorter. */
  readonly heavy: string;
  readonly light: string;
}

/** American English, and what files are written in. */
export const PLAIN_NOTATION: Notation = {
  decimalMark: '.',
  currency: 'before',
  heavy: 'heavy',
  light: 'light',
};

/** How lengths are shown. `fraction` matters for inches only; without a notation figures are plain. */
export interface MeasureStyle {
  readonly unit: LengthUnit;
  readonly fraction: FractionStyle;
  readonly notation?: Notation | undefined;
  /** Millimeters are figures alone, where their unit is told once for all of them. */
  readonly bare?: boolean | undefined;
}

/** Whether the unit is one of the inch system; areas, masses and the rest follow it. */
export const isInch = (unit: LengthUnit): boolean => unit === 'in' || unit === 'ft-in';

/** What one bare number stands for. */
export const MM_PER_BARE: Readonly<Record<LengthUnit, Mm>> = {
  in: MM_PER_INCH,
  'ft-in': MM_PER_INCH,
  mm: 1,
  cm: 10,
};

/** Steps to the inch of each fraction style; decimals go to thousandths, as on a caliper. */
export const STEPS_PER_INCH: Readonly<Record<FractionStyle, number>> = {
  '8': 8,
  '16': 16,
  '32': 32,
  '64': 64,
  decimal: 1000,
};

/** Metric lengths are shown to a tenth of a millimeter. */
export const STEPS_PER_MM = 10;
