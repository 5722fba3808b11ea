import { ChevronDown, ChevronRight, Lock, Table as TableIcon, TriangleAlert } from 'lucide-react';
import { type KeyboardEvent, memo, Suspense, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { placeByName, Typed } from '../../list/typed.ts';
import { KIND_ICONS } from '../../shell/kindIcons.ts';
import { lazyPart } from '../../shell/lazyPart.tsx';
import { focusPane, focusSoon, regainFocus } from '../../shell/regions.ts';
import { select } from '../../state/commit.ts';
import { layoutOf, looksFor } from '../../state/derive.ts';
import { useEditor, useSettledDesign, useStore } from '../../state/hooks.ts';
import { reuse } from '../../state/reuse.ts';
import { useLanguage, useWords } from '../../words/t.ts';
import { voiced } from '../../words/voiced.ts';
import { NewPart } from './NewPart.tsx';
import { PartActs } from './PartActs.tsx';
import { factsInWords, partFacts } from './partFacts.ts';
import { KEEP_CLEARS, type TreeRow, treeRows } from './rows.ts';
import { type TreeMove, treeMove } from './treeKeys.ts';

const PartsTable = lazyPart(() => import('./PartsTable.tsx').then((m) => m.PartsTable));

/** All parts as a tree that the keyboard walks; what is selected here is selected on the drawing. */
export function PartsTree() {
  const t = useWords();
  const language = useLanguage();
  const store = useStore();
  const design = useSettledDesign();
  const selection = useEditor((s) => s.edit.selection);
  const [closed, setClosed] = useState<ReadonlySet<string>>(new Set());
  const [current, setCurrent] = useState<string | null>(null);
  const [typed] = useState(() => new Typed());
  const [table, setTable] = useState(false);
  const tree = useRef<HTMLDivElement>(null);
  const before = useRef<readonly TreeRow[]>([]);
  const rows = useMemo(() => {
    before.current = reuse(before.current, treeRows(design, closed, t('parts.keepClears')));
    return before.current;
  }, [design, closed, t]);
  const layout = layoutOf(design);
  const parts = useMemo(() => new Map(design.parts.map((p) => [p.id, p])), [design.parts]);
  const looks = looksFor(design, layout);
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
  const troubled = useMemo(() => new Set(layout.checks.flatMap((c) => c.parts)), [layout]);
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

  const latest = { pick: go, toggle: (row: TreeRow) => toggle(row, row.open === false) };
  const acts = useRef(latest);
  acts.current = latest;
  /** The same object for good, so that a row is made anew only when something of it changed. */
  const on = useMemo<RowActs>(
    () => ({
      pick: (row, extend) => acts.current.pick(row, extend),
      toggle: (row) => acts.current.toggle(row),
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
    else if (move.act === 'add') go(row, true);
    else if (move.act === 'fields') {
      go(row, false);
      store.setState({ tab: 'part', sheetOpen: true });
      if (move.name) focusSoon('.inspector input');
      else focusPane(store);
    } else toggle(row, move.act === 'open');
  };

  return (
    <div className="parts">
      <div className="parts-head">
        <NewPart />
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
              troubled={troubled.has(row.id)}
              locked={parts.get(row.id)?.locked === true}
              color={colors.get(row.id) ?? null}
              told={facts.get(row.id) ?? ''}
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
}

interface RowProps {
  readonly row: TreeRow;
  readonly selected: boolean;
  readonly focusable: boolean;
  readonly troubled: boolean;
  readonly locked: boolean;
  readonly color: string | null;
  readonly told: string;
  readonly on: RowActs;
}

const Row = memo(function Row({ row, selected, focusable, troubled, locked, color, told, on }: RowProps) {
  const t = useWords();
  const Icon = row.kind === 'group' || row.kind === 'keep-clears' ? null : KIND_ICONS[row.kind];
  const Chevron = row.open ? ChevronDown : ChevronRight;
  const facts = [told, locked ? t('parts.locked') : ''].filter(Boolean).join(', ');
  return (
    // Keys are handled by the tree as a whole.
    // biome-ignore lint/a11y/useKeyWithClickEvents: see above
    <div
      role="treeitem"
      className="tree-row"
      data-row={row.id}
      data-level={row.level}
      aria-level={row.level}
      aria-posinset={row.at}
      aria-setsize={row.of}
      aria-selected={selected}
      aria-expanded={row.open ?? undefined}
      tabIndex={focusable ? 0 : -1}
      onClick={(e) => on.pick(row, e.shiftKey || e.ctrlKey || e.metaKey)}
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
      <span className="tree-name">{row.name || row.id}</span>
      {facts ? <span className="hidden-text">, {facts}</span> : null}
      {locked ? <Lock className="tree-mark" aria-hidden="true" /> : null}
      {troubled ? <TriangleAlert className="tree-mark warn" aria-hidden="true" /> : null}
      {color ? <span className="chip" style={{ background: color }} aria-hidden="true" /> : null}
    </div>
  );
});
