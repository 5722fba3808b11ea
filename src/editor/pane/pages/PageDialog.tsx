import { ChevronLeft, ChevronRight, X } from 'lucide-react';
import { useEffect, useId, useRef } from 'react';
import type { PatternSet } from '../../../patterns/result.ts';
import { Button } from '../../control/Button.tsx';
import { DrawingView } from '../../control/DrawingView.tsx';
import { useWords } from '../../words/t.ts';

interface PageDialogProps {
  readonly set: PatternSet;
  /** Index of the page on show. */
  readonly page: number;
  readonly onShow: (page: number) => void;
  readonly onClose: () => void;
}

/** One page large, with the ones before and after it. */
export function PageDialog({ set, page, onShow, onClose }: PageDialogProps) {
  const t = useWords();
  const id = useId();
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const shown = set.pages[page];
  const last = set.pages.length - 1;
  if (!shown) return null;
  return (
    <dialog
      ref={dialog}
      className="page-dialog"
      aria-labelledby={id}
      onClose={onClose}
      onKeyDown={(e) => {
        // Keys in here are not meant for the drawing behind.
        e.nativeEvent.stopImmediatePropagation();
        if (e.key === 'Escape') dialog.current?.close();
        if (e.key === 'ArrowLeft' && page > 0) onShow(page - 1);
        if (e.key === 'ArrowRight' && page < last) onShow(page + 1);
      }}
    >
      <div className="page-dialog-head">
        <h2 id={id}>
          {set.title}: {t('pages.page', { name: shown.name })}
        </h2>
        <Button
          icon={ChevronLeft}
          look="icon"
          label={t('pages.previous')}
          disabled={page === 0}
          onClick={() => onShow(page - 1)}
        />
        <Button
          icon={ChevronRight}
          look="icon"
          label={t('pages.next')}
          disabled={page === last}
          onClick={() => onShow(page + 1)}
        />
        <Button icon={X} look="icon" label={t('act.close')} onClick={() => dialog.current?.close()} />
      </div>
      <DrawingView
        sheet
        drawing={shown.drawing}
        className="page-large"
        label={t('pages.picture', { name: shown.name, title: set.title })}
      />
    </dialog>
  );
}
