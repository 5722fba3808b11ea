import { ChevronDown, ChevronRight, Lock, TriangleAlert } from 'lucide-react';
import { memo, type RefObject } from 'react';
import type { Point } from '../../../geometry/shape.ts';
import { KIND_ICONS } from '../../control/kindIcons.ts';
import type { RowDrop } from '../../edit/partList.ts';
import { useWords } from '../../words/t.ts';
import { NameInput } from './NameInput.tsx';
import { checksInWords } from './partFacts.ts';
import type { TreeRow } from './rows.ts';
import type { RowMarks } from './useTreeRows.ts';

/** What a row asks for. */
export interface RowActs {
  readonly pick: (row: TreeRow, extend: boolean) => void;
  readonly toggle: (row: TreeRow) => void;
  /** At the pointer, or by a key at the row. */
  readonly menu: (row: TreeRow, element: Element, at: Point | null) => void;
  readonly drag: (row: TreeRow, down: PointerEvent) => void;
  /** Begins to name it. */
  readonly name: (row: TreeRow) => void;
  /** Null: its name stays. */
  readonly rename: (row: TreeRow, name: string | null) => void;
}

interface RowProps extends RowMarks {
  readonly row: TreeRow;
  readonly selected: boolean;
  readonly focusable: boolean;
  readonly naming: boolean;
  /** What letting go of the dragged row here would do. */
  readonly drop: RowDrop['place'] | null;
  readonly on: RefObject<RowActs>;
}

/** A row of the tree; made anew only when something of it changed. */
export const Row = memo(function Row(props: RowProps) {
  const { row, selected, focusable, checks, locked, color, told, naming, drop, on } = props;
  const t = useWords();
  const Icon = row.kind === 'group' || row.kind === 'keep-clears' ? null : KIND_ICONS[row.kind];
  const Chevron = row.open ? ChevronDown : ChevronRight;
  const spoken = [
    row.name || row.id,
    told,
    checks > 0 ? checksInWords(checks) : '',
    locked ? t('parts.locked') : '',
  ]
    .filter(Boolean)
    .join(', ');
  return (
    // Keys are handled by the tree as a whole.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <div
      role="treeitem"
      className="tree-row"
      data-row={row.id}
      aria-label={spoken}
      data-level={row.level}
      data-drop={drop ?? undefined}
      aria-level={row.level}
      aria-posinset={row.at}
      aria-setsize={row.of}
      aria-selected={selected}
      aria-expanded={row.open ?? undefined}
      tabIndex={focusable ? 0 : -1}
      onClick={(e) => on.current.pick(row, e.shiftKey || e.ctrlKey || e.metaKey)}
      onDoubleClick={() => on.current.name(row)}
      onPointerDown={(e) => {
        // A finger scrolls the list; in a name the pointer selects text.
        if (e.button === 0 && e.pointerType !== 'touch' && !naming) on.current.drag(row, e.nativeEvent);
      }}
      onContextMenu={(e) => {
        e.preventDefault();
        on.current.menu(row, e.currentTarget, e.button === 2 ? { x: e.clientX, y: e.clientY } : null);
      }}
    >
      {row.open === null ? null : (
        // The arrow keys do the same.
        // biome-ignore lint/a11y/useKeyWithClickEvents: see above
        // biome-ignore lint/a11y/noStaticElementInteractions: see above
        <span
          className="tree-fold"
          onClick={(e) => {
            e.stopPropagation();
            on.current.toggle(row);
          }}
        >
          <Chevron aria-hidden="true" />
        </span>
      )}
      {Icon ? <Icon aria-hidden="true" /> : null}
      {naming ? (
        <NameInput row={row} onDone={(name) => on.current.rename(row, name)} />
      ) : (
        <span className="tree-name">{row.name || row.id}</span>
      )}
      {locked ? <Lock className="tree-mark" aria-hidden="true" /> : null}
      {checks > 0 ? <TriangleAlert className="tree-mark warn" aria-hidden="true" /> : null}
      {color ? <span className="chip" style={{ background: color }} aria-hidden="true" /> : null}
    </div>
  );
});
