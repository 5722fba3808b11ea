import { isMany } from '../design/made.ts';
import type { Design, Part } from '../design/schema.ts';

/**
 * Where a list differs from the one before; null where it cannot be told item by item: another length, or an
 * item that `like` says is not the same thing with other measures.
 */
export function changedAt<T>(
  before: readonly T[],
  now: readonly T[],
  like: (before: T, now: T) => boolean,
): number[] | null {
  if (before === now) return [];
  if (before.length !== now.length) return null;
  const found: number[] = [];
  for (let i = 0; i < now.length; i++) {
    const [was, is] = [before[i], now[i]];
    if (was === is) continue;
    if (was === undefined || is === undefined || !like(was, is)) return null;
    found.push(i);
  }
  return found;
}

/** Whether rules can name the same of two parts: id, kind and, of arrays, the members there may be. */
export function sameNames(a: Part, b: Part): boolean {
  if (a.id !== b.id || a.kind !== b.kind) return false;
  return !isMany(a) || !isMany(b) || (a.across === b.across && a.up === b.up);
}

/** Where each part stands in the design. */
export const placesOf = (parts: Design['parts']): ReadonlyMap<string, number> =>
  new Map(parts.map((part, i) => [part.id, i]));

/** A list with some of its items exchanged; the same list where none is. */
export function patched<T>(list: readonly T[], items: ReadonlyMap<number, T>): readonly T[] {
  if (items.size === 0) return list;
  const copy = [...list];
  for (const [i, item] of items) copy[i] = item;
  return copy;
}

/** Whether two lists hold the very same items or values. */
export const sameItems = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a === b || (a.length === b.length && a.every((one, i) => Object.is(one, b[i])));

/** The list before, where this one holds the very same items. */
export const kept = <T>(before: readonly T[] | undefined, now: readonly T[]): readonly T[] =>
  before && sameItems(before, now) ? before : now;
