import { Trash2, Undo2 } from 'lucide-react';
import { useCallback, useEffect, useState } from 'react';
import { useStore } from '../state/hooks.ts';
import { reopen } from '../storage/session.ts';
import { clearRemoved, forget, type Kept, listKept, listRemoved, markRemoved } from '../storage/shelf.ts';
import { spoken, useWords } from '../words/t.ts';

const NOTHING = { kept: [], removed: [] };

/** The designs kept on this device, and those removed from among them, which can be put back for a while. */
export function KeptDesigns() {
  const t = useWords();
  const store = useStore();
  const [{ kept, removed }, setFound] = useState<Record<'kept' | 'removed', readonly Kept[]>>(NOTHING);
  const change = useCallback(async (done: Promise<void>) => {
    // Where the device refuses, the list shows what is still there.
    await done.catch(() => {});
    const found = await Promise.all([listKept(), listRemoved()]).catch(() => [[], []]);
    setFound({ kept: found[0] ?? [], removed: found[1] ?? [] });
  }, []);
  useEffect(() => {
    void change(clearRemoved(Date.now()));
  }, [change]);
  const named = (k: Kept) => k.name || t('first.unnamed');
  if (kept.length + removed.length === 0) return null;
  return (
    <section className="first-kept" aria-labelledby="first-kept">
      <h2 id="first-kept" className="tape">
        {t('first.kept')}
      </h2>
      {kept.length > 0 ? (
        <ul className="kept">
          {kept.map((k) => (
            <li key={k.id}>
              <button type="button" className="kept-open" onClick={() => void reopen(store, k.id)}>
                <span className="first-name">{named(k)}</span>
                {k.at > 0 ? (
                  <time className="note" dateTime={new Date(k.at).toISOString()}>
                    {new Date(k.at).toLocaleString(spoken())}
                  </time>
                ) : null}
              </button>
              <button
                type="button"
                className="btn bare icon"
                aria-label={t('first.remove', { name: named(k) })}
                title={t('first.remove', { name: named(k) })}
                onClick={() => void change(markRemoved(k.id, Date.now()))}
              >
                <Trash2 aria-hidden="true" />
              </button>
            </li>
          ))}
        </ul>
      ) : null}
      {removed.length > 0 ? (
        <div className="kept-removed">
          <h3>{t('first.removed')}</h3>
          <p className="note">{t('first.removedHint')}</p>
          <ul className="kept">
            {removed.map((k) => (
              <li key={k.id}>
                <span className="kept-open">{named(k)}</span>
                <button
                  type="button"
                  className="btn small"
                  aria-label={t('first.putBackNamed', { name: named(k) })}
                  onClick={() => void change(markRemoved(k.id, undefined))}
                >
                  <Undo2 aria-hidden="true" />
                  {t('first.putBack')}
                </button>
              </li>
            ))}
          </ul>
          <button
            type="button"
            className="btn small"
            onClick={() => void change(forget(removed.map((k) => k.id)))}
          >
            {t('first.forgetAll')}
          </button>
        </div>
      ) : null}
    </section>
  );
}
