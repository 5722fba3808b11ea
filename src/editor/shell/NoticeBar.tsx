import { X } from 'lucide-react';
import { useEditor, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { PlanTrouble } from './PlanTrouble.tsx';

/** What went wrong and what to do, above everything until it is put away. */
export function NoticeBar() {
  const t = useWords();
  const store = useStore();
  const notice = useEditor((s) => s.notice);
  if (!notice) return <PlanTrouble />;
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
      <button
        type="button"
        className="btn bare icon"
        aria-label={t('act.close')}
        onClick={() => store.setState({ notice: null })}
      >
        <X aria-hidden="true" />
      </button>
    </div>
  );
}
