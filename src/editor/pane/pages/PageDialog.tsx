import { ChevronLeft, ChevronRight, X } from 'lucide-react';
import { Dialog } from 'radix-ui';
import type { PatternSet } from '../../../patterns/result.ts';
import { DrawingView } from '../../drawing/DrawingView.tsx';
import { useWords } from '../../words/t.ts';

interface PageDialogProps {
  readonly set: PatternSet;
  /** Index of the page on show; null when closed. */
  readonly page: number | null;
  readonly onShow: (page: number | null) => void;
}

/** One page large, with the ones before and after it. */
export function PageDialog({ set, page, onShow }: PageDialogProps) {
  const t = useWords();
  const shown = page === null ? undefined : set.pages[page];
  return (
    <Dialog.Root open={shown !== undefined} onOpenChange={(open) => open || onShow(null)}>
      <Dialog.Portal>
        <Dialog.Overlay className="page-shade" />
        <Dialog.Content
          className="page-dialog"
          aria-describedby={undefined}
          onKeyDown={(e) => {
            if (page === null) return;
            if (e.key === 'ArrowLeft' && page > 0) onShow(page - 1);
            if (e.key === 'ArrowRight' && page < set.pages.length - 1) onShow(page + 1);
          }}
        >
          <div className="page-dialog-head">
            <Dialog.Title>
              {set.title}: {t('pages.page', { name: shown?.name ?? '' })}
            </Dialog.Title>
            <button
              type="button"
              className="btn icon"
              aria-label={t('pages.previous')}
              disabled={page === 0}
              onClick={() => onShow((page ?? 1) - 1)}
            >
              <ChevronLeft aria-hidden="true" />
            </button>
            <button
              type="button"
              className="btn icon"
              aria-label={t('pages.next')}
              disabled={page === set.pages.length - 1}
              onClick={() => onShow((page ?? 0) + 1)}
            >
              <ChevronRight aria-hidden="true" />
            </button>
            <Dialog.Close className="btn icon" aria-label={t('act.close')}>
              <X aria-hidden="true" />
            </Dialog.Close>
          </div>
          {shown ? (
            <DrawingView
              drawing={shown.drawing}
              className="page-large"
              label={t('pages.picture', { name: shown.name, title: set.title })}
            />
          ) : null}
        </Dialog.Content>
      </Dialog.Portal>
    </Dialog.Root>
  );
}
