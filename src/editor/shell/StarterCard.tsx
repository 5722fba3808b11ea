import { useMemo } from 'react';
import { faceOf } from '../../bed/faceOf.ts';
import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { Button } from '../control/Button.tsx';
import { lazyPart } from '../control/lazyPart.tsx';
import { Measure } from '../control/Measure.tsx';
import { Guard } from '../frame/Guard.tsx';
import { useWords } from '../words/t.ts';
import { StarterPicture } from './StarterPicture.tsx';
import type { Letters } from './useLetterPictures.ts';

// The sentences of checks come once there is something to check.
const FitChecks = lazyPart(() => import('./FitChecks.tsx').then((m) => m.default));

interface StarterCardProps {
  /** As it was drawn. */
  readonly design: Design;
  /** On the person's bed; null while none was entered. */
  readonly fitted: Design | null;
  /** What comes up on that bed; undefined while it is looked for. */
  readonly checks: readonly Check[] | undefined;
  /** The lettering of its signs as far as it is drawn, by design. */
  readonly letters: ReadonlyMap<Design, Letters>;
  readonly onOpen: (design: Design) => void;
}

/** A starter as it would be built: its picture, the size of its face, and what there is to look at. */
export function StarterCard({ design, fitted, checks, letters, onOpen }: StarterCardProps) {
  const t = useWords();
  const shown = fitted ?? design;
  const { face } = useMemo(() => faceOf(shown.bed), [shown.bed]);
  return (
    <li className="first-item">
      <button type="button" className="first-card" onClick={() => onOpen(shown)}>
        <StarterPicture design={shown} letters={letters.get(shown)} />
        <span className="first-name">{design.name}</span>
        <span className="first-size">
          {t('title.face')} <Measure mm={face.width} /> × <Measure mm={face.height} />
        </span>
        <span className="note">{design.note.split('\n')[0]}</span>
      </button>
      {fitted ? (
        <div className="first-fit">
          <Guard meanwhile={<p className="note">{t('first.looking')}</p>}>
            <FitChecks design={fitted} checks={checks} />
          </Guard>
          <Button label={t('first.asIsNamed', { name: design.name })} onClick={() => onOpen(design)}>
            {t('first.asIs')}
          </Button>
        </div>
      ) : null}
    </li>
  );
}
