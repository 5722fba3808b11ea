import { ChevronDown, ChevronRight, ListChecks, Lock, Table as TableIcon, TriangleAlert } from 'lucide-react';
import { type KeyboardEvent, memo, Suspense, useLayoutEffect, useMemo, useRef, useState } from 'react';
import type { Point } from '../../../geometry/shape.ts';
import { reuse } from '../../../plan/reuse.ts';
import { KIND_ICONS } from '../../control/kindIcons.ts';
import { lazyPart } from '../../control/lazyPart.tsx';
import { placeByName, Typed } from '../../control/list/typed.ts';
import { focusName, focusPane, regainFocus } from '../../control/regions.ts';
import { nameOf } from '../../edit/movable.ts';
import { editsToDrop, editsToName, type RowDrop } from '../../edit/partList.ts';
import { openPartMenu } from '../../edit/partMenu.ts';
import { commit, select } from '../../state/commit.ts';
import { useEditor, useSettled, useStore } from '../../state/hooks.ts';
import { useLanguage, useWords } from '../../words/t.ts';
import { voiced } from '../../words/voiced.ts';
import { PartActs } from '../part/PartActs.tsx';
import { NewPart } from './NewPart.tsx';
import { checksInWords, checksOn, factsInWords, partFacts } from './partFacts.ts';
import { startRowDrag } from './rowDrag.ts';
import { KEEP_CLEARS, type TreeRow, treeRows } from './rows.ts';
import { type TreeMove, treeMove } from './treeKeys.ts';

const PartsTable = lazyPart(() => import('./PartsTable.tsx').then((m) => m.PartsTable));

