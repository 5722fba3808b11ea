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

/** Id of the branch that holds the keep-clears; no part can have it, ids have no spaces. */
export const KEEP_CLEARS = 'keep clears';

/** The rows of the part list as they are seen: groups first opened or closed, then single parts, then keep-clears. */
export function treeRows(design: Design, closed: ReadonlySet<string>, keepClearsName: string): TreeRow[] {
  const byId = new Map(design.parts.map((p) => [p.id, p]));
  const grouped = new Set(design.groups.flatMap((g) => g.parts));
  const single = design.parts.filter((p) => !grouped.has(p.id));
  const keeps = design.keepClears.length > 0 ? 1 : 0;
  const of = design.groups.length + single.length + keeps;
  const rows: TreeRow[] = [];
  let at = 0;
  for (const group of design.groups) {
    const open = !closed.has(group.id);
    at += 1;
    rows.push({ id: group.id, name: group.name, kind: 'group', level: 1, parent: null, open, at, of });
    if (!open) continue;
    group.parts.forEach((id, i) => {
      const part = byId.get(id);
      if (!part) return;
      const place = { at: i + 1, of: group.parts.length };
      rows.push({ id, name: part.name, kind: part.kind, level: 2, parent: group.id, open: null, ...place });
    });
  }
  for (const part of single) {
    at += 1;
    rows.push({ id: part.id, name: part.name, kind: part.kind, level: 1, parent: null, open: null, at, of });
  }
  if (keeps === 1) {
    const open = !closed.has(KEEP_CLEARS);
    rows.push({
      id: KEEP_CLEARS,
      name: keepClearsName,
      kind: 'keep-clears',
      level: 1,
      parent: null,
      open,
      at: of,
      of,
    });
    if (open) {
      design.keepClears.forEach((k, i) => {
        const place = { at: i + 1, of: design.keepClears.length };
        rows.push({
          id: k.id,
          name: k.name,
          kind: 'keep-clear',
          level: 2,
          parent: KEEP_CLEARS,
          open: null,
          ...place,
        });
      });
    }
  }
  return rows;
}
