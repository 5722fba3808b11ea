import { TriangleAlert } from 'lucide-react';
import { useEffect, useLayoutEffect, useMemo, useRef, useState } from 'react';
import { workOf } from '../../job/work.ts';
import { Button } from '../control/Button.tsx';
import { Caution } from '../control/Caution.tsx';
import { regainFocus } from '../control/regions.ts';
import { usePageTitle } from '../control/usePageTitle.ts';
import { useSay } from '../control/useSay.ts';
import { WorkSoFar } from '../control/WorkSoFar.tsx';
import { ReadBoards } from '../frame/ReadBoards.tsx';
import { openingDone } from '../kept/opening.ts';
import { useEditor, usePlan, useStore } from '../state/hooks.ts';
import { useSawing, useSawPlan } from '../state/job.ts';
import { say as announce } from '../state/store.ts';
import { useWords } from '../words/t.ts';
import '../style/facts.css';
import '../style/bench.css';
import { doneAmong, nextOpen } from '../../cutting/atSaw.ts';
import { namesAtSaw } from '../../plan/words/pieces.ts';
import { stepName, stepSpoken } from '../control/stepName.ts';
import { Anew, useAnew } from './Anew.tsx';
import { BenchFoot } from './BenchFoot.tsx';
import { BenchHead } from './BenchHead.tsx';
import { BenchList } from './BenchList.tsx';
import { BenchStart } from './BenchStart.tsx';
import { LinkDialog } from './LinkDialog.tsx';
import { StepCard } from './StepCard.tsx';
import { useAwake } from './useAwake.ts';
import { useSwipe } from './useSwipe.ts';
import { WrongDialog } from './WrongDialog.tsx';
import '../words/deskWords.ts';
import '../words/sawWords.ts';

/** The plan at the saw: one piece at a time in figures that are read at arm's length, to be ticked off. */
export default function BenchView() {
  const chosen = useEditor((s) => s.designId);
  return chosen === null ? <BenchStart /> : <BenchSteps key={chosen} id={chosen} />;
}

