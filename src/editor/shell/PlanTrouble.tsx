import { RotateCw, Save, X } from 'lucide-react';
import { useState } from 'react';
import { Button } from '../control/Button.tsx';
import { saveFile } from '../kept/file.ts';
import type { PlanProblem } from '../planning/planLife.ts';
import { usePlan, usePlanner, useStore } from '../state/hooks.ts';
import { useWords } from '../words/t.ts';

/** Why there is no plan of the design as it is, and what can be done; until it is put away or there is one. */
export function PlanTrouble() {
  const t = useWords();
  const store = useStore();
  const planner = usePlanner();
  const { problem } = usePlan();
  const [away, putAway] = useState<PlanProblem | null>(null);
  if (!problem || problem === away) return null;
  return (
    <div className="notice bad" role="alert">
      <div>
        <p>
          {problem.kind === 'failed'
            ? t('plan.failed', { problem: problem.why })
            : t(problem.kind === 'died' ? 'plan.died' : 'plan.script')}
        </p>
        <div className="btn-row">
          <Button icon={RotateCw} onClick={planner.retry}>
            {t('plan.retry')}
          </Button>
          <Button icon={Save} onClick={() => void saveFile(store)}>
            {t('file.save')}
          </Button>
        </div>
      </div>
      <Button icon={X} look="bare icon" label={t('act.close')} onClick={() => putAway(problem)} />
    </div>
  );
}
