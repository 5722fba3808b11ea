/** Whether two plain values hold the same, whatever the order of their fields; a field without a value is none. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (a === null || b === null || typeof a !== 'object' || typeof b !== 'object') return false;
  if (Array.isArray(a) !== Array.isArray(b)) return false;
  const fields = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...fields].every((field) => sameValue(a[field as keyof typeof a], b[field as keyof typeof b]));
}
