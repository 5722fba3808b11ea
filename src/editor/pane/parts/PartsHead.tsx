import { ListChecks, Table as TableIcon } from 'lucide-react';
import { Suspense, useState } from 'react';
import { lazyPart } from '../../control/lazyPart.tsx';
import { useWords } from '../../words/t.ts';
import { NewPart } from './NewPart.tsx';

const PartsTable = lazyPart(() => import('./PartsTable.tsx').then((m) => m.PartsTable));

interface PartsHeadProps {
  /** How many rows the list has. */
  readonly rows: number;
  readonly several: boolean;
  readonly onSeveral: (several: boolean) => void;
}

/** What stands over the list: a new part, choosing several, and the table. */
export function PartsHead({ rows, several, onSeveral }: PartsHeadProps) {
  const t = useWords();
  const [table, setTable] = useState(false);
  return (
    <>
      <div className="parts-head">
        <NewPart />
        {rows > 1 ? (
          <button
            type="button"
            className="btn icon"
            aria-pressed={several}
            aria-label={t('parts.several')}
            title={t('parts.several')}
            onClick={() => onSeveral(!several)}
          >
            <ListChecks aria-hidden="true" />
          </button>
        ) : null}
        {rows > 0 ? (
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
    </>
  );
}
