import { CircleAlert, Info, type LucideIcon, TriangleAlert } from 'lucide-react';
import type { Check, Severity } from '../../../check/check.ts';
import type { Design } from '../../../design/schema.ts';
import { Typeset } from '../../field/Typeset.tsx';
import { useStore } from '../../state/hooks.ts';
import { useCheckWords } from '../../words/checks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { knownParts, showParts } from '../facts/showPlace.ts';

export const ICONS: Readonly<Record<Severity, LucideIcon>> = {
  error: CircleAlert,
  warning: TriangleAlert,
  note: Info,
};

const TITLES: Readonly<Record<Severity, WordKey>> = {
  error: 'checks.errors',
  warning: 'checks.warnings',
  note: 'checks.notes',
};

interface CheckListProps {
  readonly severity: Severity;
  readonly checks: readonly Check[];
  readonly design: Design;
}

/** Checks of one severity; those with a place are buttons that show it. */
export function CheckList({ severity, checks, design }: CheckListProps) {
  const t = useWords();
  const store = useStore();
  const message = useCheckWords(design);
  if (checks.length === 0) return null;
  const Icon = ICONS[severity];
  const id = `checks-${severity}`;
  return (
    <section aria-labelledby={id}>
      <h3 id={id} className="section-title">
        {t(TITLES[severity])} <span className="count">{checks.length}</span>
      </h3>
      <ul className="checks">
        {checks.map((check, i) => {
          const text = message(check);
          const inside = (
            <>
              <Icon aria-hidden="true" />
              <span>
                <Typeset text={text} />
              </span>
            </>
          );
          // Two checks may say the same of the same parts at two places; their order is fixed by the plan.
          const key = `${check.code}|${check.parts.join()}|${i}`;
          return (
            <li key={key}>
              {check.at || knownParts(design, check.parts).length > 0 ? (
                <button
                  type="button"
                  className={`check-row ${severity}`}
                  onClick={() => showParts(store, check.parts, check.at)}
                >
                  {inside}
                </button>
              ) : (
                <p className={`check-row ${severity}`}>{inside}</p>
              )}
            </li>
          );
        })}
      </ul>
    </section>
  );
}
