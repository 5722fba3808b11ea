/** Values that share a key, in the order in which they come; a key stands there with one value at least. */
export type Groups<K, V> = Map<K, [V, ...V[]]>;

/** Puts a value with those of its key. */
export function addTo<K, V>(groups: Groups<K, V>, key: K, value: V): void {
  const known = groups.get(key);
  if (known) known.push(value);
  else groups.set(key, [value]);
}

/** The values by their key: keys in the order in which they first come. */
export function grouped<K, V>(values: Iterable<V>, keyOf: (value: V) => K): Groups<K, V> {
  const groups: Groups<K, V> = new Map();
  for (const value of values) addTo(groups, keyOf(value), value);
  return groups;
}

/** The values under a key; none where it has none. */
export const groupOf = <K, V>(groups: ReadonlyMap<K, readonly V[]>, key: K): readonly V[] =>
  groups.get(key) ?? [];
