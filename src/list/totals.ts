/** What is counted or added up under a key; nothing was so far where there is no such key. */
export const totalOf = <K>(totals: ReadonlyMap<K, number>, key: K): number => totals.get(key) ?? 0;

/** Adds to what stands under a key, and tells what stood there before. */
export function addUp<K>(totals: Map<K, number>, key: K, by = 1): number {
  const before = totalOf(totals, key);
  totals.set(key, before + by);
  return before;
}
