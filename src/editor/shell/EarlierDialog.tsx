import { useEffect, useRef, useState } from 'react';
import { Button } from '../control/Button.tsx';
import { Dialog } from '../control/Dialog.tsx';
import { bringEarlier } from '../kept/session.ts';
import { listEarlier } from '../kept/shelf.ts';
import { useEditor, useStore } from '../state/hooks.ts';
import { spoken, useWords } from '../words/t.ts';

/** States of the open design that were put by, to go back to. */
export function EarlierDialog({ onClose }: { onClose: () => void }) {
  const t = useWords();
  const store = useStore();
  const id = useEditor((s) => s.designId);
  const dialog = useRef<HTMLDialogElement>(null);
  const [times, setTimes] = useState<readonly number[] | null>(null);
  useEffect(() => {
    if (id) void listEarlier(id).then(setTimes, () => setTimes([]));
  }, [id]);
  const open = async (at: number) => {
    if (id && (await bringEarlier(store, id, at))) dialog.current?.close();
  };
  return (
    <Dialog ref={dialog} title={t('earlier.title')} onClose={onClose}>
      <p>{t(times?.length === 0 ? 'earlier.none' : 'earlier.lead')}</p>
      <ul>
        {times?.map((at) => (
          <li key={at}>
            <Button onClick={() => void open(at)}>
              <time dateTime={new Date(at).toISOString()}>{new Date(at).toLocaleString(spoken())}</time>
            </Button>
          </li>
        ))}
      </ul>
    </Dialog>
  );
}
