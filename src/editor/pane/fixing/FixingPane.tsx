import type { Plan } from '../../../plan/types.ts';
import { Caution } from '../../control/Caution.tsx';
import { useWords } from '../../words/t.ts';
import { SubTabs } from '../facts/SubTabs.tsx';
import { WithPlan } from '../facts/WithPlan.tsx';
import { Cautions } from './Cautions.tsx';
import { FastenerFields } from './FastenerFields.tsx';
import { Fasteners } from './Fasteners.tsx';
import { Marks } from './Marks.tsx';
import { Order } from './Order.tsx';
import { Weight } from './Weight.tsx';
import '../../style/fixing.css';

/** In what order, with what, and where everything is fixed, and what it weighs then. */
export default function FixingPane() {
  return <WithPlan>{(plan) => <Fixing plan={plan} />}</WithPlan>;
}

function Fixing({ plan }: { plan: Plan }) {
  const t = useWords();
  return (
    <>
      <Caution of="fastening" />
      <SubTabs
        name="fixing"
        label={t('fixing.tabs')}
        tabs={[
          {
            id: 'order',
            label: t('fixing.order'),
            content: () => (
              <>
                <Order plan={plan} />
                <Cautions />
              </>
            ),
          },
          {
            id: 'fasteners',
            label: t('fixing.fasteners'),
            content: () => (
              <>
                <Fasteners plan={plan} />
                <FastenerFields />
              </>
            ),
          },
          { id: 'marks', label: t('fixing.marks'), content: () => <Marks plan={plan} /> },
          {
            id: 'weight',
            label: t('fixing.weight'),
            content: () => (
              <>
                <Weight plan={plan} />
                <Cautions />
              </>
            ),
          },
        ]}
      />
    </>
  );
}
