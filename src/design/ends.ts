import { eachOf, isBars, isBoards, isMany } from './made.ts';
import { partOfReference } from './references.ts';
import type { Axis, Fill, FreeEnd, Member, Part, Strip } from './schema.ts';

export type Ends = Strip['ends'];

export const SQUARE = { cut: 'square' } as const;
export const SQUARE_ENDS = { start: SQUARE, end: SQUARE } as const;

/** The ends of a strip or run, or of what an array is many of; null for what has none. */
export function endsOf(part: Part): Ends | null {
  const each = eachOf(part);
  return isBars(each) ? each.ends : null;
}

/** Whether an end of a part, or the pieces of a fill, stop at something that is asked for. */
export function stopsAt(part: Part, is: (at: string) => boolean): boolean {
  if (isBoards(part)) return part.around?.some(is) ?? false;
  const ends = endsOf(part);
  return ends !== null && [ends.start, ends.end].some((end) => end.cut === 'stop' && is(end.at));
}

/**
 * A part whose ends stop at what `to` makes of the things they stopped at; where it makes nothing of one, that end
 * is square, and pieces of a fill run on. The same part where nothing changes.
 */
export function withStopsAt(part: Part, to: (at: string) => string | null): Part {
  if (!stopsAt(part, (at) => to(at) !== at)) return part;
  if (isBoards(part)) return aroundOf(part, part.around?.flatMap((at) => to(at) ?? []) ?? []);
  const ends = endsOf(part);
  if (!ends) return part;
  const changed = (end: FreeEnd): FreeEnd => {
    if (end.cut !== 'stop') return end;
    const at = to(end.at);
    return at === null ? SQUARE : { ...end, at };
  };
  return withEnds(part, { start: changed(ends.start), end: changed(ends.end) });
}

/** A fill whose pieces end at these things, each named once. */
export function aroundOf({ around: _, ...fill }: Fill, things: readonly string[]): Fill {
  const around = [...new Set(things)];
  return around.length > 0 ? { ...fill, around } : fill;
}

/** A strip or run, or what an array is many of, with other ends. */
export const withEnds = (part: Part, ends: Ends): Part =>
  isMany(part) ? { ...part, member: { ...part.member, ends } as Member } : ({ ...part, ends } as Part);

/** The end of a level or upright strip, or of a row of them, at a side of its box; null for every other part and side. */
export function endAt(part: Part, axis: Axis, side: 'low' | 'high'): keyof Ends | null {
  const strip = eachOf(part);
  if (strip.kind !== 'strip' || strip.lie !== (axis === 'x' ? 'across' : 'up')) return null;
  return side === 'low' ? 'start' : 'end';
}

/** What the ends of a part stop at and those of another do not, once for each. */
export function stopsOnlyOf(one: Part, other: Part | undefined): string[] {
  const ends = endsOf(one);
  const named = ends ? [ends.start, ends.end].flatMap((end) => (end.cut === 'stop' ? end.at : [])) : [];
  return [...new Set(named)].filter((at) => !other || !stopsAt(other, (of) => of === at));
}

/** Whether a reference names one of some parts, or a member of one. */
export const namesOneOf =
  (parts: { has(id: string): boolean }) =>
  (at: string): boolean =>
    partOfReference(at).some((id) => parts.has(id));

/** A copy of a part, whose ends stop at the copies of what they stopped at where that was copied too. */
export const withStopsOfCopies = (part: Part, copyOf: (id: string) => string | undefined): Part =>
  withStopsAt(part, (at) => {
    const [id = at] = partOfReference(at);
    const copy = copyOf(id);
    return copy === undefined ? at : copy + at.slice(id.length);
  });
