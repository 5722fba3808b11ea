import { Button } from '../control/Button.tsx';
import { takeOver } from '../kept/tabs.ts';
import { useEditor } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

/** Told when another tab writes this design, or when the device keeps nothing. */
export function TabBanner() {
  const t = useWords();
  const writes = useEditor((s) => s.writes);
  const saved = useEditor((s) => s.saved);
  if (saved === 'blocked' || saved === 'full') {
    return (
      <div className="banner bad" role="alert">
        {t(`banner.${saved}`)}
      </div>
    );
  }
  if (writes) return null;
  return (
    <div className="banner" role="alert">
      <span>{t('banner.otherTab')}</span>
      <Button onClick={() => void takeOver()}>{t('banner.takeOver')}</Button>
    </div>
  );
}
