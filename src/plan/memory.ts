import { sameItems } from '../layout/changes.ts';

/**
 * A function that keeps its last result and gives it again while every argument is the very same value.
 * The design is immutable, so the same value means the same content; a planner owns its own memories, so
 * two planners never share state.
 */
export function remembering<A extends readonly unknown[], R>(compute: (...args: A) => R): (...args: A) => R {
  let last: { readonly args: A; readonly result: R } | null = null;
  return (...args) => {
    if (last !== null && sameItems(last.args, args)) return last.result;
    last = { args, result: compute(...args) };
    return last.result;
  };
}

/** As `remembering`, one memory a key; keys not asked for in a round are forgotten by `sweep`. */
export function rememberingEach<K, A extends readonly unknown[], R>(compute: (key: K, ...args: A) => R) {
  interface Kept {
    readonly args: A;
    readonly result: R;
  }
  let kept = new Map<K, Kept>();
  let used = new Map<K, Kept>();
  const known = (key: K, args: A): Kept | null => {
    const last = used.get(key) ?? kept.get(key);
    return last && sameItems(last.args, args) ? last : null;
  };
  return {
    of: (key: K, ...args: A): R => {
      const memory = known(key, args) ?? { args, result: compute(key, ...args) };
      used.set(key, memory);
      return memory.result;
    },
    /** Whether `of` would compute nothing. */
    knows: (key: K, ...args: A): boolean => known(key, args) !== null,
    sweep: (): void => {
      kept = used;
      used = new Map();
    },
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
