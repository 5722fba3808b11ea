import { ArrowLeft, FolderOpen } from 'lucide-react';
import { useEffect, useLayoutEffect, useState } from 'react';
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
        <button type="button" className="btn bare saw-icon" aria-label={t('bench.close')} onClick={leaveSaw}>
          <ArrowLeft aria-hidden="true" />
        </button>
        <h1 className="saw-start-title">{t('bench.title')}</h1>
      </header>
      <main className="saw-body saw-start">
        <p>{t('bench.noDesign')}</p>
        <button type="button" className="btn main saw-wide" onClick={() => void openFile(store)}>
          <FolderOpen aria-hidden="true" />
          {t('file.open')}
        </button>
        {kept.length > 0 ? (
          <section aria-labelledby="saw-kept">
            <h2 id="saw-kept">{t('bench.kept')}</h2>
            <ul>
              {kept.map((k) => (
                <li key={k.id}>
                  <button type="button" className="btn saw-wide" onClick={() => void reopen(store, k.id)}>
                    {k.name || t('first.unnamed')}
                  </button>
                </li>
              ))}
            </ul>
          </section>
        ) : null}
      </main>
    </div>
  );
}
