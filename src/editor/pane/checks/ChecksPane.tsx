import type { Severity } from '../../../check/check.ts';
import type { Plan } from '../../../plan/types.ts';
import { useWords } from '../../words/t.ts';
import { alike } from '../facts/alike.ts';
import { CheckList, ICONS } from '../facts/CheckList.tsx';
import { WithPlan } from '../facts/WithPlan.tsx';
import { SwingSection } from '../swing/SwingSection.tsx';
import { BrokenRules } from './BrokenRules.tsx';
import { Looked } from './Looked.tsx';
import '../../style/checks.css';

const SEVERITIES = ['error', 'warning', 'note'] as const satisfies readonly Severity[];

/** Everything that is wrong, doubtful or worth knowing, before glue goes on. */
export default function ChecksPane() {
  return <WithPlan>{(plan) => <Checks plan={plan} />}</WithPlan>;
}

function Checks({ plan }: { plan: Plan }) {
  const t = useWords();
  const of = (severity: Severity) => plan.checks.filter((c) => c.severity === severity);
  const counts = SEVERITIES.map((severity) => ({ severity, count: alike(of(severity)).length }));
  const placed = plan.checks.length > 0;
  return (
    <>
      <ul className="tally" aria-label={t('step.checks')}>
        {counts.map(({ severity, count }) => {
          const Icon = ICONS[severity];
          return (
            <li key={severity} className={count > 0 ? severity : 'none'}>
              <Icon aria-hidden="true" />
              {t(`checks.count.${severity}`, { count })}
            </li>
          );
        })}
      </ul>
      {placed ? <p className="note">{t('checks.lead')}</p> : null}
      <BrokenRules plan={plan} />
      {SEVERITIES.map((severity) => (
        <CheckList
          key={severity}
          severity={severity}
          // Rules that cannot hold stand above with what they fight.
          checks={of(severity).filter((c) => c.code !== 'rule.impossible')}
          design={plan.design}
        />
      ))}
      <section aria-labelledby="checks-looked">
        <h3 id="checks-looked" className={placed ? 'section-title' : 'section-title good'}>
          {t(placed ? 'checks.looked' : 'checks.clear')}
        </h3>
        <Looked plan={plan} />
      </section>
      <SwingSection />
    </>
  );
}
