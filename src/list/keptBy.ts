/** Where results are kept by what they follow from. */
interface Kept<K, R> {
  get(key: K): { readonly result: R } | undefined;
  set(key: K, known: { readonly result: R }): unknown;
}

/** A function that gives what it once worked out. */
interface KeptBy<K, R> {
  (key: K): R;
  /** Is told what somebody else has worked out. */
  readonly know: (key: K, result: R) => void;
}

const keptIn = <K, R>(kept: Kept<K, R>, compute: (key: K) => R): KeptBy<K, R> => {
  const of = (key: K): R => {
    let known = kept.get(key);
    if (known === undefined) {
      known = { result: compute(key) };
      kept.set(key, known);
    }
    return known.result;
  };
  return Object.assign(of, { know: (key: K, result: R) => void kept.set(key, { result }) });
};

/** A function that works out what follows from an immutable object once, and gives that while the object lasts. */
export const keptBy = <K extends object, R>(compute: (key: K) => R): KeptBy<K, R> =>
  keptIn(new WeakMap(), compute);

/** The same of words and numbers, each of which is kept as long as the function. */
export const keptByValue = <K extends string | number, R>(compute: (key: K) => R): KeptBy<K, R> =>
  keptIn(new Map(), compute);
