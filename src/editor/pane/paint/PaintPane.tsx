import { PlanPane, type PlanTabs } from '../facts/SubTabs.tsx';
import { Amounts, PaintOrder } from './Amounts.tsx';
import { ColorSets } from './ColorSets.tsx';
import { Contrast } from './Contrast.tsx';
import { Finishes } from './Finishes.tsx';
import { FinishMap } from './FinishMap.tsx';
import { Light } from './Light.tsx';
import '../../style/paint.css';

const TABS: PlanTabs = [
  ['paint.amounts', Amounts, FinishMap, PaintOrder, Contrast],
  ['paint.finishes', ColorSets, Finishes],
  ['paint.light', Light],
];

/** Colors: how much of each, where each goes, and how they look in a light. */
export default function PaintPane() {
  return <PlanPane of="paint.tabs" tabs={TABS} />;
}
