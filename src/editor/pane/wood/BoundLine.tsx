import { BadgeCheck, CircleHelp } from 'lucide-react';
import type { BoardsBound } from '../../../cutting/result.ts';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';

/** How good a cutting plan is known to be, in honest words. */
export function BoundLine({ bound }: { bound: BoardsBound }) {
  const t = useWords();
  const say = useSay();
  const { proved, used, cost, lowerBound, lowerCost } = bound;
  return (
    <p className={proved ? 'bound proved' : 'bound'}>
      {proved ? <BadgeCheck aria-hidden="true" /> : <CircleHelp aria-hidden="true" />}
      <span>{t('wood.counted', { count: used, cost: say.money(cost) })}</span>
      <span>
        {proved ? t('wood.proved') : t('wood.notProved', { bound: lowerBound, cost: say.money(lowerCost) })}
      </span>
    </p>
  );
}
