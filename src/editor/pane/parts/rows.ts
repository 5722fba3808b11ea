import type { Design } from '../../../design/schema.ts';
import type { DrawnKind } from '../../state/tools.ts';

export interface TreeRow {
  readonly id: string;
  readonly name: string;
  readonly kind: DrawnKind | 'group' | 'keep-clears';
  readonly level: 1 | 2;
  readonly parent: string | null;
  readonly open: boolean | null;
  /** Place among its siblings, from 1, and how many there are. */
  readonly at: number;
  readonly of: number;
}

type Told = Pick<TreeRow, 'id' | 'name' | 'kind'>;

/** Id of the branch that holds the keep-clears; no part can have it, ids have no spaces. */
export const KEEP_CLEARS = 'keep clears';

/** The rows of the part list as they are seen: groups first opened or closed, then single parts, then keep-clears. */
export function treeRows(design: Design, closed: ReadonlySet<string>, keepClearsName: string): TreeRow[] {
  const byId = new Map(design.parts.map((p) => [p.id, p]));
  const grouped = new Set(design.groups.flatMap((g) => g.parts));
  const keeps = design.keepClears.map(({ id, name }): Told => ({ id, name, kind: 'keep-clear' }));
  const branches: readonly (Told & { readonly holds: readonly Told[] | null })[] = [
    ...design.groups.map(({ id, name, parts }) => ({
      ...{ id, name, kind: 'group' as const },
      holds: parts.flatMap((part) => byId.get(part) ?? []),
    })),
    ...design.parts.filter((p) => !grouped.has(p.id)).map((part) => ({ ...part, holds: null })),
    ...(keeps.length > 0
      ? [{ id: KEEP_CLEARS, name: keepClearsName, kind: 'keep-clears' as const, holds: keeps }]
      : []),
  ];
  return branches.flatMap(({ id, name, kind, holds }, i): TreeRow[] => {
    const open = holds && !closed.has(id);
    const branch = { id, name, kind, level: 1, parent: null, open, at: i + 1, of: branches.length } as const;
    if (!holds || !open) return [branch];
    const place = { level: 2, parent: id, open: null, of: holds.length } as const;
    return [
      branch,
      ...holds.map((one, k) => ({ id: one.id, name: one.name, kind: one.kind, ...place, at: k + 1 })),
    ];
  });
}
