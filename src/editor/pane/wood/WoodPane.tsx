import { Smartphone } from 'lucide-react';
import { Button } from '../../control/Button.tsx';
import { Caution } from '../../control/Caution.tsx';
import { goToSaw } from '../../state/route.ts';
import { useWords } from '../../words/t.ts';
import { PlanPane, type PlanTabs } from '../facts/SubTabs.tsx';
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

const TABS: PlanTabs = [
  ['wood.pieces', Pieces],
  ['wood.boards', Boards],
  ['wood.shopping', Shopping],
  ['wood.joints', Joints],
  ['wood.stock', SawFields, OwnedList, ShedFields, SpreadsheetLists, OwnStocks],
];

/** What to cut, from what, and what to buy for it. */
export default function WoodPane() {
  return (
    <PlanPane of="wood.tabs" tabs={TABS}>
      <Caution of="wood" />
      <BenchButton />
    </PlanPane>
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
