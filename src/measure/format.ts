import { DUST, heavyOrLight, stepsIn } from './round.ts';
import {
  isInch,
  type LengthUnit,
  type MeasureStyle,
  type Notation,
  PLAIN_NOTATION,
  STEPS_PER_INCH,
  STEPS_PER_MM,
} from './style.ts';
import {
  type Deg,
  GRAVITY,
  KG_PER_POUND,
  type Kg,
  LITERS_PER_US_GALLON,
  type Liters,
  M2_PER_SQUARE_FOOT,
  MM_PER_INCH,
  type Mm,
  type Money,
  type NewtonMeters,
  type Newtons,
  type SquareMeters,
} from './units.ts';

/** A length taken apart as it is read, for setting fractions in type. */
export interface LengthParts {
  readonly sign: '' | '-';
  /** Null unless the style shows feet and there is at least one. */
  readonly feet: number | null;
  /** Whole inches, millimeters or centimeters. */
  readonly whole: number;
  /** Digits after the decimal point, trailing zeros dropped; inch fractions have none. */
  readonly decimals: string;
  /** Fraction in lowest terms; 0 over 1 when there is none. */
  readonly numerator: number;
  readonly denominator: number;
  readonly unit: LengthUnit;
  readonly mark: 'heavy' | 'light' | null;
}

/** The length as the style shows it, in parts. */
export function lengthParts(mm: Mm, style: MeasureStyle): LengthParts {
  const steps = stepsIn(mm, style);
  const size = Math.abs(steps);
  const mark = heavyOrLight(mm, style);
  const base = {
    // A heavy nothing still has a side of the datum that it lies on.
    sign: steps < 0 || (mark !== null && mm < 0) ? '-' : '',
    feet: null,
    decimals: '',
    numerator: 0,
    denominator: 1,
    unit: style.unit,
    mark,
  } as const;
  if (!isInch(style.unit)) {
    const perWhole = style.unit === 'cm' ? 10 * STEPS_PER_MM : STEPS_PER_MM;
    return { ...base, whole: Math.floor(size / perWhole), decimals: decimalsOf(size % perWhole, perWhole) };
  }
  const perInch = STEPS_PER_INCH[style.fraction];
  const inches = Math.floor(size / perInch);
  const rest = size % perInch;
  const feet = style.unit === 'ft-in' && inches >= 12 ? Math.floor(inches / 12) : null;
  const whole = feet === null ? inches : inches % 12;
  if (style.fraction === 'decimal') return { ...base, feet, whole, decimals: decimalsOf(rest, perInch) };
  const shared = rest === 0 ? perInch : commonDivisor(rest, perInch);
  return { ...base, feet, whole, numerator: rest / shared, denominator: perInch / shared };
}

/** Digits of `rest` over a power of ten. */
function decimalsOf(rest: number, perWhole: number): string {
  return String(rest)
    .padStart(String(perWhole).length - 1, '0')
    .replace(/0+$/, '');
}

const commonDivisor = (a: number, b: number): number => (b === 0 ? a : commonDivisor(b, a % b));

/**
 * A length in words that `parseMeasure` reads back: `38 1/2"`, `6' 2 3/8"`, `38.125"`, `978 mm`, `97.8 cm`;
 * with ` heavy` or ` light` behind it when the reading is off by more than 1/128 in.
 */
export function formatLength(mm: Mm, style: MeasureStyle): string {
  const { mark } = lengthParts(mm, style);
  if (!mark) return formatReading(mm, style);
  return `${formatReading(mm, style)} ${(style.notation ?? PLAIN_NOTATION)[mark]}`;
}

/** The same without heavy or light, where there is no room for it or the length is a choice, not a reading. */
export function formatReading(mm: Mm, style: MeasureStyle): string {
  const { sign, feet, whole, decimals, numerator, denominator, unit } = lengthParts(mm, style);
  if (!isInch(unit)) {
    const told = `${sign}${inNotation(decimals === '' ? `${whole}` : `${whole}.${decimals}`, style.notation)}`;
    return style.bare && unit === 'mm' ? told : `${told} ${unit}`;
  }
  // Thousandths of an inch keep the point in every language: behind a comma they would read as thousands.
  const point = decimals === '' ? '' : `.${decimals}`;
  const fraction = numerator === 0 ? '' : `${numerator}/${denominator}`;
  const inches = fraction === '' || whole !== 0 ? `${whole}${point}` : '';
  const feetMark = feet === null ? '' : `${feet}' `;
  return `${sign}${feetMark}${[inches, fraction].filter((s) => s !== '').join(' ')}"`;
}

/** A number in plain figures as the language writes it. */
const inNotation = (plain: string, notation: Notation = PLAIN_NOTATION): string =>
  plain.replace('.', notation.decimalMark);

/** Decimals without trailing zeros, and without a minus before nothing. */
export function formatNumber(value: number, digits: number, notation?: Notation): string {
  return inNotation(String(Number(value.toFixed(digits)) + 0), notation);
}

