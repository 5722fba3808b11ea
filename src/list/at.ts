/** Entry of an array of numbers that is known to be there. */
export const at = (list: ArrayLike<number>, index: number): number => list[index] as number;

/**
 * The same of an array of one type: the engine makes of each function one reading, which is slow where it has to
 * serve arrays of every type.
 */
export const real = (list: Float64Array, index: number): number => list[index] as number;
export const byte = (list: Uint8Array, index: number): number => list[index] as number;
export const whole = (list: Int32Array, index: number): number => list[index] as number;

/** Index of the first number in a rising row that is not under `from`. */
export function firstFrom(row: Float64Array, from: number): number {
  let low = 0;
  let high = row.length;
  while (low < high) {
    const mid = (low + high) >> 1;
    if (real(row, mid) < from) low = mid + 1;
    else high = mid;
  }
  return low;
}

/** Entry of an array that is known to be there; a miss is a mistake in this code and stops it. */
export function pick<T>(list: readonly T[], index: number): T {
  const value = list[index];
  if (value === undefined) throw new RangeError(`no entry ${index} of ${list.length}`);
  return value;
}

/** Last entry of a list that has one at least. */
export const lastOf = <T>(list: readonly T[]): T => pick(list, list.length - 1);

/** Entry of a list, and none where there is no index, as where it was looked for and not found. */
export const entryAt = <T>(list: readonly T[], index: number | undefined): T | undefined =>
  index === undefined ? undefined : list[index];

/** Entry of a list that goes around: after the last comes the first, before the first the last. */
export const cyclic = <T>(list: readonly T[], index: number): T =>
  pick(list, (index + list.length) % list.length);

/** Value of a table under a key that is known to be there; a miss is a mistake in this code and stops it. */
export function under<K, V>(table: ReadonlyMap<K, V>, key: K): V {
  const value = table.get(key);
  if (value === undefined) throw new RangeError(`nothing under ${String(key)}`);
  return value;
}

/** Code point of a character, or of the one at an index that the text is known to reach. */
export function codeAt(text: string, index = 0): number {
  const code = text.codePointAt(index);
  if (code === undefined) throw new RangeError(`no character ${index} of ${text.length}`);
  return code;
}
