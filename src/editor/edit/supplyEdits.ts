import type { Edit, List } from '../../design/edit/edit.ts';
import type { Design } from '../../design/schema.ts';

const alike = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/** What makes one list of another: entries as far as both name the same are exchanged, the others go and come. */
function listEdits(list: List, before: readonly { readonly id: string }[], after: typeof before): Edit[] {
  const differs = before.findIndex(({ id }, i) => after[i]?.id !== id);
  const same = differs < 0 ? before.length : differs;
  const edits = [
    ...after
      .slice(0, same)
      .flatMap((item, i) => (alike(item, before[i]) ? [] : [{ kind: 'replace', list, id: item.id, item }])),
    ...before.slice(same).map(({ id }) => ({ kind: 'remove', list, id })),
    ...after.slice(same).map((item) => ({ kind: 'insert', list, item })),
  ];
  return edits as Edit[];
}

/** Edits that give a design the prices, stock and supplies of another that is the same otherwise; none where nothing differs. */
export function supplyEdits(before: Design, after: Design): Edit[] {
  const { supplies } = after;
  return [
    ...(['stocks', 'finishes', 'owned'] as const).flatMap((list) =>
      listEdits(list, before[list], after[list]),
    ),
    ...(alike(before.supplies, supplies)
      ? []
      : [{ kind: 'set', field: 'supplies', value: supplies } as const]),
  ];
}
