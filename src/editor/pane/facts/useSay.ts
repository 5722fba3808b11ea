import { useMemo } from 'react';
import {
  formatMoment,
  formatMoney,
  formatRate,
  formatReading,
  formatVolume,
} from '../../../measure/format.ts';
import { isInch } from '../../../measure/style.ts';
import { inches, type Liters, type Mm, type Money, type NewtonMeters } from '../../../measure/units.ts';
import { sayFor } from '../../../plan/words/say.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { stocksOf } from '../../state/tables.ts';

/** How figures are said in the design's units; `short` is a length without heavy or light. */
export function useSay() {
  const design = useSettledDesign();
  return useMemo(() => {
    const { measure } = design;
    return {
      ...sayFor({ design, stocks: stocksOf(design) }),
      short: (mm: Mm) => formatReading(mm, measure),
      /** Across a room or a street, where nobody counts fractions. */
      far: (mm: Mm) =>
        isInch(measure.unit) ? `${Math.round(mm / inches(12))} ft` : `${(mm / 1000).toFixed(1)} m`,
      money: (money: Money) => formatMoney(money, measure.currency),
      volume: (liters: Liters) => formatVolume(liters, measure),
      moment: (moment: NewtonMeters) => formatMoment(moment, measure),
      rate: (rate: number) => formatRate(rate, measure),
    };
  }, [design]);
}

export type PaneSay = ReturnType<typeof useSay>;
