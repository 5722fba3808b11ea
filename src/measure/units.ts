/**
 * Units of measure, as weak brands: a plain number may enter, but millimeters
 * never pass for degrees. Inside the core every length is in millimeters and
 * every angle in degrees; rounding happens only where a person reads.
 */
declare const unit: unique symbol;
type In<U extends string> = number & { readonly [unit]?: U };

/** Length in millimeters. */
export type Mm = In<'mm'>;
/** Angle in degrees. */
export type Deg = In<'deg'>;
/** Area in square meters. */
export type SquareMeters = In<'m2'>;
/** Volume in liters. */
export type Liters = In<'l'>;
/** Mass in kilograms. */
export type Kg = In<'kg'>;
/** Density in kilograms per cubic meter. */
export type KgPerM3 = In<'kg/m3'>;
/** Force in newtons. */
export type Newtons = In<'n'>;
/** Moment of a force in newton meters. */
export type NewtonMeters = In<'nm'>;
/** Money in the design's own currency, as a decimal number of its main unit. */
export type Money = In<'money'>;

/** 1 in = 25.4 mm exactly (16 CFR 500.19; NIST Handbook 44, Appendix C). */
export const MM_PER_INCH = 25.4;
/** 1 mm2 in square meters. */
export const M2_PER_MM2 = 1e-6;
/** 1 sq ft = 0.3048 m squared exactly. */
export const M2_PER_SQUARE_FOOT = (12 * MM_PER_INCH * 1e-3) ** 2;
/** 1 US liquid gallon = 231 cubic inches = 3.785411784 L exactly (NIST Handbook 44, Appendix C). */
export const LITERS_PER_US_GALLON = 3.785411784;
/** 1 lb = 0.45359237 kg exactly (NIST Handbook 44, Appendix B). */
export const KG_PER_POUND = 0.45359237;
/** Standard acceleration of gravity, m/s2, exact by definition (CGPM 1901). */
export const GRAVITY = 9.80665;

/** Millimeters of a length in inches. */
export const inches = (value: number): Mm => value * MM_PER_INCH;
/** Radians of an angle in degrees. */
export const radians = (angle: Deg): number => (angle * Math.PI) / 180;
/** Degrees of an angle in radians. */
export const degrees = (angle: number): Deg => (angle * 180) / Math.PI;