/** All parts as a tree that the keyboard walks; what is selected here is selected on the drawing. */
export function PartsTree() {
  const t = useWords();
  const language = useLanguage();
  const store = useStore();
  const { design, layout, looks } = useSettled();
  const selection = useEditor((s) => s.edit.selection);
  const [closed, setClosed] = useState<ReadonlySet<string>>(new Set());
  const [current, setCurrent] = useState<string | null>(null);
  const [typed] = useState(() => new Typed());
  const [table, setTable] = useState(false);
  /** A finger has no Shift: while this is on, each press adds a row to the selection or takes it out. */
  const [several, setSeveral] = useState(false);
  const tree = useRef<HTMLDivElement>(null);
  const before = useRef<readonly TreeRow[]>([]);
  const rows = useMemo(() => {
    before.current = reuse(before.current, treeRows(design, closed, t('parts.keepClears')));
    return before.current;
  }, [design, closed, t]);
  const parts = useMemo(() => new Map(design.parts.map((p) => [p.id, p])), [design.parts]);
  const colors = useMemo(() => {
    // A row of members shows the first one's color.
    const first = new Map<string, string>();
    for (const p of layout.parts) if (!first.has(p.part)) first.set(p.part, looks.parts.get(p.id) ?? '');
    return first;
  }, [layout, looks]);
  // Told in the language on screen.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const facts = useMemo(
    () => new Map(partFacts(design, layout).map((of) => [of.id, voiced(factsInWords(design, of))])),
    [design, layout, language],
  );
  const selected = new Set(selection);
  const checks = useMemo(() => checksOn(layout), [layout]);
  const within = useMemo(
    () =>
      new Map([
        ...design.groups.map((g) => [g.id, g.parts] as const),
        [KEEP_CLEARS, design.keepClears.map(({ id }) => id)] as const,
      ]),
    [design.groups, design.keepClears],
  );
  /** What is folded away in a row is its own. */
  const checksAt = ({ id, open }: TreeRow) => checks(open === false ? (within.get(id) ?? []) : [id]);
  const active = rows.find((r) => r.id === current) ?? rows.find((r) => selection.includes(r.id)) ?? rows[0];

  const toggle = (row: TreeRow, open: boolean) => {
    const next = new Set(closed);
    if (open) next.delete(row.id);
    else next.add(row.id);
    setClosed(next);
  };
  const go = (row: TreeRow | undefined, extend: boolean) => {
    if (!row) return;
    setCurrent(row.id);
    if (row.id !== KEEP_CLEARS) {
      select(store, extend ? [...new Set([...selection, row.id])] : [row.id]);
    }
    tree.current?.querySelector<HTMLElement>(`[data-row="${CSS.escape(row.id)}"]`)?.focus();
  };

  /** Where in the list the focus stands, so that it moves to the neighbor of a row that was taken away. */
  const focused = useRef<{ readonly id: string; readonly at: number } | null>(null);
  useLayoutEffect(() => {
    const lost = focused.current;
    if (!lost || rows.some((r) => r.id === lost.id)) return;
    focused.current = null;
    const next = rows[Math.min(lost.at, rows.length - 1)];
    regainFocus(next ? `[data-row="${CSS.escape(next.id)}"]` : '.parts-head button');
  }, [rows]);

  const pick = (row: TreeRow, extend: boolean) => {
    if (!extend && !several) return go(row, false);
    if (!selected.has(row.id)) return go(row, true);
    setCurrent(row.id);
    select(
      store,
      selection.filter((id) => id !== row.id),
    );
  };

  const menu = (row: TreeRow, element: Element, at: Point | null) => {
    if (row.id === KEEP_CLEARS) return;
    if (!selection.includes(row.id)) go(row, false);
    const { left, bottom } = element.getBoundingClientRect();
    openPartMenu(store, at ?? { x: left, y: bottom }, at ? 'pointer' : 'keys');
  };
  const [dropping, setDropping] = useState<RowDrop | null>(null);
  const drag = (row: TreeRow, down: PointerEvent) => {
    if (!tree.current) return;
    const now = () => store.getState().edit.design;
    startRowDrag(down, tree.current, {
      over: (drop) => setDropping(drop && editsToDrop(now(), row.id, drop).length > 0 ? drop : null),
      drop: (drop) => {
        const edits = editsToDrop(now(), row.id, drop);
        const label = drop.place === 'onto' ? 'did.layOn' : 'did.order';
        const names = { name: row.name, to: nameOf(now(), drop.target) };
        if (edits.length > 0) commit(store, edits, t(label, names), { selection: [row.id] });
      },
    });
  };
  const [naming, setNaming] = useState<string | null>(null);
  const rename = (row: TreeRow, name: string | null) => {
    setNaming(null);
    const edits = name === null ? [] : editsToName(design, row.id, name);
    if (edits.length > 0) commit(store, edits, t('did.rename', { name: (name ?? '').trim() }));
  };
  const latest = {
    pick,
    menu,
    drag,
    rename,
    name: (row: TreeRow) => setNaming(row.id === KEEP_CLEARS ? null : row.id),
    toggle: (row: TreeRow) => toggle(row, row.open === false),
  };
  const acts = useRef(latest);
  acts.current = latest;
  /** The same object for good, so that a row is made anew only when something of it changed. */
  const on = useMemo<RowActs>(
    () => ({
      pick: (row, extend) => acts.current.pick(row, extend),
      toggle: (row) => acts.current.toggle(row),
      menu: (row, element, at) => acts.current.menu(row, element, at),
      drag: (row, down) => acts.current.drag(row, down),
      name: (row) => acts.current.name(row),
      rename: (row, name) => acts.current.rename(row, name),
    }),
    [],
  );

  const onKeyDown = (e: KeyboardEvent) => {
    if (!active || e.altKey || e.ctrlKey || e.metaKey) return;
    const spaceInName = e.key === ' ' && typed.runsAt(e.timeStamp);
    const move = spaceInName ? null : treeMove(e.key, rows, active);
    if (move) {
      e.preventDefault();
      perform(move, active, e.shiftKey);
    } else if (e.key.length === 1) {
      const names = rows.map((row) => row.name);
      const at = placeByName(typed.add(e.key, e.timeStamp), names, rows.indexOf(active));
      if (at !== null) go(rows[at], false);
      if (spaceInName) e.preventDefault();
    }
  };

  const perform = (move: TreeMove, row: TreeRow, extend: boolean) => {
    if (move.act === 'go') go(move.row, extend);
    else if (move.act === 'add') pick(row, true);
    else if (move.act === 'fields') {
      go(row, false);
      store.setState({ tab: 'part' });
      if (move.name) focusName(store);
      else focusPane(store);
    } else toggle(row, move.act === 'open');
  };

  return (
    <div className="parts">
      <div className="parts-head">
        <NewPart />
        {rows.length > 1 ? (
          <button
            type="button"
            className="btn icon"
            aria-pressed={several}
            aria-label={t('parts.several')}
            title={t('parts.several')}
            onClick={() => setSeveral(!several)}
          >
            <ListChecks aria-hidden="true" />
          </button>
        ) : null}
        {rows.length > 0 ? (
          <button
            type="button"
            className="btn icon"
            aria-label={t('parts.table')}
            title={t('parts.table')}
            onClick={() => setTable(true)}
          >
            <TableIcon aria-hidden="true" />
          </button>
        ) : null}
      </div>
      <Suspense fallback={null}>{table ? <PartsTable onClose={() => setTable(false)} /> : null}</Suspense>
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
          onFocus={(e) => {
            const at = rows.findIndex((r) => r.id === e.target.dataset.row);
            const row = rows[at];
            focused.current = row ? { id: row.id, at } : null;
            if (row) setCurrent(row.id);
          }}
          onBlur={(e) => {
            // Gone with its row it has no other place yet; then it is not forgotten.
            if (e.relatedTarget) focused.current = null;
          }}
        >
          {rows.map((row) => (
            <Row
              key={row.id}
              row={row}
              selected={selected.has(row.id)}
              focusable={row === active}
              checks={checksAt(row)}
              locked={parts.get(row.id)?.locked === true}
              color={colors.get(row.id) ?? null}
              told={facts.get(row.id) ?? ''}
              naming={row.id === naming}
              drop={dropping?.target === row.id ? dropping.place : null}
              on={on}
            />
          ))}
        </div>
      )}
      {selection.length > 0 ? <PartActs /> : null}
    </div>
  );
}

