import { sameItems } from '../layout/changes.ts';

/**
 * A function that keeps its last result and gives it again while every argument is the very same value.
 * The design is immutable, so the same value means the same content.
 */
export function remembering<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { readonly args: A; readonly result: R } | null = null;
  return (...args) => {
    if (last !== null && sameItems(last.args, args)) return last.result;
    last = { args, result: compute(...args) };
    return last.result;
  };
}

const KEPT = new Set(['lettered', 'stencil']);

/**
 * Writes values so that equal texts mean equal content. Letterings and stencils, which planners keep while nothing
 * of them changes and which are large, stand by which object they are.
 */
export function textByContent(): (value: unknown) => string {
  const numbers = new WeakMap<object, number>();
  let count = 0;
  return (value) =>
    JSON.stringify(value, (key, inner: unknown) => {
      if (!KEPT.has(key) || typeof inner !== 'object' || inner === null) return inner;
      if (!numbers.has(inner)) {
        count += 1;
        numbers.set(inner, count);
      }
      return numbers.get(inner);
    });
}
