import { Smartphone } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { goToSaw } from '../../state/route.ts';
import { useWords } from '../../words/t.ts';

/** Goes over to one piece at a time. */
export function BenchButton() {
  const t = useWords();
  return (
    <Button look="to-saw" onClick={goToSaw}>
      <Smartphone aria-hidden="true" />
      {t('bench.openLong')}
    </Button>
  );
}
