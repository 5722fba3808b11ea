import { useRef } from 'react';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { useCheckWords } from '../control/useCheckWords.ts';
import type { ExportDoubt } from '../kept/export/useExport.ts';
import { useStore } from '../state/hooks.ts';
import { showStep } from '../state/showStep.ts';
import { useWords } from '../words/t.ts';

interface DoubtDialogProps {
  readonly doubt: ExportDoubt;
  readonly onWrite: () => void;
  readonly onClose: () => void;
}

/** The errors for which the command would write nothing, before the editor does. */
export function DoubtDialog({ doubt: { entry, errors, design }, onWrite, onClose }: DoubtDialogProps) {
  const t = useWords();
  const store = useStore();
  const sentence = useCheckWords(design);
  const dialog = useRef<HTMLDialogElement>(null);
  const close = () => dialog.current?.close();
  return (
    <Dialog ref={dialog} title={t('export.doubtTitle')} className="doubt" onClose={onClose}>
      <p>{t('export.doubt', { name: t(entry.words) })}</p>
      <ul>
        {errors.map((check) => (
          <li key={`${check.code} ${sentence(check)}`} className="bad-text">
            {sentence(check)}
          </li>
        ))}
      </ul>
      <div className="btn-row">
        <Button
          onClick={() => {
            close();
            showStep(store, 'checks');
          }}
        >
          {t('export.toChecks')}
        </Button>
        <Button
          onClick={() => {
            close();
            onWrite();
          }}
        >
          {t('export.anyway')}
        </Button>
        <Button onClick={close}>{t('act.cancel')}</Button>
      </div>
    </Dialog>
  );
}
