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
      <Button icon={ArrowLeft} look="bare saw-icon" label={t('bench.close')} onClick={leaveSaw} />
      <div className="saw-progress">
        <h1 className="hidden-text">{t('bench.title')}</h1>
        <span>{t('bench.progress', { done, all })}</span>
        <progress aria-label={t('bench.title')} max={Math.max(1, all)} value={done} />
      </div>
      <Button icon={QrCode} look="bare saw-icon" tip={t('bench.toPhone')} onClick={onLink} />
      <Button icon={List} look="saw-icon" tip={t('bench.list')} aria-pressed={listed} onClick={onList} />
    </header>
  );
}
