import { ListChecks, Table as TableIcon } from 'lucide-react';
import { useState } from 'react';
import { Button } from '../../control/Button.tsx';
import { lazyPart } from '../../control/lazyPart.tsx';
import { Guard } from '../../frame/Guard.tsx';
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
          <Button
            icon={ListChecks}
            look="icon"
            aria-pressed={several}
            tip={t('parts.several')}
            onClick={() => onSeveral(!several)}
          />
        ) : null}
        {rows > 0 ? (
          <Button icon={TableIcon} look="icon" tip={t('parts.table')} onClick={() => setTable(true)} />
        ) : null}
      </div>
      {table ? (
        <Guard onLost={() => setTable(false)}>
          <PartsTable onClose={() => setTable(false)} />
        </Guard>
      ) : null}
    </>
  );
}
