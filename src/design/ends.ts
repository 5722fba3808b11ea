import { eachOf, isBars, isMany } from './made.ts';
import { partOfReference } from './references.ts';
import type { FreeEnd, Member, Part, Strip } from './schema.ts';

type Ends = Strip['ends'];

/** The ends of a strip or run, or of what an array is many of; null for what has none. */
function endsOf(part: Part): Ends | null {
  const each = eachOf(part);
  return isBars(each) ? each.ends : null;
}

/** Whether an end of a part stops at something that is asked for. */
export function stopsAt(part: Part, is: (at: string) => boolean): boolean {
  const ends = endsOf(part);
  return ends !== null && [ends.start, ends.end].some((end) => end.cut === 'stop' && is(end.at));
}

/**
 * A part whose ends stop at what `to` makes of the things they stopped at; where it makes nothing of one, that end
 * is square. The same part where nothing changes.
 */
export function withStopsAt(part: Part, to: (at: string) => string | null): Part {
  const ends = endsOf(part);
  if (!ends || !stopsAt(part, (at) => to(at) !== at)) return part;
  const changed = (end: FreeEnd): FreeEnd => {
    if (end.cut !== 'stop') return end;
    const at = to(end.at);
    return at === null ? { cut: 'square' } : { ...end, at };
  };
  const now = { start: changed(ends.start), end: changed(ends.end) };
  if (isMany(part)) return { ...part, member: { ...part.member, ends: now } as Member };
  return { ...part, ends: now } as Part;
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
