import type { Check } from '../../check/check.ts';
import type { Design } from '../../design/schema.ts';
import { Typeset } from '../control/Typeset.tsx';
import { useCheckWords } from '../control/useCheckWords.ts';
import { useWords } from '../words/t.ts';

/** Checks told in full under a starter; the others are counted. */
const TOLD = 3;

interface FitChecksProps {
  readonly design: Design;
  /** Undefined while they are looked for. */
  readonly checks: readonly Check[] | undefined;
}

/** What comes up when a starter is built on the person's bed. */
export default function FitChecks({ design, checks }: FitChecksProps) {
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
        return <Typeset as="li" key={key} className={check.severity} text={message(check)} />;
      })}
      {more > 0 ? <li>{t('first.moreChecks', { count: more })}</li> : null}
    </ul>
  );
}
