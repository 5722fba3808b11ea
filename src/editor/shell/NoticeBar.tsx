import { X } from 'lucide-react';
import { Button } from '../control/Button.tsx';
import { regainFocus } from '../control/regions.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { PlanTrouble } from './PlanTrouble.tsx';

/** What went wrong and what to do, above everything until it is put away. */
export function NoticeBar() {
  const t = useWords();
  const store = useStore();
  const notice = useEditor((s) => s.notice);
  if (!notice) return <PlanTrouble />;
  const putAway = () => {
    store.setState({ notice: null });
    // The drawing is where it came from, unless there is none.
    regainFocus('.canvas');
    regainFocus();
  };
  return (
    <div className={`notice ${notice.tone}`} role="alert">
      <div>
        <p>{notice.text}</p>
        {notice.lines ? (
          <ul>
            {notice.lines.slice(0, 8).map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        ) : null}
      </div>
      {notice.offer ? (
        <Button
          onClick={() => {
            putAway();
            notice.offer?.take();
          }}
        >
          {notice.offer.label}
        </Button>
      ) : null}
      <Button icon={X} look="bare icon" label={t('act.close')} onClick={putAway} />
    </div>
  );
}
