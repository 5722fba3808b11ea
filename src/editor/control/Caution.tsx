import { X } from 'lucide-react';
import { useEditor, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';
import { Button } from './Button.tsx';
import { regainFocus } from './regions.ts';

/** A step of the job, or what is done at one, that can hurt or spoil the work. */
export type Hazard = 'bed' | 'export' | 'fastening' | 'pages' | 'saw' | 'short' | 'swing' | 'weight' | 'wood';

/** Where only paper is spoiled the caution may go, for this visit, once it was read. */
const MAY_GO: readonly Hazard[] = ['pages'];

/** What can hurt, or spoil the work, at this step of the job: one line where the hand is. */
export function Caution({ of, id }: { of: Hazard; id?: string | undefined }) {
  const t = useWords();
  const store = useStore();
  const gone = useEditor((s) => s.cautionsRead.includes(of));
  if (gone) return null;
  const putAway = () => {
    store.setState((s) => ({ cautionsRead: [...s.cautionsRead, of] }));
    regainFocus();
  };
  return (
    <p className="caution" data-hazard={of} id={id}>
      <span>{t(`caution.${of}`)}</span>
      {MAY_GO.includes(of) ? (
        <Button icon={X} look="bare icon" label={t('caution.putAway')} onClick={putAway} />
      ) : null}
    </p>
  );
}
