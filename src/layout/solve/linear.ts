import { at } from '../../list/at.ts';
/** Sum of coefficient times variable, plus a constant. Variables are numbered by the component they belong to. */
export interface Linear {
  readonly terms: readonly (readonly [variable: number, coefficient: number])[];
  readonly constant: number;
}

export const constant = (value: number): Linear => ({ terms: [], constant: value });

export const variable = (index: number): Linear => ({ terms: [[index, 1]], constant: 0 });

/** Sum of weighted expressions plus a constant. A variable may stand in several terms. */
export function combine(parts: readonly (readonly [weight: number, Linear])[], plus = 0): Linear {
  const terms: (readonly [number, number])[] = [];
  let sum = plus;
  for (const [weight, part] of parts) {
    sum += weight * part.constant;
    for (const [index, coefficient] of part.terms) terms.push([index, weight * coefficient]);
  }
  return { terms, constant: sum };
}

export const plus = (a: Linear, value: number): Linear => ({ terms: a.terms, constant: a.constant + value });

/** The expression that is zero where `a` equals `b` plus `distance`. */
export const apart = (a: Linear, b: Linear, distance = 0): Linear =>
  combine(
    [
      [1, a],
      [-1, b],
    ],
    -distance,
  );

export const mean = (a: Linear, b: Linear): Linear =>
  combine([
    [0.5, a],
    [0.5, b],
  ]);

export function evaluate(expression: Linear, values: readonly number[]): number {
  let sum = expression.constant;
  for (const [index, coefficient] of expression.terms) sum += coefficient * at(values, index);
  return sum;
}
