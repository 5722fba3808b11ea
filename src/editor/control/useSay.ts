import { useMemo } from 'react';
import {
  formatFar,
  formatMoment,
  formatMoney,
  formatRate,
  formatReading,
  formatVolume,
} from '../../measure/format.ts';
import type { Liters, Mm, Money, NewtonMeters } from '../../measure/units.ts';
import { styleIn } from '../../plan/words/languages.ts';
import { sayFor } from '../../plan/words/say.ts';
import { PLAN_WORDS } from '../../plan/words/tables.ts';
import { stocksOf } from '../shipped/tables.ts';
import { useSettledDesign } from '../state/hooks.ts';
import { useLanguage } from '../words/t.ts';

/** How figures are said in the design's units; `short` is a length without heavy or light. */
export function useSay() {
  const design = useSettledDesign();
  const language = useLanguage();
  return useMemo(() => {
    const measure = styleIn(language, design.measure);
    return {
      ...sayFor({ design, stocks: stocksOf(design), language }),
      /** What the plan itself says: steps, shopping. */
      words: PLAN_WORDS[language],
      measure,
      short: (mm: Mm) => formatReading(mm, measure),
      /** Across a room or a street, where nobody counts fractions. */
      far: (mm: Mm) => formatFar(mm, measure),
      money: (money: Money) => formatMoney(money, measure.currency, measure.notation),
      volume: (liters: Liters) => formatVolume(liters, measure),
      moment: (moment: NewtonMeters) => formatMoment(moment, measure),
      rate: (rate: number) => formatRate(rate, measure),
    };
  }, [design, language]);
}

export type PaneSay = ReturnType<typeof useSay>;
