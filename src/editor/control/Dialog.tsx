import { X } from 'lucide-react';
import { type ReactNode, type RefObject, useEffect, useId, useRef } from 'react';
import { useWords } from '../words/t.ts';
import { Button } from './Button.tsx';
import '../style/dialog.css';

interface DialogProps {
  readonly title: string;
  readonly className?: string;
  readonly onClose: () => void;
  /** For those that close it themselves. */
  readonly ref?: RefObject<HTMLDialogElement | null>;
  readonly children: ReactNode;
}

/** A board over everything, with its title and a way to close it; open as long as it is there. */
export function Dialog({ title, className = '', onClose, ref, children }: DialogProps) {
  const t = useWords();
  const id = useId();
  const own = useRef<HTMLDialogElement>(null);
  const dialog = ref ?? own;
  useEffect(() => {
    dialog.current?.showModal();
  }, [dialog]);
  return (
    <dialog ref={dialog} className={`dialog ${className}`.trim()} aria-labelledby={id} onClose={onClose}>
      <header>
        <h2 id={id}>{title}</h2>
        <Button icon={X} look="bare icon" label={t('act.close')} onClick={() => dialog.current?.close()} />
      </header>
      {children}
    </dialog>
  );
}
