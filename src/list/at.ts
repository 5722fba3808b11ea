/** Entry of an array of numbers that is known to be there. */
export const at = (list: ArrayLike<number>, index: number): number => list[index] as number;

/**
 * The same of an array of one type: the engine makes of each function one reading, which is slow where it has to
 * serve arrays of every type.
 */
export const real = (list: Float64Array, index: number): number => list[index] as number;
export const whole = (list: Int32Array, index: number): number => list[index] as number;

/** Entry of an array that is known to be there; a miss is a mistake in this code and stops it. */
export function pick<T>(list: readonly T[], index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no entry ${index} of ${list.length}`);
  return value;
}

/** Entry of a list that goes around: after the last comes the first, before the first the last. */
export const cyclic = <T>(list: readonly T[], index: number): T =>
  pick(list, (index + list.length) % list.length);

/** Value of a table under a key that is known to be there; a miss is a mistake in this code and stops it. */
export function under<K, V>(table: ReadonlyMap<K, V>, key: K): V {
  const value = table.get(key);
  if (value === undefined) throw new RangeError(`nothing under ${String(key)}`);
  return value;
}
