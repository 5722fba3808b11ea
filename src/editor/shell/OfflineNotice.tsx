import { X } from 'lucide-react';
import { useEffect, useState } from 'react';
import { Button } from '../control/Button.tsx';
import { dismissOffline, type OfflineState, takeNewVersion, useOffline } from '../kept/offline/register.ts';
import { useWords, type WordKey } from '../words/t.ts';
import '../style/offline.css';

/** The sentence to tell, the weightiest first; null when there is none. */
function sentence(state: OfflineState): WordKey | null {
  if (state.overtaken) return 'offline.overtaken';
  if (state.ready) return 'offline.ready';
  return state.stored ? 'offline.stored' : null;
}

/** Good news that asks for nothing stays this long, and while it is pointed at or focused. */
const STAYS_MS = 8000;

/** Says that the tool now works without a network, or that a newer version waits; never acts by itself. */
export function OfflineNotice() {
  const t = useWords();
  const state = useOffline();
  const key = sentence(state);
  const [pointed, setPointed] = useState(false);
  const [focused, setFocused] = useState(false);
  const leaves = key === 'offline.stored' && !pointed && !focused;
  useEffect(() => {
    if (!leaves) return;
    const timer = setTimeout(dismissOffline, STAYS_MS);
    return () => clearTimeout(timer);
  }, [leaves]);
  return (
    <div
      className="offline-region"
      role="status"
      onPointerEnter={() => setPointed(true)}
      onPointerLeave={() => setPointed(false)}
      onFocus={() => setFocused(true)}
      onBlur={() => setFocused(false)}
    >
      {key ? (
        <div className="notice news">
          <div>
            <p>{t(key)}</p>
          </div>
          {key === 'offline.stored' ? null : (
            <Button onClick={takeNewVersion}>
              {t(key === 'offline.ready' ? 'offline.take' : 'offline.reload')}
            </Button>
          )}
          <Button icon={X} look="bare icon" label={t('act.close')} onClick={dismissOffline} />
        </div>
      ) : null}
    </div>
  );
}
