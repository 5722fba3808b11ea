import { Check, ChevronLeft, ChevronRight } from 'lucide-react';
import { Button } from '../control/Button.tsx';
import { useWords } from '../words/t.ts';

interface BenchFootProps {
  /** The step in words. */
  readonly what: string;
  readonly ticked: boolean;
  readonly first: boolean;
  readonly last: boolean;
  readonly onBack: () => void;
  readonly onTick: () => void;
  readonly onNext: () => void;
}

/** Three buttons that a glove finds. */
export function BenchFoot({ what, ticked, first, last, onBack, onTick, onNext }: BenchFootProps) {
  const t = useWords();
  return (
    <footer className="saw-foot">
      <Button icon={ChevronLeft} disabled={first} label={t('bench.previous')} onClick={onBack} />
      <button
        type="button"
        className={ticked ? 'btn saw-tick' : 'btn main saw-tick'}
        aria-pressed={ticked}
        onClick={onTick}
      >
        <Check aria-hidden="true" />
        <span>
          {t(ticked ? 'bench.ticked' : 'bench.tick')}
          <span className="hidden-text">: {what}</span>
        </span>
      </button>
      <Button icon={ChevronRight} disabled={last} label={t('bench.next')} onClick={onNext} />
    </footer>
  );
}
