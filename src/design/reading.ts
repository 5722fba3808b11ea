import { isMany } from './made.ts';
import type { Part, Strip, TapeRead } from './schema.ts';

type ReadStrip = Strip & { readonly read: TapeRead };

/** Whether a tape tells how the pieces of a part or a laid part are cut: of what is one straight length. */
export const isStraight = <T extends { readonly kind: string }>(
  one: T,
): one is T & { readonly kind: 'strip' } => one.kind === 'strip';

/** Whether a part was measured in place. */
export const isRead = (part: Part): part is ReadStrip =>
  isStraight(part) && part.fit && part.read !== undefined;

/** A part without what a tape read where it is to go: of a copy, or of one turned about, it does not hold. */
export function unread<P extends Part>(part: P): P {
  if (isStraight<Part>(part) && part.read) {
    const { read: _, ...rest } = part;
    return rest as P;
  }
  if ('reads' in part && part.reads) {
    const { reads: _, ...rest } = part;
    return rest as P;
  }
  if (!isMany<Part>(part) || !Object.values(part.overrides).some(({ read }) => read)) return part;
  const overrides = Object.entries(part.overrides).flatMap(([place, { read: _, ...own }]) =>
    Object.keys(own).length > 0 ? [[place, own] as const] : [],
  );
  return { ...part, overrides: Object.fromEntries(overrides) };
}
