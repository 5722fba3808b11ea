import { Caution } from '../../control/Caution.tsx';
import { PlanPane, type PlanTabs } from '../facts/SubTabs.tsx';
import { Cautions } from './Cautions.tsx';
import { FastenerFields } from './FastenerFields.tsx';
import { Fasteners } from './Fasteners.tsx';
import { Marks } from './Marks.tsx';
import { Order } from './Order.tsx';
import { Weight } from './Weight.tsx';
import '../../style/fixing.css';

const TABS: PlanTabs = [
  ['fixing.order', Order, Cautions],
  ['fixing.fasteners', Fasteners, FastenerFields],
  ['fixing.marks', Marks],
  ['fixing.weight', Weight, Cautions],
];

/** In what order, with what, and where everything is fixed, and what it weighs then. */
export default function FixingPane() {
  return (
    <PlanPane of="fixing.tabs" tabs={TABS}>
      <Caution of="fastening" />
    </PlanPane>
  );
}
