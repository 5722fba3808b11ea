/** A function that works out what follows from an immutable object once, and gives that while the object lasts. */
export function keptBy<K extends object, R>(compute: (key: K) => R): (key: K) => R {
  const kept = new WeakMap<K, { readonly result: R }>();
  return (key) => {
    let known = kept.get(key);
    if (known === undefined) {
      known = { result: compute(key) };
      kept.set(key, known);
    }
    return known.result;
  };
}

/** The same of words, each of which is kept as long as the function. */
export function keptByWord<R>(compute: (key: string) => R): (key: string) => R {
  const kept = new Map<string, R>();
  return (key) => {
    let known = kept.get(key);
    if (known === undefined) {
      known = compute(key);
      kept.set(key, known);
    }
    return known;
  };
}
