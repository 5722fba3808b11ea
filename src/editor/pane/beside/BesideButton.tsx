import { useState } from 'react';
import { Button } from '../../control/Button.tsx';
import { lazyPart } from '../../control/lazyPart.tsx';
import { Guard } from '../../frame/Guard.tsx';
import { useWords } from '../../words/t.ts';

const BesideDialog = lazyPart(() => import('./BesideDialog.tsx').then((m) => m.BesideDialog));

/** Opens the faces side by side. */
export function BesideButton() {
  const t = useWords();
  const [shown, setShown] = useState(false);
  const close = () => setShown(false);
  return (
    <>
      <Button onClick={() => setShown(true)}>{t('beside.title')}</Button>
      {shown ? (
        <Guard onLost={close}>
          <BesideDialog onClose={close} />
        </Guard>
      ) : null}
    </>
  );
}
