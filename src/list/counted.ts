/** What is counted or summed up under a key; nothing was so far where the key is missing. */
export const countOf = <K>(counts: ReadonlyMap<K, number>, key: K): number => counts.get(key) ?? 0;

/** Adds to what is counted under a key, and tells what was counted before. */
export function count<K>(counts: Map<K, number>, key: K, by = 1): number {
  const before = countOf(counts, key);
  counts.set(key, before + by);
  return before;
}
