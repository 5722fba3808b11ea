import { Undo2 } from 'lucide-react';
import type { Design } from '../../design/schema.ts';
import { Button } from '../control/Button.tsx';
import { Remove } from '../control/Remove.tsx';
import { Guard } from '../frame/Guard.tsx';
import { reopen } from '../kept/session.ts';
import { forget, type Kept, markRemoved } from '../kept/shelf.ts';
import { useStore } from '../state/hooks.ts';
import { spoken, useWords } from '../words/t.ts';
import { StarterPicture } from './StarterPicture.tsx';
import type { Letters } from './useLetterPictures.ts';
import type { Shelf } from './useShelf.ts';

interface KeptDesignsProps {
  readonly shelf: Shelf;
  readonly letters: ReadonlyMap<Design, Letters>;
}

/** The designs kept on this device, each with its picture: what a person who comes back looks for first. */
export function KeptDesigns({ shelf: { kept, designs, change }, letters }: KeptDesignsProps) {
  const t = useWords();
  const store = useStore();
  const named = useNamed();
  if (kept.length === 0) return null;
  return (
    <section className="first-kept" aria-labelledby="first-kept">
      <h2 id="first-kept" className="tape">
        {t('first.kept')}
      </h2>
      <ul className="kept-cards">
        {kept.map((k) => {
          const design = designs.get(k.id);
          return (
            <li key={k.id}>
              <button type="button" className="kept-open" onClick={() => void reopen(store, k.id)}>
                {design ? (
                  <Guard onLost={() => undefined}>
                    <StarterPicture design={design} letters={letters.get(design)} />
                  </Guard>
                ) : (
                  <span className="first-picture" aria-hidden="true" />
                )}
                <span className="first-name">{named(k)}</span>
                {k.at > 0 ? (
                  <time className="note" dateTime={new Date(k.at).toISOString()}>
                    {new Date(k.at).toLocaleString(spoken())}
                  </time>
                ) : null}
              </button>
              <Remove
                tip={t('first.remove', { name: named(k) })}
                onClick={() => void change(markRemoved(k.id, Date.now()))}
              />
            </li>
          );
        })}
      </ul>
    </section>
  );
}

/** Those removed from among them, which can be put back for a while. */
export function RemovedDesigns({ shelf: { removed, change } }: Pick<KeptDesignsProps, 'shelf'>) {
  const t = useWords();
  const named = useNamed();
  if (removed.length === 0) return null;
  return (
    <section className="kept-removed" aria-labelledby="first-removed">
      <h2 id="first-removed">{t('first.removed')}</h2>
      <p className="note">{t('first.removedHint')}</p>
      <ul className="kept">
        {removed.map((k) => (
          <li key={k.id}>
            <span className="kept-name">{named(k)}</span>
            <Button
              icon={Undo2}
              look="small"
              label={t('first.putBackNamed', { name: named(k) })}
              onClick={() => void change(markRemoved(k.id, undefined))}
            >
              {t('first.putBack')}
            </Button>
          </li>
        ))}
      </ul>
      <Button look="small" onClick={() => void change(forget(removed.map((k) => k.id)))}>
        {t('first.forgetAll')}
      </Button>
    </section>
  );
}

function useNamed(): (kept: Kept) => string {
  const t = useWords();
  return (kept) => kept.name || t('first.unnamed');
}
