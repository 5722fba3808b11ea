import { Smartphone } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { goToSaw } from '../../state/route.ts';
import { useWords } from '../../words/t.ts';

/** Goes over to one piece at a time. */
export function BenchButton() {
  const t = useWords();
  return (
    <Button icon={Smartphone} look="to-saw" onClick={goToSaw}>
      {t('bench.openLong')}
    </Button>
  );
}
