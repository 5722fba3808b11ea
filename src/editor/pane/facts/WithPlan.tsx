import type { ReactNode } from 'react';
import type { Plan } from '../../../plan/types.ts';
import { useEditor, usePlan } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import '../../style/facts.css';

/** What stands in a pane once there is a plan; until then what is being waited for. */
export function WithPlan({ children }: { readonly children: (plan: Plan) => ReactNode }) {
  const t = useWords();
  const step = useEditor((s) => s.step);
  const { plan, stale, draft, progress, problem } = usePlan();
  const working = stale && problem === null;
  const line = (label: 'plan.looking' | 'plan.coming') => (
    <progress aria-label={t(label)} max={1} value={progress?.share} />
  );
  return (
    <div className="job-pane pane-stack" aria-busy={working}>
      <h2 className="hidden-text">{t(`step.${step}`)}</h2>
      {problem && plan ? <p className="caution">{t('plan.older')}</p> : null}
      {working && !draft ? (
        <div className={plan ? 'working over' : 'working'}>
          <span className={plan ? 'hidden-text' : 'note'}>{t(plan ? 'plan.renewing' : 'plan.coming')}</span>
          {line('plan.coming')}
        </div>
      ) : null}
      {plan ? children(plan) : null}
      {draft ? (
        <div className="looking">
          <div>
            {t('plan.looking')}
            {line('plan.looking')}
          </div>
        </div>
      ) : null}
      {plan || working ? null : <p className="note">{t('plan.none')}</p>}
    </div>
  );
}
