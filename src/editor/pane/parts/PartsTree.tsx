import { type FocusEvent, type KeyboardEvent, useLayoutEffect, useRef, useState } from 'react';
import { placeByName, Typed } from '../../control/list/typed.ts';
import { regainFocus } from '../../control/regions.ts';
import { useSelection } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { PartActs } from '../part/PartActs.tsx';
import { PartsHead } from './PartsHead.tsx';
import type { TreeRow } from './rows.ts';
import { Row } from './TreeRow.tsx';
import { treeMove } from './treeKeys.ts';
import { useTreeActs } from './useTreeActs.ts';
import { useTreeRows } from './useTreeRows.ts';

/** All parts as a tree that the keyboard walks; what is selected here is selected on the drawing. */
export function PartsTree() {
  const t = useWords();
  const selection = useSelection();
  const [closed, setClosed] = useState<ReadonlySet<string>>(new Set());
  const [current, setCurrent] = useState<string | null>(null);
  /** A finger has no Shift: while this is on, each press adds a row to the selection or takes it out. */
  const [several, setSeveral] = useState(false);
  const tree = useRef<HTMLDivElement>(null);
  const { rows, marksOf } = useTreeRows(closed);
  const active = rows.find((r) => r.id === current) ?? rows.find((r) => selection.includes(r.id)) ?? rows[0];
  const onToggle = (row: TreeRow, open: boolean) => {
    const next = new Set(closed);
    if (open) next.delete(row.id);
    else next.add(row.id);
    setClosed(next);
  };
  const { acts, dropping, naming } = useTreeActs({ tree, several, onCurrent: setCurrent, onToggle });
  const onKeyDown = useTreeKeys(rows, active, acts);
  const onFocusMoved = useFocusOfRows(rows, setCurrent);
  const selected = new Set(selection);

  return (
    <div className="parts">
      <PartsHead rows={rows.length} several={several} onSeveral={setSeveral} />
      {rows.length === 0 ? (
        <p className="note parts-empty">{t('parts.empty')}</p>
      ) : (
        <div
          className="tree"
          role="tree"
          aria-label={t('parts.title')}
          aria-multiselectable="true"
          ref={tree}
          onKeyDown={onKeyDown}
          {...onFocusMoved}
        >
          {rows.map((row) => (
            <Row
              key={row.id}
              row={row}
              selected={selected.has(row.id)}
              focusable={row === active}
              {...marksOf(row)}
              naming={row.id === naming}
              drop={dropping?.target === row.id ? dropping.place : null}
              on={acts}
            />
          ))}
        </div>
      )}
      {selection.length > 0 ? <PartActs /> : null}
    </div>
  );
}

/** Keys of the tree: moves, and letters of a name. */
function useTreeKeys(
  rows: readonly TreeRow[],
  active: TreeRow | undefined,
  acts: ReturnType<typeof useTreeActs>['acts'],
) {
  const [typed] = useState(() => new Typed());
  return (e: KeyboardEvent) => {
    if (!active || e.altKey || e.ctrlKey || e.metaKey) return;
    const spaceInName = e.key === ' ' && typed.runsAt(e.timeStamp);
    const move = spaceInName ? null : treeMove(e.key, rows, active);
    if (move) {
      e.preventDefault();
      acts.current.perform(move, active, e.shiftKey);
    } else if (e.key.length === 1) {
      const names = rows.map((row) => row.name);
      const at = placeByName(typed.add(e.key, e.timeStamp), names, rows.indexOf(active));
      if (at !== null) acts.current.go(rows[at], false);
      if (spaceInName) e.preventDefault();
    }
  };
}

/** Where in the list the focus stands, so that it moves to the neighbor of a row that was taken away. */
function useFocusOfRows(rows: readonly TreeRow[], onCurrent: (id: string) => void) {
  const focused = useRef<{ readonly id: string; readonly at: number } | null>(null);
  useLayoutEffect(() => {
    const lost = focused.current;
    if (!lost || rows.some((r) => r.id === lost.id)) return;
    focused.current = null;
    const next = rows[Math.min(lost.at, rows.length - 1)];
    regainFocus(next ? `[data-row="${CSS.escape(next.id)}"]` : '.parts-head button');
  }, [rows]);
  return {
    onFocus: (e: FocusEvent<HTMLElement>) => {
      const at = rows.findIndex((r) => r.id === e.target.dataset.row);
      const row = rows[at];
      focused.current = row ? { id: row.id, at } : null;
      if (row) onCurrent(row.id);
    },
    onBlur: (e: FocusEvent<HTMLElement>) => {
      // Gone with its row it has no other place yet; then it is not forgotten.
      if (e.relatedTarget) focused.current = null;
    },
  };
}
