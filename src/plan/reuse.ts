/**
 * The new value with every part of it that is the same as before replaced by the earlier object. A design
 * that comes through a message is all new objects; with this the planner's memory knows again what did not
 * change. Plain JSON only.
 */
export function reuse<T>(before: unknown, now: T): T {
  if (Object.is(before, now)) return now;
  if (typeof before !== 'object' || typeof now !== 'object' || before === null || now === null) return now;
  if (Array.isArray(now)) return Array.isArray(before) ? (reuseArray(before, now) as T) : now;
  if (Array.isArray(before)) return now;
  const old = before as Record<string, unknown>;
  const keys = Object.keys(now);
  let same = keys.length === Object.keys(old).length;
  const next: Record<string, unknown> = {};
  for (const key of keys) {
    const value = reuse(old[key], (now as Record<string, unknown>)[key]);
    next[key] = value;
    if (value !== old[key] || !Object.hasOwn(old, key)) same = false;
  }
  return (same ? before : next) as T;
}

/** Items are found again by their ids, else by their parts, so that one more at the front does not make all of them new. */
function reuseArray(before: readonly unknown[], now: readonly unknown[]): unknown[] {
  const byId = new Map(before.flatMap((item) => (idOf(item) === null ? [] : [[idOf(item), item] as const])));
  const next = now.map((item, i) => reuse(byId.get(idOf(item)) ?? before[i], item));
  const same = next.length === before.length && next.every((item, i) => item === before[i]);
  return same ? (before as unknown[]) : next;
}

function idOf(item: unknown): string | null {
  if (typeof item !== 'object' || item === null) return null;
  const { id, part } = item as { readonly id?: unknown; readonly part?: unknown };
  const name = id ?? part;
  return typeof name === 'string' ? name : null;
}
