import type { Face, Level } from '../bed/face.ts';
import type { Part } from '../design/schema.ts';
import { pick } from '../list/at.ts';

/** What an edge belongs to. */
export type Reference =
  | { readonly to: 'face' }
  | { readonly to: 'level'; readonly level: string }
  | { readonly to: 'member'; readonly part: string; readonly column: number; readonly row: number }
  | { readonly to: 'part'; readonly part: string };

const MEMBER = /^(.+)\[(\d+),(\d+)\]$/;

/** Reads `face`, `level:field`, `id[column,row]` or a part's id. */
export function readReference(of: string): Reference {
  if (of === 'face') return { to: 'face' };
  if (of.startsWith('level:')) return { to: 'level', level: of.slice('level:'.length) };
  const member = of.endsWith(']') ? MEMBER.exec(of) : null;
  if (member)
    return { to: 'member', part: pick(member, 1), column: Number(member[2]), row: Number(member[3]) };
  return { to: 'part', part: of };
}

export const memberId = (part: string, column: number, row: number): string => `${part}[${column},${row}]`;

export const levelOf = (face: Face, id: string): Level | undefined => face.levels.find((l) => l.id === id);

/** The part whose place decides where the reference is; null for face and levels. */
export function partOf(of: string): string | null {
  const reference = readReference(of);
  return reference.to === 'part' || reference.to === 'member' ? reference.part : null;
}

/**
 * The part of the design behind an id of a plan: `battens[2,0]`, and what is sawn to lie on it, belong to `battens`. Ids
 * of the design have no brackets.
 */
export const designPart = (id: string): string => id.replace(/\[.*$/, '');

/** Whether the reference names something that is there. Members of an array whose count is found always are. */
export function isKnown(
  of: string,
  face: Face,
  parts: Pick<ReadonlyMap<string, Part>, 'get' | 'has'>,
): boolean {
  const reference = readReference(of);
  switch (reference.to) {
    case 'face':
      return true;
    case 'level':
      return levelOf(face, reference.level) !== undefined;
    case 'part':
      return parts.has(reference.part);
    case 'member': {
      const part = parts.get(reference.part);
      if (part?.kind !== 'array') return false;
      const within = (index: number, spacing: typeof part.across) =>
        spacing === null ? index === 0 : spacing.mode === 'most' || index < spacing.count;
      return within(reference.column, part.across) && within(reference.row, part.up);
    }
  }
}
