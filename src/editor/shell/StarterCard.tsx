import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { Measure } from '../field/Measure.tsx';
import { Typeset } from '../field/Typeset.tsx';
import { faceFor } from '../state/derive.ts';
import { useCheckWords } from '../words/checks.ts';
import { useWords } from '../words/t.ts';
import { StarterPicture } from './StarterPicture.tsx';
import type { Letters } from './useLetterPictures.ts';

/** Checks told in full under a starter; the others are counted. */
const TOLD = 3;

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
  const face = faceFor(shown.bed);
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
          <FitChecks design={fitted} checks={checks} />
          <button
            type="button"
            className="btn"
            aria-label={t('first.asIsNamed', { name: design.name })}
            onClick={() => onOpen(design)}
          >
            {t('first.asIs')}
          </button>
        </div>
      ) : null}
    </li>
  );
}

function FitChecks({ design, checks }: { design: Design; checks: readonly Check[] | undefined }) {
  const t = useWords();
  const message = useCheckWords(design);
  if (!checks) return <p className="note">{t('first.looking')}</p>;
  if (checks.length === 0) return <p className="note first-good">{t('first.noChecks')}</p>;
  const more = checks.length - TOLD;
  return (
    <ul className="first-checks">
      {checks.slice(0, TOLD).map((check, i) => {
        // Two checks may say the same of the same parts; their order is fixed by the plan.
        const key = `${check.code}|${check.parts.join()}|${i}`;
        return (
          <li key={key} className={check.severity}>
            <Typeset text={message(check)} />
          </li>
        );
      })}
      {more > 0 ? <li>{t('first.moreChecks', { count: more })}</li> : null}
    </ul>
  );
}
