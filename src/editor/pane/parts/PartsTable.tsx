import { useState } from 'react';
import { Button } from '../../control/Button.tsx';
import { Dialog } from '../../control/Dialog.tsx';
import { Measure } from '../../control/Measure.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { select } from '../../state/commit.ts';
import { useDesign, useFace, useLayout, useSelection, useStore } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { PartChecks } from '../part/PartChecks.tsx';
import { PartFields } from '../part/PartFields.tsx';
import { RuleList } from '../part/RuleList.tsx';
import { faceInWords, type PartFacts, partFacts } from './partFacts.ts';
import '../../style/table.css';

interface Column {
  readonly title: WordKey;
  readonly figure?: boolean;
  /** What rows are sorted by. */
  readonly by: (facts: PartFacts) => string | number;
}

const COLUMNS: readonly Column[] = [
  { title: 'part.name', by: (f) => f.name },
  { title: 'parts.kind', by: (f) => f.kind },
  { title: 'size.width', figure: true, by: (f) => f.box.w },
  { title: 'part.height', figure: true, by: (f) => f.box.h },
  { title: 'part.left', figure: true, by: (f) => f.box.x },
  { title: 'part.bottom', figure: true, by: (f) => f.box.y },
  { title: 'part.finish', by: (f) => f.finish },
  { title: 'parts.checksTitle', figure: true, by: (f) => f.checks },
];

/**
 * All parts as rows that can be sorted, and under them the fields, checks and rules of the one that was chosen:
 * what the drawing shows and does, without the drawing.
 */
export function PartsTable({ onClose }: { onClose: () => void }) {
  const t = useWords();
  const store = useStore();
  const design = useDesign();
  const layout = useLayout();
  const face = useFace();
  const selection = useSelection();
  const [sorted, setSorted] = useState<{ readonly at: number; readonly down: boolean } | null>(null);
  const facts = partFacts(design, layout);
  const rows = sorted ? inOrder(facts, sorted.at, sorted.down) : facts;
  const chosen = selection.length === 1 ? design.parts.find(({ id }) => id === selection[0]) : undefined;
  return (
    <Dialog title={t('parts.table')} className="parts-table" onClose={onClose}>
      <Typeset as="p" text={faceInWords(design, face, facts, layout.checks.length)} />
      {rows.length === 0 ? null : (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
        <section className="table-scroll" tabIndex={0} aria-label={t('parts.table')}>
          <table>
            <thead>
              <tr>
                {COLUMNS.map(({ title, figure }, at) => {
                  const here = sorted?.at === at ? sorted : null;
                  return (
                    <th
                      key={title}
                      scope="col"
                      className={figure ? 'figure' : undefined}
                      aria-sort={here ? (here.down ? 'descending' : 'ascending') : 'none'}
                    >
                      <Button
                        look="bare"
                        onClick={() => setSorted({ at, down: here !== null && !here.down })}
                      >
                        {t(title)}
                        <span aria-hidden="true">{here ? (here.down ? ' ↓' : ' ↑') : ''}</span>
                      </Button>
                    </th>
                  );
                })}
              </tr>
            </thead>
            <tbody>
              {rows.map((part) => (
                <tr key={part.id} aria-current={part.id === chosen?.id ? 'true' : undefined}>
                  <th scope="row">
                    <Button
                      look="bare"
                      aria-pressed={part.id === chosen?.id}
                      onClick={() => select(store, [part.id])}
                    >
                      {part.name || part.id}
                    </Button>
                  </th>
                  <td>{part.kind}</td>
                  {(['w', 'h', 'x', 'y'] as const).map((side) => (
                    <Measure as="td" key={side} className="figure" mm={part.box[side]} />
                  ))}
                  <td>{part.finish}</td>
                  <td className="figure">{part.checks}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      {chosen ? (
        <section className="inspector" key={chosen.id} aria-label={chosen.name}>
          <h3 className="section-title">{chosen.name}</h3>
          <PartFields part={chosen} />
          <PartChecks part={chosen.id} />
          <RuleList part={chosen} />
        </section>
      ) : rows.length > 0 ? (
        <p className="note">{t('parts.choose')}</p>
      ) : null}
    </Dialog>
  );
}

function inOrder(facts: readonly PartFacts[], at: number, down: boolean): PartFacts[] {
  const by = COLUMNS[at]?.by ?? ((f: PartFacts) => f.name);
  const compare = (a: string | number, b: string | number): number =>
    typeof a === 'number' && typeof b === 'number' ? a - b : String(a).localeCompare(String(b));
  return [...facts].sort((a, b) => (down ? -1 : 1) * compare(by(a), by(b)));
}