interface RowActs {
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

interface RowProps {
  readonly row: TreeRow;
  readonly selected: boolean;
  readonly focusable: boolean;
  readonly checks: number;
  readonly locked: boolean;
  readonly color: string | null;
  readonly told: string;
  readonly naming: boolean;
  /** What letting go of the dragged row here would do. */
  readonly drop: RowDrop['place'] | null;
  readonly on: RowActs;
}

const Row = memo(function Row(props: RowProps) {
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
      onClick={(e) => on.pick(row, e.shiftKey || e.ctrlKey || e.metaKey)}
      onDoubleClick={() => on.name(row)}
      onPointerDown={(e) => {
        // A finger scrolls the list; in a name the pointer selects text.
        if (e.button === 0 && e.pointerType !== 'touch' && !naming) on.drag(row, e.nativeEvent);
      }}
      onContextMenu={(e) => {
        e.preventDefault();
        on.menu(row, e.currentTarget, e.button === 2 ? { x: e.clientX, y: e.clientY } : null);
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
            on.toggle(row);
          }}
        >
          <Chevron aria-hidden="true" />
        </span>
      )}
      {Icon ? <Icon aria-hidden="true" /> : null}
      {naming ? (
        <NameInput row={row} onDone={(name) => on.rename(row, name)} />
      ) : (
        <span className="tree-name">{row.name || row.id}</span>
      )}
      {locked ? <Lock className="tree-mark" aria-hidden="true" /> : null}
      {checks > 0 ? <TriangleAlert className="tree-mark warn" aria-hidden="true" /> : null}
      {color ? <span className="chip" style={{ background: color }} aria-hidden="true" /> : null}
    </div>
  );
});

/** The name of a row while it is typed: Enter or leaving it takes it, Escape leaves it as it was. */
function NameInput({ row, onDone }: { row: TreeRow; onDone: (name: string | null) => void }) {
  const t = useWords();
  const input = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => input.current?.select(), []);
  const ended = useRef(false);
  const end = (name: string | null) => {
    if (ended.current) return;
    ended.current = true;
    onDone(name);
  };
  const endByKey = (name: string | null) => {
    end(name);
    input.current?.closest<HTMLElement>('[role=treeitem]')?.focus();
  };
  return (
    <input
      ref={input}
      className="tree-input"
      aria-label={t('part.name')}
      defaultValue={row.name}
      maxLength={200}
      // Asked for by a double click on the very name.
      // biome-ignore lint/a11y/noAutofocus: see above
      autoFocus
      onClick={(e) => e.stopPropagation()}
      onDoubleClick={(e) => e.stopPropagation()}
      onBlur={(e) => end(e.currentTarget.value)}
      onKeyDown={(e) => {
        // The tree has keys of its own for letters and arrows.
        e.stopPropagation();
        if (e.key === 'Enter') endByKey(e.currentTarget.value);
        if (e.key === 'Escape') endByKey(null);
      }}
    />
  );
}
