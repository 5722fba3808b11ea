import { ArrowLeft, FolderOpen } from 'lucide-react';
import { useEffect, useLayoutEffect, useState } from 'react';
import { Button } from '../control/Button.tsx';
import { regainFocus } from '../control/regions.ts';
import { usePageTitle } from '../control/usePageTitle.ts';
import { openFile } from '../kept/file.ts';
import { reopen } from '../kept/session.ts';
import { type Kept, listKept } from '../kept/shelf.ts';
import { useStore } from '../state/hooks.ts';
import { leaveSaw } from '../state/route.ts';
import { useWords } from '../words/t.ts';

/** At the saw without a design: open a file, or one that this device keeps. */
export function BenchStart() {
  const t = useWords();
  const store = useStore();
  usePageTitle(t('bench.title'));
  useLayoutEffect(() => regainFocus('.saw-start button'), []);
  const [kept, setKept] = useState<readonly Kept[]>([]);
  useEffect(() => {
    void listKept().then(setKept, () => setKept([]));
  }, []);
  return (
    <div className="saw">
      <header className="saw-head">
        <Button icon={ArrowLeft} look="bare saw-icon" label={t('bench.close')} onClick={leaveSaw} />
        <h1 className="saw-start-title">{t('bench.title')}</h1>
      </header>
      <main className="saw-body saw-start">
        <p>{t('bench.noDesign')}</p>
        <Button icon={FolderOpen} look="main saw-wide" onClick={() => void openFile(store)}>
          {t('file.open')}
        </Button>
        {kept.length > 0 ? (
          <section aria-labelledby="saw-kept">
            <h2 id="saw-kept">{t('bench.kept')}</h2>
            <ul>
              {kept.map((k) => (
                <li key={k.id}>
                  <Button look="saw-wide" onClick={() => void reopen(store, k.id)}>
                    {k.name || t('first.unnamed')}
                  </Button>
                </li>
              ))}
            </ul>
          </section>
        ) : null}
      </main>
    </div>
  );
}
