import { type Read, useDraft } from '../control/useDraft.ts';
import { useWords } from '../words/t.ts';

/** The design's name, changed where it stands. */
export function NameCell({ value, onCommit }: { value: string; onCommit: (name: string) => void }) {
  const t = useWords();
  const read = (text: string): Read<string, object> => ({ ok: true, value: text.trim() });
  const draft = useDraft<string, object>({ shown: value, read, onCommit });
  return (
    <div className="cell name-cell">
      <label className="caption" htmlFor="design-name">
        {t('title.design')}
      </label>
      <input id="design-name" maxLength={200} autoComplete="off" {...draft.input} />
    </div>
  );
}
