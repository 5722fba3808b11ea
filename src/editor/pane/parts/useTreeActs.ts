import { type RefObject, useRef, useState } from 'react';
import { focusName, focusPane } from '../../control/regions.ts';
import { nameOf } from '../../edit/movable.ts';
import { editsToDrop, editsToName, type RowDrop } from '../../edit/partList.ts';
import { openPartMenu } from '../../edit/partMenu.ts';
import { commit, select } from '../../state/commit.ts';
import { useSelection, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { startRowDrag } from './rowDrag.ts';
import { KEEP_CLEARS, type TreeRow } from './rows.ts';
import type { RowActs } from './TreeRow.tsx';
import type { TreeMove } from './treeKeys.ts';

interface TreeActs extends RowActs {
  readonly go: (row: TreeRow | undefined, extend: boolean) => void;
  readonly perform: (move: TreeMove, row: TreeRow, extend: boolean) => void;
}

interface TreeInput {
  readonly tree: RefObject<HTMLDivElement | null>;
  /** Each press adds a row to the selection or takes it out. */
  readonly several: boolean;
  readonly onCurrent: (id: string) => void;
  readonly onToggle: (row: TreeRow, open: boolean) => void;
}

/**
 * What can be done with the rows by pointer and keys, as of the last rendering: the reference to it stays the same, so
 * that no row is made anew for it.
 */
export function useTreeActs(input: TreeInput) {
  const store = useStore();
  const selection = useSelection();
  const [dropping, setDropping] = useState<RowDrop | null>(null);
  const [naming, setNaming] = useState<string | null>(null);
  const { tree, several, onCurrent, onToggle } = input;

  const go: TreeActs['go'] = (row, extend) => {
    if (!row) return;
    onCurrent(row.id);
    if (row.id !== KEEP_CLEARS) select(store, extend ? [...new Set([...selection, row.id])] : [row.id]);
    tree.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(row.id)}"]`)?.focus();
  };
  const pick: TreeActs['pick'] = (row, extend) => {
    if (!extend && !several) return go(row, false);
    if (!selection.includes(row.id)) return go(row, true);
    onCurrent(row.id);
    select(
      store,
      selection.filter((id) => id !== row.id),
    );
  };
  const perform: TreeActs['perform'] = (move, row, extend) => {
    if (move.act === 'go') go(move.row, extend);
    else if (move.act === 'add') pick(row, true);
    else if (move.act === 'fields') {
      go(row, false);
      store.setState({ tab: 'part' });
      if (move.name) focusName(store);
      else focusPane(store);
    } else onToggle(row, move.act === 'open');
  };
  const menu: TreeActs['menu'] = (row, element, at) => {
    if (row.id === KEEP_CLEARS) return;
    if (!selection.includes(row.id)) go(row, false);
    const { left, bottom } = element.getBoundingClientRect();
    openPartMenu(store, at ?? { x: left, y: bottom }, at ? 'pointer' : 'keys');
  };
  const { drag, rename } = useRowEdits(tree, setDropping);
  const latest: TreeActs = {
    go,
    pick,
    perform,
    menu,
    drag,
    toggle: (row) => onToggle(row, row.open === false),
    name: (row) => setNaming(row.id === KEEP_CLEARS ? null : row.id),
    rename: (row, name) => {
      setNaming(null);
      rename(row, name);
    },
  };
  const acts = useRef(latest);
  acts.current = latest;
  return { acts, dropping, naming };
}

/** Rows dragged and renamed: the acts that change the design. */
function useRowEdits(
  tree: RefObject<HTMLDivElement | null>,
  onDropping: (drop: RowDrop | null) => void,
): Pick<RowActs, 'drag' | 'rename'> {
  const t = useWords();
  const store = useStore();
  const now = () => store.getState().edit.design;
  return {
    drag: (row, down) => {
      if (!tree.current) return;
      startRowDrag(down, tree.current, {
        over: (drop) => onDropping(drop && editsToDrop(now(), row.id, drop).length > 0 ? drop : null),
        drop: (drop) => {
          const edits = editsToDrop(now(), row.id, drop);
          const label = drop.place === 'onto' ? 'did.layOn' : 'did.order';
          const names = { name: row.name, to: nameOf(now(), drop.target) };
          if (edits.length > 0) commit(store, edits, t(label, names), { selection: [row.id] });
        },
      });
    },
    rename: (row, name) => {
      const edits = name === null ? [] : editsToName(now(), row.id, name);
      if (edits.length > 0) commit(store, edits, t('did.rename', { name: (name ?? '').trim() }));
    },
  };
}
