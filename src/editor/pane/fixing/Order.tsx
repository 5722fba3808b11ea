import { useMemo } from 'react';
import { stepIds, stepSaying, workOf } from '../../../job/work.ts';
import type { Plan } from '../../../plan/types.ts';
import { sayFor } from '../../../plan/words/say.ts';
import { stepSentence } from '../../../plan/words/words.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { WorkSoFar } from '../../control/WorkSoFar.tsx';
import { useStore } from '../../state/hooks.ts';
import { sayOfJob, takeBackOfJob, useSawing } from '../../state/job.ts';
import { useWords } from '../../words/t.ts';
import '../../words/sawWords.ts';

/** The order of work, to be checked off: what is sawn is known from the pieces. */
export function Order({ plan }: { plan: Plan }) {
  const t = useWords();
  const { words } = useSay();
  // Groups that are there as a whole are known from the plan, so that screen and paper say the same.
  const told = useMemo(() => sayFor(plan), [plan]);
  const store = useStore();
  const { steps: sawing, ticked, facts } = useSawing(plan);
  const { steps } = plan.marks;
  const work = useMemo(() => workOf({ steps, sawing, sawn: ticked, facts }), [steps, sawing, ticked, facts]);
  const boxes = useMemo(
    () => new Map(plan.layout.parts.map(({ id, box }) => [id, box])),
    [plan.layout.parts],
  );
  const turn = (step: (typeof steps)[number], on: boolean) => {
    const what = stepSentence(step, words, told);
    if (on) sayOfJob(store, stepSaying(step, boxes), t('work.did', { number: step.number }), what);
    else takeBackOfJob(store, stepIds(step), t('work.undid', { number: step.number }));
  };
  return (
    <Section
      id="fixing-order"
      title="fixing.order"
      count={t('order.count', { done: work.done.size, all: steps.length })}
    >
      <p className="note">{t('order.lead')}</p>
      <WorkSoFar plan={plan} work={work} />
      <ol className="steps">
        {steps.map((step) => {
          const sawn = step.act === 'cut-boards' || step.act === 'cut-sheets';
          return (
            <li key={`${step.number}.${step.act}`}>
              <label className="step">
                <input
                  type="checkbox"
                  checked={work.done.has(step)}
                  disabled={sawn}
                  onChange={(e) => turn(step, e.currentTarget.checked)}
                />
                <span className="step-number">{step.number}</span>
                <Typeset as="span" text={stepSentence(step, words, told)} />
              </label>
            </li>
          );
        })}
      </ol>
    </Section>
  );
}
