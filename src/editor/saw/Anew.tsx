import { Undo2 } from 'lucide-react';
import { useState } from 'react';
import type { Plan } from '../../plan/types.ts';
import { Button } from '../control/Button.tsx';
import { Typeset } from '../control/Typeset.tsx';
import { useSay } from '../control/useSay.ts';
import { undoStep } from '../state/commit.ts';
import { useSettledDesign, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

/** What was told to go wrong, and what the plan before it was to cost still. */
interface Asked {
  readonly before: Plan;
  /** The short piece as wood, if there is one. */
  readonly short: string | null;
}

/** Keeps what a plan before something went wrong came to, to say what the plan after it does. */
export function useAnew(plan: Plan | null) {
  const [asked, ask] = useState<Asked | null>(null);
  const { job } = useSettledDesign();
  // Until the plan knows of it there is nothing to tell, and once work goes on it is old.
  const told = asked && plan && plan !== asked.before ? asked : null;
  const [shownFor, setShownFor] = useState<unknown>(null);
  if (told && shownFor === null) setShownFor(job);
  const old = shownFor !== null && shownFor !== job;
  return {
    told: told && !old ? told : null,
    ask: (next: Asked) => {
      setShownFor(null);
      ask(next);
    },
  };
}

const toBuy = ({ cutting }: Plan) => {
  const wood = [...cutting.boards, ...cutting.sheets].filter(({ owned }) => owned === null);
  return { count: wood.length, cost: wood.reduce((sum, { cost }) => sum + cost, 0) };
};

/** A cent less or more is a board of another size. */
const CENT = 0.005;

function moreWords(
  { count, cost }: { count: number; cost: number },
  money: (of: number) => string,
  t: ReturnType<typeof useWords>,
): string {
  if (count > 0) return t('anew.more', { count, cost: money(Math.max(0, cost)) });
  return cost > CENT ? t('anew.dearer', { cost: money(cost) }) : t('anew.same');
}

/** What planning the rest again came to: more to buy or not, and where the short piece still serves. */
export function Anew({ plan, anew }: { plan: Plan; anew: Asked | null }) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  if (!anew) return null;
  const [before, now] = [toBuy(anew.before), toBuy(plan)];
  const more = { count: now.count - before.count, cost: now.cost - before.cost };
  const labels = new Map(plan.joinery.pieces.map(({ id, label }) => [id, label]));
  const serves = plan.cutting.boards
    .filter(({ owned }) => owned !== null && owned === anew.short)
    .flatMap(({ cuts }) => cuts.map(({ piece }) => labels.get(piece)));
  return (
    <div className="saw-warn" role="status">
      <Typeset
        text={[
          moreWords(more, say.money, t),
          ...(serves.length > 0 ? [t('anew.serves', { labels: serves.join(', ') })] : []),
          ...(anew.short !== null && serves.length === 0 ? [t('anew.kept')] : []),
        ].join(' ')}
      />
      <br />
      <Button icon={Undo2} onClick={() => undoStep(store)}>
        {t('act.undo')}
      </Button>
    </div>
  );
}