function BenchSteps({ id }: { id: string }) {
  const t = useWords();
  const store = useStore();
  const { stale, progress, problem } = usePlan();
  // Wood is cut by what stands here: nothing of a plan that is not of the design, and of the wood, as it is now.
  const plan = useSawPlan();
  const working = stale && plan === null && problem === null;
  const figures = useSay();
  const { steps, ticked, tick, facts } = useSawing(plan);
  const [chosen, choose] = useState<string | null>(null);
  const [listed, setListed] = useState(false);
  const [linking, setLinking] = useState(false);
  const [wrong, setWrong] = useState(false);
  const [reading, read] = useState<string | null>(null);
  const readStock = reading === null ? undefined : plan?.stocks.get(reading);
  const anew = useAnew(plan);
  const body = useRef<HTMLElement>(null);

  const names = useMemo(() => namesAtSaw(plan?.joinery.pieces ?? [], figures), [plan, figures]);
  const finished = doneAmong(steps, ticked);
  const work = useMemo(
    () => (plan ? workOf({ steps: plan.marks.steps, sawing: steps, sawn: ticked, facts }) : null),
    [plan, steps, ticked, facts],
  );
  const done = finished.size;
  const found = steps.findIndex((s) => s.id === chosen);
  const at = found >= 0 ? found : (nextOpen(steps, finished, steps.length - 1) ?? 0);
  const step = steps[at];

  const name = useEditor((s) => s.edit.design.name);
  usePageTitle(step ? stepName(step, t) : t('bench.title'), name);
  useLayoutEffect(() => regainFocus('.saw-body'), []);
  useEffect(() => openingDone(id), [id]);

  /** Turns to a step and speaks it, after what was just done. */
  const go = (to: number, did = '') => {
    const target = steps[Math.max(0, Math.min(steps.length - 1, to))];
    if (target && plan) {
      choose(target.id);
      const spoken = target === step ? '' : stepSpoken(target, names, figures, t);
      if (did || spoken) announce(store, [did, spoken].filter(Boolean).join(' '));
    }
    setListed(false);
    // Chosen from the list, which goes.
    regainFocus('.saw-body');
    body.current?.scrollTo({ top: 0 });
  };
  const turnTick = () => {
    if (!step) return;
    const on = !ticked.has(step.id);
    const what = stepName(step, t);
    tick([step.id], on, t(on ? 'job.cut' : 'job.uncut', { what }));
    const after = new Set(ticked);
    if (on) after.add(step.id);
    else after.delete(step.id);
    const now = doneAmong(steps, after);
    const next = on ? nextOpen(steps, now, at) : null;
    go(next ?? at, t(on ? 'bench.did' : 'bench.undid', { what, done: now.size, all: steps.length }));
  };

  useSwipe(body, (direction) => {
    if (!listed) go(at + (direction === 'on' ? 1 : -1));
  });
  useArrowKeys(listed || linking || wrong || reading !== null, (by) => go(at + by));

  return (
    <div className="saw">
      <BenchHead
        done={done}
        all={steps.length}
        listed={listed}
        onList={() => setListed(!listed)}
        onLink={() => setLinking(true)}
      />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys. */}
      <main className="saw-body" ref={body} aria-busy={working} tabIndex={0}>
        {problem ? <p className="saw-empty">{t('plan.none')}</p> : null}
        {working ? (
          <progress className="saw-working" aria-label={t('plan.coming')} max={1} value={progress?.share} />
        ) : null}
        {step && !listed ? <Caution of="saw" /> : null}
        {listed && plan && work ? <WorkSoFar plan={plan} work={work} /> : null}
        {listed ? <BenchList steps={steps} done={finished} at={at} onChoose={go} /> : null}
        {!listed && plan && step ? (
          <>
            <Anew plan={plan} anew={anew.told} />
            <StepCard key={step.id} step={step} plan={plan} names={names} say={figures} />
            <Button icon={TriangleAlert} look="saw-wide" onClick={() => setWrong(true)}>
              {t('wrong.open')}
            </Button>
          </>
        ) : null}
        {plan && steps.length === 0 ? <p className="saw-empty">{t('bench.none')}</p> : null}
        {working ? <p className="saw-empty">{t('plan.coming')}</p> : null}
        {!listed && steps.length > 0 && done === steps.length ? (
          <p className="saw-all">{t('bench.all')}</p>
        ) : null}
        <AwakeNote />
      </main>
      {step && !listed ? (
        <BenchFoot
          what={stepName(step, t)}
          ticked={ticked.has(step.id)}
          first={at === 0}
          last={at === steps.length - 1}
          onBack={() => go(at - 1)}
          onTick={turnTick}
          onNext={() => go(at + 1)}
        />
      ) : null}
      {linking ? <LinkDialog onClose={() => setLinking(false)} /> : null}
      {wrong && plan && step ? (
        <WrongDialog
          step={step}
          plan={plan}
          onTold={anew.ask}
          onRead={read}
          onClose={() => setWrong(false)}
        />
      ) : null}
      {plan && readStock ? <ReadBoards plan={plan} stock={readStock} onClose={() => read(null)} /> : null}
    </div>
  );
}

/** Whether the screen stays on while the hands are at the saw. */
function AwakeNote() {
  const t = useWords();
  const awake = useAwake();
  if (awake === 'off') return null;
  if (awake === 'on') return <p className="note">{t('bench.awake')}</p>;
  return <p className="note">{t(awake === 'never' ? 'bench.awakeNever' : 'bench.awakeInsecure')}</p>;
}

/** The arrow keys turn the steps, wherever the focus stands. */
function useArrowKeys(off: boolean, turn: (by: number) => void): void {
  useEffect(() => {
    const onKey = (e: KeyboardEvent) => {
      if (off || e.ctrlKey || e.metaKey || e.altKey) return;
      if (e.key === 'ArrowRight') turn(1);
      else if (e.key === 'ArrowLeft') turn(-1);
    };
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  });
}
