import { FolderOpen, Plus, Trash2 } from 'lucide-react';
import { useEffect, useState } from 'react';
import { newDesign } from '../../design/defaults.ts';
import type { Design } from '../../design/schema.ts';
import { loadStarter, STARTERS } from '../starters.ts';
import { useStore } from '../state/hooks.ts';
import { openFile } from '../storage/file.ts';
import { bringIn, reopen } from '../storage/session.ts';
import { forget, type Kept, listKept } from '../storage/shelf.ts';
import { useWords } from '../words/t.ts';
import { StarterPicture } from './StarterPicture.tsx';
import { showStep } from './showStep.ts';

/** Nothing on the bench yet: begin from a starter, from an empty bed, or from what was kept. */
export default function FirstRun() {
  const t = useWords();
  const store = useStore();
  const [starters, setStarters] = useState<readonly { name: string; design: Design }[]>([]);
  const [kept, setKept] = useState<readonly Kept[]>([]);

  useEffect(() => {
    void Promise.all(
      STARTERS.map(async (name) => {
        const design = await loadStarter(name);
        return design ? [{ name, design }] : [];
      }),
    ).then((found) => setStarters(found.flat()));
    void listKept().then(setKept, () => setKept([]));
  }, []);

  const startEmpty = () => {
    bringIn(store, newDesign());
    showStep(store, 'bed');
  };
  const startFrom = (design: Design) => {
    bringIn(store, design);
    store.setState({ step: 'layout', tab: 'step', sheetOpen: false });
  };

  return (
    <main className="first">
      <header className="first-head">
        <h1>Showface</h1>
        <p>{t('first.lead')}</p>
      </header>
      <section aria-labelledby="first-begin">
        <h2 id="first-begin" className="tape">
          {t('first.begin')}
        </h2>
        <ul className="first-cards">
          {starters.map(({ name, design }) => (
            <li key={name}>
              <button type="button" className="first-card" onClick={() => startFrom(design)}>
                <StarterPicture design={design} />
                <span className="first-name">{design.name}</span>
                <span className="note">{design.note.split('\n')[0]}</span>
              </button>
            </li>
          ))}
          <li>
            <button type="button" className="first-card empty" onClick={startEmpty}>
              <span className="first-blank" aria-hidden="true">
                <Plus />
              </span>
              <span className="first-name">{t('first.empty')}</span>
              <span className="note">{t('first.emptyHint')}</span>
            </button>
          </li>
        </ul>
        <div className="first-open">
          <button type="button" className="btn" onClick={() => void openFile(store)}>
            <FolderOpen aria-hidden="true" />
            {t('file.open')}
          </button>
          <span className="note">{t('first.openHint')}</span>
        </div>
      </section>
      {kept.length > 0 ? (
        <section aria-labelledby="first-kept">
          <h2 id="first-kept" className="tape">
            {t('first.kept')}
          </h2>
          <ul className="kept">
            {kept.map((k) => (
              <li key={k.id}>
                <button type="button" className="kept-open" onClick={() => void reopen(store, k.id)}>
                  <span className="first-name">{k.name || t('first.unnamed')}</span>
                  <time className="note" dateTime={new Date(k.at).toISOString()}>
                    {new Date(k.at).toLocaleString()}
                  </time>
                </button>
                <button
                  type="button"
                  className="btn bare icon"
                  aria-label={t('first.forget', { name: k.name })}
                  onClick={() => void forget(k.id).then(() => setKept(kept.filter((o) => o.id !== k.id)))}
                >
                  <Trash2 aria-hidden="true" />
                </button>
              </li>
            ))}
          </ul>
        </section>
      ) : null}
      <p className="caution">{t('caution.short')}</p>
    </main>
  );
}
