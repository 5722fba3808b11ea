import { Download } from 'lucide-react';
import type { Cell } from '../../../output/csv/csv.ts';
import { csvOf } from '../../../output/csv/csv.ts';
import { type Listed, pricesRows, shelfRows } from '../../../output/csv/lists.ts';
import { type ListRead, withPrices, withShelf } from '../../../output/csv/readLists.ts';
import { LANGUAGES } from '../../../plan/words/languages.ts';
import { Button } from '../../control/Button.tsx';
import { Section } from '../../control/Section.tsx';
import { supplyEdits } from '../../edit/supplyEdits.ts';
import { saveBytes } from '../../kept/file.ts';
import { tables } from '../../shipped/tables.ts';
import { useCommit, useSettledDesign } from '../../state/hooks.ts';
import { t, useLanguage, useWords } from '../../words/t.ts';
import { OpenFile } from '../facts/OpenFile.tsx';

interface ListKind {
  /** As the command calls its file. */
  readonly file: string;
  readonly rows: (of: Listed) => Cell[][];
  readonly read: (of: Listed, text: string) => ListRead;
}

const KINDS = {
  prices: { file: 'prices.csv', rows: pricesRows, read: withPrices },
  shelf: { file: 'on-hand.csv', rows: shelfRows, read: withShelf },
} as const satisfies Readonly<Record<string, ListKind>>;

/** So many cells that are wrong are told. */
const MOST_TOLD = 8;
/** A list with a row for everything has some hundred kilobytes. */
const MOST_BYTES = 2_000_000;

/** What cannot be used of a list, a line for each cell. */
function told(name: string, problems: Extract<ListRead, { ok: false }>['problems']): string {
  const more = problems.length - MOST_TOLD;
  return [
    t('lists.refused', { name }),
    ...problems.slice(0, MOST_TOLD).map((problem) => t('lists.cell', { ...problem })),
    ...(more > 0 ? [t('lists.more', { count: more })] : []),
  ].join('\n');
}

/** Prices and what is on hand, to fill in with a spreadsheet and back. */
export function SpreadsheetLists() {
  const t = useWords();
  return (
    <Section id="wood-lists" title="lists.title">
      <p className="note">{t('lists.lead')}</p>
      <OneList of="prices" />
      <OneList of="shelf" />
    </Section>
  );
}

function OneList({ of }: { of: keyof typeof KINDS }) {
  const t = useWords();
  const language = useLanguage();
  const commit = useCommit();
  const design = useSettledDesign();
  const { file, rows, read } = KINDS[of];
  const listed = { design, tables: tables() };
  const save = () => {
    const text = csvOf(rows(listed), LANGUAGES[language].notation.decimalMark);
    return saveBytes(file, 'text/csv', new TextEncoder().encode(text));
  };
  const open = async (chosen: File) => {
    const text = chosen.size > MOST_BYTES ? null : await chosen.text().catch(() => null);
    if (text === null) return t('file.unreadable');
    const found = read(listed, text);
    if (!found.ok) return told(chosen.name, found.problems);
    const edits = supplyEdits(design, found.design);
    if (edits.length === 0) return t('lists.same', { name: chosen.name });
    commit(edits, t('did.change', { name: t(`lists.${of}`) }));
    return null;
  };
  return (
    <>
      <h4 className="section-sub">{t(`lists.${of}`)}</h4>
      <OpenFile words={`lists.${of}.open`} hint={`lists.${of}.hint`} accept=".csv,text/csv" onOpen={open}>
        <Button icon={Download} onClick={() => void save()}>
          {t(`lists.${of}.save`)}
        </Button>
      </OpenFile>
    </>
  );
}
