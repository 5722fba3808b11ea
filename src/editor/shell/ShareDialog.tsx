import { useRef, useState } from 'react';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import type { MadeFile } from '../kept/export/filesWorker.ts';
import { share } from '../kept/export/share.ts';
import { useSettledDesign } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

/** Files that are made: browsers open the system's board for sharing at a press only, and making them took its time. */
export function ShareDialog({ files, onClose }: { files: readonly MadeFile[]; onClose: () => void }) {
  const t = useWords();
  const { name } = useSettledDesign();
  const dialog = useRef<HTMLDialogElement>(null);
  const [why, setWhy] = useState<string | null>(null);
  const hand = () =>
    share(name, files).then(
      () => dialog.current?.close(),
      (error: unknown) => {
        if (error instanceof DOMException && error.name === 'AbortError') return;
        setWhy(error instanceof Error ? error.message : String(error));
      },
    );
  return (
    <Dialog ref={dialog} title={t('share.title')} onClose={onClose}>
      <p>{t('share.lead')}</p>
      <ul>
        {files.map((file) => (
          <li key={file.name}>{file.name}</li>
        ))}
      </ul>
      {why ? <p className="bad-text">{t('share.failed', { why })}</p> : null}
      <div className="btn-row">
        <Button onClick={() => void hand()}>{t('share.now')}</Button>
      </div>
    </Dialog>
  );
}
