import { ArrowLeft, List, QrCode } from 'lucide-react';
import { Button } from '../control/Button.tsx';
import { leaveSaw } from '../state/route.ts';
import { useWords } from '../words/t.ts';

interface BenchHeadProps {
  readonly done: number;
  readonly all: number;
  readonly listed: boolean;
  readonly onList: () => void;
  readonly onLink: () => void;
}

/** How far the cutting is, the way back, to a phone, and to the list of all steps. */
export function BenchHead({ done, all, listed, onList, onLink }: BenchHeadProps) {
  const t = useWords();
  return (
    <header className="saw-head">
      <Button look="bare saw-icon" label={t('bench.close')} onClick={leaveSaw}>
        <ArrowLeft aria-hidden="true" />
      </Button>
      <div className="saw-progress">
        <h1 className="hidden-text">{t('bench.title')}</h1>
        <span>{t('bench.progress', { done, all })}</span>
        <progress aria-label={t('bench.title')} max={Math.max(1, all)} value={done} />
      </div>
      <Button look="bare saw-icon" label={t('bench.toPhone')} title={t('bench.toPhone')} onClick={onLink}>
        <QrCode aria-hidden="true" />
      </Button>
      <Button
        look="saw-icon"
        label={t('bench.list')}
        aria-pressed={listed}
        title={t('bench.list')}
        onClick={onList}
      >
        <List aria-hidden="true" />
      </Button>
    </header>
  );
}
