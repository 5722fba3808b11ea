import { Smartphone } from 'lucide-react';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Caution } from '../../control/Caution.tsx';
import { goToSaw } from '../../state/route.ts';
import { useWords } from '../../words/t.ts';
import { SubTabs } from '../facts/SubTabs.tsx';
import { WithPlan } from '../facts/WithPlan.tsx';
import { Boards } from './Boards.tsx';
import { Joints } from './Joints.tsx';
import { OwnedList } from './OwnedList.tsx';
import { OwnStocks } from './OwnStocks.tsx';
import { Pieces } from './Pieces.tsx';
import { SawFields } from './SawFields.tsx';
import { ShedFields } from './ShedFields.tsx';
import { Shopping } from './Shopping.tsx';
import { SpreadsheetLists } from './SpreadsheetLists.tsx';
import '../../style/wood.css';

/** What to cut, from what, and what to buy for it. */
export default function WoodPane() {
  return <WithPlan>{(plan) => <Wood plan={plan} />}</WithPlan>;
}

function Wood({ plan }: { plan: Plan }) {
  const t = useWords();
  return (
    <>
      <Caution of="wood" />
      <BenchButton />
      <SubTabs
        name="wood"
        label={t('wood.tabs')}
        tabs={[
          { id: 'pieces', label: t('wood.pieces'), content: () => <Pieces plan={plan} /> },
          { id: 'boards', label: t('wood.boards'), content: () => <Boards plan={plan} /> },
          { id: 'shopping', label: t('wood.shopping'), content: () => <Shopping plan={plan} /> },
          { id: 'joints', label: t('wood.joints'), content: () => <Joints plan={plan} /> },
          {
            id: 'stock',
            label: t('wood.stock'),
            content: () => (
              <>
                <SawFields />
                <OwnedList />
                <ShedFields />
                <SpreadsheetLists />
                <OwnStocks />
              </>
            ),
          },
        ]}
      />
    </>
  );
}

/** Goes over to one piece at a time. */
function BenchButton() {
  const t = useWords();
  return (
    <Button icon={Smartphone} look="to-saw" onClick={goToSaw}>
      {t('bench.openLong')}
    </Button>
  );
}
