import { SAME_LENGTH } from '../../geometry/tolerance.ts';
import { at, pick } from '../../list/at.ts';
import type { Linear } from './linear.ts';
import type { Rows, Shape, Step } from './rows.ts';

/**
 * An elimination that can be done again with other constants. While something is dragged only the right-hand
 * sides change: which variable an expression is solved for and what is put into what depends on coefficients
 * alone. The same steps are taken in the same order, so the values are the same to the last bit.
 */
export interface Elimination {
  readonly expressions: readonly Linear[];
  /** So many at the front have to hold. */
  readonly required: number;
  readonly steps: readonly Step[];
  readonly shapes: readonly Shape[];
}

export function eliminationOf(rows: Rows, expressions: readonly Linear[], required: number): Elimination {
  return { expressions, required, steps: rows.steps, shapes: rows.shape() };
}

/**
 * Values of the variables with the constants of other expressions; null where the coefficients are others, or
 * where an expression that has to hold no longer stands to the rest as it did.
 */
export function again(past: Elimination, expressions: readonly Linear[], count: number): number[] | null {
  if (!sameCoefficients(past.expressions, expressions)) return null;
  const constants = new Float64Array(past.shapes.length);
  let next = 0;
  for (const step of past.steps) {
    let sum = step.does === 'resolved' ? at(constants, step.row) : pick(expressions, next).constant;
    const { used } = step;
    for (let i = 0; i < used.length; i += 2) sum += at(used, i + 1) * at(constants, at(used, i));
    if (step.does === 'resolved') {
      constants[step.row] = sum;
      continue;
    }
    if (step.does === 'solved') constants[step.row] = sum / step.divisor;
    else if (next < past.required && Math.abs(sum) <= SAME_LENGTH * step.scale !== step.implied) return null;
    next++;
  }
  return valuesOf(past.shapes, constants, count);
}

/** Later rows are known first, as in `Rows.values`. */
function valuesOf(shapes: readonly Shape[], constants: Float64Array, count: number): number[] {
  const values = new Array<number>(count).fill(0);
  for (let i = shapes.length - 1; i >= 0; i--) {
    const { pivot, terms } = pick(shapes, i);
    let sum = at(constants, i);
    for (let k = 0; k < terms.length; k += 2) sum += at(terms, k + 1) * at(values, at(terms, k));
    values[pivot] = sum;
  }
  return values;
}

function sameCoefficients(a: readonly Linear[], b: readonly Linear[]): boolean {
  if (a.length !== b.length) return false;
  for (let i = 0; i < a.length; i++) {
    const one = pick(a, i).terms;
    const other = pick(b, i).terms;
    if (one === other) continue;
    if (one.length !== other.length) return false;
    for (let k = 0; k < one.length; k++) {
      if (pick(one, k)[0] !== pick(other, k)[0] || pick(one, k)[1] !== pick(other, k)[1]) return false;
    }
  }
  return true;
}
