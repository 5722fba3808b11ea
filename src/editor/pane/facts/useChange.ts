import type { Edit, Field, ItemOf, List } from '../../../design/edit/edit.ts';
import type { Design } from '../../../design/schema.ts';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

/** Ways to change the lists and settings of the design from a pane, each one step of undo. */
export function useChange() {
  const t = useWords();
  const commit = useCommit();
  return {
    add: <L extends List>(list: L, item: ItemOf<L>, name: string) =>
      commit([{ kind: 'insert', list, item } as Edit], t('did.add', { name })),
    replace: <L extends List>(list: L, item: ItemOf<L>, name: string, merge?: string) =>
      commit(
        [{ kind: 'replace', list, id: item.id, item } as Edit],
        t('did.change', { name }),
        merge ? { merge } : {},
      ),
    remove: (list: List, id: string, name: string) =>
      commit([{ kind: 'remove', list, id }], t('did.remove', { name })),
    set: <F extends Field>(field: F, value: Design[F], name: string) =>
      commit([{ kind: 'set', field, value } as Edit], t('did.change', { name })),
  };
}
