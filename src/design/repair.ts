import type { FileWords } from './fileWords.ts';

/** Lists whose items share one space of ids, because rules and selection name them without saying which list. */
const ID_SPACES: readonly (readonly string[])[] = [
  ['parts', 'keepClears', 'groups'],
  ['rules'],
  ['joints'],
  ['finishes'],
  ['stocks'],
  ['owned'],
  ['fonts'],
  ['pictures'],
  ['photos'],
];

/** What rules name besides parts: a part of that id could not be meant. */
const RESERVED = ['face'];

/**
 * Gives every second item of the same id a new one, and says so. What names the id keeps meaning the first.
 * Anything that is not a list of objects is left for validation to refuse.
 */
export function repairIds(
  data: Readonly<Record<string, unknown>>,
  words: FileWords,
): {
  data: Record<string, unknown>;
  repairs: string[];
} {
  const mended: Record<string, unknown> = { ...data };
  const repairs: string[] = [];
  for (const space of ID_SPACES) {
    const taken = new Set<string>(RESERVED);
    for (const list of space) for (const id of idsOf(data[list])) taken.add(id);
    const seen = new Set<string>(RESERVED);
    for (const list of space) {
      const items = data[list];
      if (!Array.isArray(items)) continue;
      mended[list] = items.map((item: unknown) => {
        const id = idOf(item);
        if (id === null) return item;
        if (!seen.has(id)) {
          seen.add(id);
          return item;
        }
        const fresh = freeId(id, taken);
        taken.add(fresh);
        seen.add(fresh);
        repairs.push(words.secondId(list, id, fresh));
        return { ...(item as object), id: fresh };
      });
    }
  }
  return { data: mended, repairs };
}

/** `base`, or `base-2`, `base-3` …: the first that is not taken. */
export function freeId(base: string, taken: ReadonlySet<string>): string {
  if (!taken.has(base)) return base;
  const stem = base.replace(/-\d+$/, '').slice(0, 70);
  let n = 2;
  while (taken.has(`${stem}-${n}`)) n++;
  return `${stem}-${n}`;
}

function idOf(item: unknown): string | null {
  if (typeof item !== 'object' || item === null || !Object.hasOwn(item, 'id')) return null;
  const { id } = item as { id: unknown };
  return typeof id === 'string' ? id : null;
}

function idsOf(items: unknown): string[] {
  return Array.isArray(items) ? items.map(idOf).filter((id): id is string => id !== null) : [];
}
