import type { TreeRow } from './rows.ts';

/** What a key does in the tree. */
export type TreeMove =
  | { readonly act: 'go'; readonly row: TreeRow | undefined }
  | { readonly act: 'open' | 'close' }
  /** Adds the row to the selection. */
  | { readonly act: 'add' }
  /** Opens the row's fields; with the name ready to be typed over. */
  | { readonly act: 'fields'; readonly name: boolean };

/** The keys of a tree as the ARIA practices have them. Null for keys that mean nothing here. */
export function treeMove(key: string, rows: readonly TreeRow[], active: TreeRow): TreeMove | null {
  const at = rows.indexOf(active);
  switch (key) {
    case 'ArrowDown':
      return { act: 'go', row: rows[at + 1] };
    case 'ArrowUp':
      return { act: 'go', row: rows[at - 1] };
    case 'Home':
      return { act: 'go', row: rows[0] };
    case 'End':
      return { act: 'go', row: rows[rows.length - 1] };
    case 'ArrowRight':
      return active.open === false
        ? { act: 'open' }
        : { act: 'go', row: active.open ? rows[at + 1] : undefined };
    case 'ArrowLeft':
      return active.open ? { act: 'close' } : { act: 'go', row: rows.find((r) => r.id === active.parent) };
    case 'Enter':
      return { act: 'fields', name: false };
    case 'F2':
      return { act: 'fields', name: true };
    case ' ':
      return { act: 'add' };
    default:
      return null;
  }
}
