import { CircleAlert, Info, type LucideIcon, TriangleAlert } from 'lucide-react';
import type { Check, Severity } from '../../../check/check.ts';
import type { Design } from '../../../design/schema.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import { useStore } from '../../state/hooks.ts';
import { showStep } from '../../state/showStep.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { alike } from './alike.ts';
import { Mends } from './Mends.tsx';
import { knownParts, showParts } from './showPlace.ts';

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

/** Of so many the mends are worked out: each takes some layouts. */
const MOST_MENDED = 8;

interface CheckListProps {
  readonly severity: Severity;
  readonly checks: readonly Check[];
  readonly design: Design;
}

/** Whether it is mended in the fields of the bed, where it is told too. */
const ofBed = ({ code }: Check): boolean => code.startsWith('bed.');

/** Checks of one severity; those with a place are buttons that show it. */
export function CheckList({ severity, checks, design }: CheckListProps) {
  const t = useWords();
  const store = useStore();
  const message = useCheckWords(design);
  if (checks.length === 0) return null;
  const groups = alike(checks);
  const Icon = ICONS[severity];
  const id = `checks-${severity}`;
  return (
    <Section id={id} title={TITLES[severity]} count={groups.length}>
      <ul className="checks">
        {groups.map((group, i) => {
          const [check] = group;
          if (!check) return null;
          const parts = [...new Set(group.flatMap((one) => one.parts))];
          const inside = (
            <>
              <Icon aria-hidden="true" />
              <span>
                <Typeset text={message(check)} />
                {group.length > 1 ? <em>{t('checks.alike', { count: group.length - 1 })}</em> : null}
              </span>
            </>
          );
          // Two checks may say the same of the same parts at two places; their order is fixed by the plan.
          const key = `${check.code}|${check.parts.join()}|${i}`;
          const known = knownParts(design, parts);
          return (
            <li key={key}>
              {check.at || known.length > 0 || ofBed(check) ? (
                <button
                  type="button"
                  className={`check-row ${severity}`}
                  onClick={() => (ofBed(check) ? showStep(store, 'bed') : showParts(store, parts, check.at))}
                >
                  {inside}
                </button>
              ) : (
                <p className={`check-row ${severity}`}>{inside}</p>
              )}
              {i < MOST_MENDED ? <Mends checks={group} /> : null}
            </li>
          );
        })}
      </ul>
    </Section>
  );
}