/** Three figures that count, for amounts that a person estimates with; never in powers of ten. */
function amount(value: number, { notation }: MeasureStyle): string {
  const size = Math.abs(value);
  return formatNumber(value, size >= 100 ? 0 : size >= 10 ? 1 : 2, notation);
}

const NEWTONS_PER_POUND_FORCE = KG_PER_POUND * GRAVITY;
const METERS_PER_FOOT = (12 * MM_PER_INCH) / 1000;

/** `24.5 sq ft`, `2.28 m²`; what is under a tenth of one `8.2 sq in`, `53 cm²`, so that little never reads as none. */
export function formatArea(area: SquareMeters, style: MeasureStyle): string {
  const inches = isInch(style.unit);
  const large = inches ? area / M2_PER_SQUARE_FOOT : area;
  if (large === 0 || Math.abs(large) >= 0.1) return `${amount(large, style)} ${inches ? 'sq ft' : 'm²'}`;
  return inches ? `${amount(large * 144, style)} sq in` : `${amount(large * 1e4, style)} cm²`;
}

/**
 * `24.5 sq ft`, `0.056 m²`: areas of one list, all in the unit that a can's rate is told in, so that they can be
 * compared and added. What is there is never told as none.
 */
export function formatCovered(area: SquareMeters, style: MeasureStyle): string {
  const inches = isInch(style.unit);
  const value = inches ? area / M2_PER_SQUARE_FOOT : area;
  const told =
    value >= 0.1 || value === 0
      ? amount(value, style)
      : formatNumber(Math.max(value, 0.001), 3, style.notation);
  return `${told} ${inches ? 'sq ft' : 'm²'}`;
}

/** `12.3 lb`, `5.6 kg`. */
export function formatMass(mass: Kg, style: MeasureStyle): string {
  return isInch(style.unit) ? `${amount(mass / KG_PER_POUND, style)} lb` : `${amount(mass, style)} kg`;
}

/** In the size a paint store would say it: fluid ounces, quarts, gallons; milliliters, liters. */
export function formatVolume(volume: Liters, style: MeasureStyle): string {
  if (!isInch(style.unit)) {
    return Math.abs(volume) < 0.9995 ? `${formatNumber(volume * 1000, 0)} mL` : `${amount(volume, style)} L`;
  }
  const gallons = volume / LITERS_PER_US_GALLON;
  const size = Math.abs(gallons);
  // 1 gal = 4 qt = 128 fl oz.
  if (size < 0.25 - DUST) return `${amount(gallons * 128, style)} fl oz`;
  return size < 1 - DUST ? `${amount(gallons * 4, style)} qt` : `${amount(gallons, style)} gal`;
}

/** To a tenth, as fine as a saw's scale can be set: `22.5°`. */
export const formatAngle = (angle: Deg, notation?: Notation): string =>
  `${formatNumber(angle, 1, notation)}°`;

/** `12.4 lb`, as a spring scale reads a pull; `55 N`. */
export function formatForce(force: Newtons, style: MeasureStyle): string {
  return isInch(style.unit)
    ? `${amount(force / NEWTONS_PER_POUND_FORCE, style)} lb`
    : `${amount(force, style)} N`;
}

/** `31.2 ft-lb`, `42.3 N·m`. */
export function formatMoment(moment: NewtonMeters, style: MeasureStyle): string {
  if (!isInch(style.unit)) return `${amount(moment, style)} N·m`;
  return `${amount(moment / (NEWTONS_PER_POUND_FORCE * METERS_PER_FOOT), style)} ft-lb`;
}

/** Spreading rate, from square meters a liter: `400 sq ft/gal`, `9.82 m²/L`. */
export function formatRate(rate: number, style: MeasureStyle): string {
  if (!isInch(style.unit)) return `${amount(rate, style)} m²/L`;
  return `${amount((rate * LITERS_PER_US_GALLON) / M2_PER_SQUARE_FOOT, style)} sq ft/gal`;
}

/** A length that nobody reads in fractions, across a room or of a roll: whole feet, or meters to a tenth. */
export function formatFar(length: Mm, style: MeasureStyle): string {
  return isInch(style.unit)
    ? `${Math.round(length / (12 * MM_PER_INCH))} ft`
    : `${formatNumber(length / 1000, 1, style.notation)} m`;
}

/** Two decimals; a sign such as `$` before the number where the language has it so, letters such as `EUR` after it. */
export function formatMoney(money: Money, currency: string, notation: Notation = PLAIN_NOTATION): string {
  const sign = money < -0.005 ? '-' : '';
  const number = inNotation(Math.abs(money).toFixed(2), notation);
  if (currency === '') return `${sign}${number}`;
  const behind = notation.currency === 'behind' || /[A-Za-z]$/.test(currency);
  return behind ? `${sign}${number} ${currency}` : `${sign}${currency}${number}`;
}
