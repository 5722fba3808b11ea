import type { Plan } from '../../../plan/types.ts';
import { useWords } from '../../words/t.ts';
import { SubTabs } from '../facts/SubTabs.tsx';
import { WithPlan } from '../facts/WithPlan.tsx';
import { Amounts, PaintOrder } from './Amounts.tsx';
import { ColorSets } from './ColorSets.tsx';
import { Contrast } from './Contrast.tsx';
import { Finishes } from './Finishes.tsx';
import { FinishMap } from './FinishMap.tsx';
import { Light } from './Light.tsx';
import '../../style/paint.css';

/** Colors: how much of each, where each goes, and how they look in a light. */
export default function PaintPane() {
  return <WithPlan>{(plan) => <Paint plan={plan} />}</WithPlan>;
}

function Paint({ plan }: { plan: Plan }) {
  const t = useWords();
  return (
    <SubTabs
      name="paint"
      label={t('paint.tabs')}
      tabs={[
        {
          id: 'amounts',
          label: t('paint.amounts'),
          content: () => (
            <>
              <Amounts plan={plan} />
              {plan.finish.uses.length > 0 ? <FinishMap plan={plan} /> : null}
              {plan.finish.uses.length > 0 ? <PaintOrder plan={plan} /> : null}
              <Contrast plan={plan} />
            </>
          ),
        },
        {
          id: 'finishes',
          label: t('paint.finishes'),
          content: () => (
            <>
              <ColorSets plan={plan} />
              <Finishes />
            </>
          ),
        },
        { id: 'light', label: t('paint.light'), content: () => <Light plan={plan} /> },
      ]}
    />
  );
}
