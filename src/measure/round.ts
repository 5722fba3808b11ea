import { at } from '../list/at.ts';
import { isInch, type MeasureStyle, STEPS_PER_INCH, STEPS_PER_MM } from './style.ts';
import { MM_PER_INCH, type Mm } from './units.ts';

/** Off by more than this, a rounded inch reading is called heavy or light. */
const MARK_OVER: Mm = MM_PER_INCH / 128;
/** Numbers that are the same but for the last digits of their arithmetic differ by no more than this. */
export const DUST: Mm = 1e-9;

/** Off a whole number by less than this, a count is that number. */
const WHOLE = 1e-6;

/** Whole things that hold at least this many. */
export const wholeUp = (count: number): number => Math.max(0, Math.ceil(count - WHOLE));
/** Whole things in this many. */
export const wholeDown = (count: number): number => Math.floor(count + WHOLE);

/** Smallest step that the style shows. */
export function stepOf(style: MeasureStyle): Mm {
  return isInch(style.unit) ? MM_PER_INCH / STEPS_PER_INCH[style.fraction] : 1 / STEPS_PER_MM;
}

/** Whole steps nearest to a length; halves away from zero, so that a mirrored layout reads mirrored. */
export function stepsIn(mm: Mm, style: MeasureStyle): number {
  const exact = isInch(style.unit) ? (mm / MM_PER_INCH) * STEPS_PER_INCH[style.fraction] : mm * STEPS_PER_MM;
  // The dust pulls 3.4999999999 up to the half it is meant to be.
  return Math.sign(exact) * Math.floor(Math.abs(exact) + 0.5 + DUST) + 0;
}

/** The length as the style can show it. */
export function roundLength(mm: Mm, style: MeasureStyle): Mm {
  const steps = stepsIn(mm, style);
  return isInch(style.unit) ? (steps * MM_PER_INCH) / STEPS_PER_INCH[style.fraction] : steps / STEPS_PER_MM;
}

/**
 * `heavy`: the true length is longer than the reading by more than 1/128 in; `light`: shorter. Inches only.
 * Sizes count, whatever the sign, so that what is mirrored about the datum reads the same.
 */
export function heavyOrLight(mm: Mm, style: MeasureStyle): 'heavy' | 'light' | null {
  if (!isInch(style.unit)) return null;
  const over = Math.abs(mm) - Math.abs(roundLength(mm, style));
  if (Math.abs(over) <= MARK_OVER + DUST) return null;
  return over > 0 ? 'heavy' : 'light';
}

/**
 * Shares of `total` in whole steps that add up to `total` (itself rounded to the step). Every share is its
 * exact length rounded up or down; the steps left over go where rounding down took most, and among equals
 * they are spread evenly and symmetrically about the middle. One odd step among an even number of equals
 * can have no middle and goes just before it.
 *
 * @param parts exact lengths (or weights) of the shares, not negative; or a count of equal shares
 */
export function shareOut(total: Mm, parts: readonly number[] | number, step: Mm): Mm[] {
  const weights = typeof parts === 'number' ? new Array<number>(parts).fill(1) : parts;
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  if (weights.length === 0 || whole <= 0) return weights.map(() => 0);
  const steps = Math.round(total / step);
  const exact = weights.map((weight) => (steps * weight) / whole);
  const floors = exact.map((share) => Math.floor(share + DUST));
  const rests = exact.map((share, i) => Math.round((share - at(floors, i)) / DUST));
  let left = steps - floors.reduce((sum, share) => sum + share, 0);
  const shares = [...floors];
  for (const rest of [...new Set(rests)].sort((a, b) => b - a)) {
    const equals = rests.flatMap((r, i) => (r === rest ? [i] : []));
    const given = Math.min(left, equals.length);
    spread(given, equals.length).forEach((extra, k) => {
      const i = at(equals, k);
      shares[i] = at(shares, i) + extra;
    });
    left -= given;
  }
  return shares.map((share) => share * step);
}

/** Which of `places` in a row get one of `count` things: evenly, and the same from both ends. */
function spread(count: number, places: number): number[] {
  /** Things among the first `i` places; from the far end beyond the middle. */
  const before = (i: number): number =>
    2 * i <= places ? halfDown((i * count) / places) : count - halfDown(((places - i) * count) / places);
  const middle = places / 2;
  const upTo = (i: number): number => (i === middle ? Math.ceil(count / 2) : before(i));
  return Array.from({ length: places }, (_, i) => upTo(i + 1) - upTo(i));
}

const halfDown = (value: number): number => Math.ceil(value - 0.5);
