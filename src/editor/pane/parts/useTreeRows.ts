import { useMemo, useRef } from 'react';
import { isPaint } from '../../../design/made.ts';
import { groupOf } from '../../../list/grouped.ts';
import { reuse } from '../../../plan/reuse.ts';
import { useSettled } from '../../state/hooks.ts';
import { useLanguage, useWords } from '../../words/t.ts';
import { voiced } from '../../words/voiced.ts';
import { checksOn, factsInWords, partFacts } from './partFacts.ts';
import { KEEP_CLEARS, type TreeRow, treeRows } from './rows.ts';

/** What a row shows and tells beside its name. */
export interface RowMarks {
  readonly checks: number;
  readonly locked: boolean;
  readonly color: string | null;
  /** Its facts in one sentence. */
  readonly told: string;
}

/** The rows as they are seen, a row that did not change the same object as before, and what each shows. */
export function useTreeRows(closed: ReadonlySet<string>) {
  const t = useWords();
  const { design } = useSettled();
  const before = useRef<readonly TreeRow[]>([]);
  const rows = useMemo(() => {
    before.current = reuse(before.current, treeRows(design, closed, t('parts.keepClears')));
    return before.current;
  }, [design, closed, t]);
  return { rows, marksOf: useRowMarks() };
}

function useRowMarks(): (row: TreeRow) => RowMarks {
  const language = useLanguage();
  const { design, layout, looks } = useSettled();
  const parts = useMemo(() => new Map(design.parts.map((p) => [p.id, p])), [design.parts]);
  const colors = useMemo(() => {
    // A row of members shows the color of the first one; a painted wall that of its bricks, and not of the board beneath.
    const shown = new Map<string, string>();
    const bricks = new Set<string>();
    for (const p of layout.parts) {
      const brick = isPaint(p) && p.spec.course !== undefined && !bricks.has(p.part);
      if (brick) bricks.add(p.part);
      if (brick || !shown.has(p.part)) shown.set(p.part, looks.parts.get(p.id) ?? '');
    }
    return shown;
  }, [layout, looks]);
  // Told in the language on screen.
  // biome-ignore lint/correctness/useExhaustiveDependencies: see above
  const facts = useMemo(
    () => new Map(partFacts(design, layout).map((of) => [of.id, voiced(factsInWords(design, of))])),
    [design, layout, language],
  );
  const checks = useMemo(() => checksOn(layout), [layout]);
  const within = useMemo(
    () =>
      new Map([
        ...design.groups.map((g) => [g.id, g.parts] as const),
        [KEEP_CLEARS, design.keepClears.map(({ id }) => id)] as const,
      ]),
    [design.groups, design.keepClears],
  );
  return ({ id, open }) => ({
    // What is folded away in a row is its own.
    checks: checks(open === false ? groupOf(within, id) : [id]),
    locked: parts.get(id)?.locked === true,
    color: colors.get(id) ?? null,
    told: facts.get(id) ?? '',
  });
}
