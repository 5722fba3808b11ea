import { useMemo } from 'react';
import type { Plan } from '../../../plan/types.ts';
import { sayFor } from '../../../plan/words/say.ts';
import { stepSentence } from '../../../plan/words/words.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useTicks } from '../../kept/ticked.ts';
import { useWords } from '../../words/t.ts';

/** The order of work, to be ticked off. */
export function Order({ plan }: { plan: Plan }) {
  const t = useWords();
  const { words } = useSay();
  // Groups that are there as a whole are known from the plan, so that screen and paper say the same.
  const told = useMemo(() => sayFor(plan), [plan]);
  const { ticked, tick } = useTicks('steps');
  const { steps } = plan.marks;
  const done = steps.filter((s) => ticked.has(idOf(s))).length;
  return (
    <Section id="fixing-order" title="fixing.order" count={t('order.count', { done, all: steps.length })}>
      <p className="note">{t('order.lead')}</p>
      <ol className="steps">
        {steps.map((step) => (
          <li key={idOf(step)}>
            <label className="step">
              <input
                type="checkbox"
                checked={ticked.has(idOf(step))}
                onChange={(e) => tick([idOf(step)], e.currentTarget.checked)}
              />
              <span className="step-number">{step.number}</span>
              <span>
                <Typeset text={stepSentence(step, words, told)} />
              </span>
            </label>
          </li>
        ))}
      </ol>
    </Section>
  );
}

const idOf = (step: { readonly number: number; readonly act: string }): string =>
  `${step.number}.${step.act}`;
