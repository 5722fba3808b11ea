import { X } from 'lucide-react';
import { useWords, type WordKey } from '../words/t.ts';
import { dismissOffline, type OfflineState, takeNewVersion, useOffline } from './register.ts';
import '../style/offline.css';

/** The sentence to tell, the weightiest first; null when there is none. */
function sentence(state: OfflineState): WordKey | null {
  if (state.overtaken) return 'offline.overtaken';
  if (state.ready) return 'offline.ready';
  return state.stored ? 'offline.stored' : null;
}

/** Says that the tool now works without a network, or that a newer version waits; never acts by itself. */
export function OfflineNotice() {
  const t = useWords();
  const state = useOffline();
  const key = sentence(state);
  return (
    <div className="offline-region" role="status">
      {key ? (
        <div className="notice news">
          <div>
            <p>{t(key)}</p>
          </div>
          {key === 'offline.stored' ? null : (
            <button type="button" className="btn" onClick={takeNewVersion}>
              {t(key === 'offline.ready' ? 'offline.take' : 'offline.reload')}
            </button>
          )}
          <button
            type="button"
            className="btn bare icon"
            aria-label={t('act.close')}
            onClick={dismissOffline}
          >
            <X aria-hidden="true" />
          </button>
        </div>
      ) : null}
    </div>
  );
}
