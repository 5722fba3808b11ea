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
