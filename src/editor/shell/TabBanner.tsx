import { useEditor } from '../state/hooks.ts';
import { takeOver } from '../storage/tabs.ts';
import { useWords } from '../words/t.ts';

/** Told when another tab writes this design, or when the device keeps nothing. */
export function TabBanner() {
  const t = useWords();
  const writes = useEditor((s) => s.writes);
  const blocked = useEditor((s) => s.saved === 'blocked');
  if (blocked) {
    return (
      <div className="banner bad" role="alert">
        {t('banner.blocked')}
      </div>
    );
  }
  if (writes) return null;
  return (
    <div className="banner" role="alert">
      <span>{t('banner.otherTab')}</span>
      <button type="button" className="btn" onClick={takeOver}>
        {t('banner.takeOver')}
      </button>
    </div>
  );
}
