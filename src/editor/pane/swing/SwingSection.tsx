import { Pause, Play, SkipForward } from 'lucide-react';
import { useId, useMemo } from 'react';
import type { Plan } from '../../../plan/types.ts';
import { Button } from '../../control/Button.tsx';
import { Caution } from '../../control/Caution.tsx';
import { Measure } from '../../control/Measure.tsx';
import { Section } from '../../control/Section.tsx';
import { useSay } from '../../control/useSay.ts';
import { usePlan } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { Clearances } from './Clearances.tsx';
import { Hits } from './Hits.tsx';
import { SideView } from './SideView.tsx';
import { useSwing } from './useSwing.ts';
import '../../style/facts.css';
import '../../style/swing.css';
import { Figures } from '../facts/Figures.tsx';

/** The bed swung down in side view, with what it clears and what it does not. */
export function SwingSection() {
  const t = useWords();
  const { plan } = usePlan();
  return (
    <Section id="swing-title" className="swing" title="swing.title">
      <Caution of="swing" />
      {plan ? <Swing plan={plan} /> : <p className="note">{t('plan.coming')}</p>}
    </Section>
  );
}

function Swing({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const id = useId();
  const { angle, playing, still, show, play } = useSwing();
  const { fold } = plan;
  const input = useMemo(
    () => ({
      bed: plan.design.bed,
      face: plan.face,
      keepClears: plan.design.keepClears,
      solids: plan.joinery.solids,
    }),
    [plan],
  );
  const { looks } = plan;
  return (
    <>
      <SideView
        input={input}
        fold={fold}
        angle={angle}
        label={t('swing.picture', { angle: say.angle(angle), hits: fold.hits.length })}
        colorOf={(part) => looks.parts.get(part)}
      />
      <div className="swing-slider">
        <label htmlFor={id} className="field-label">
          {t('load.angle')}
        </label>
        <input
          id={id}
          type="range"
          min={0}
          max={90}
          step={0.5}
          value={angle}
          aria-valuetext={say.angle(angle)}
          onChange={(e) => show(e.currentTarget.valueAsNumber)}
        />
        <output htmlFor={id}>{`${Math.round(angle)}°`}</output>
      </div>
      <div className="btn-row">
        <Button onClick={play}>
          {still ? (
            <SkipForward aria-hidden="true" />
          ) : playing ? (
            <Pause aria-hidden="true" />
          ) : (
            <Play aria-hidden="true" />
          )}
          {t(still ? 'swing.next' : playing ? 'swing.stop' : 'swing.play')}
        </Button>
        <Button onClick={() => show(fold.worst)}>{t('swing.worst')}</Button>
        <Button onClick={() => show(0)}>{t('swing.stowed')}</Button>
        <Button onClick={() => show(90)}>{t('swing.lowered')}</Button>
      </div>
      {fold.hits.length === 0 ? (
        <p className="good-text">{t('swing.noHits')}</p>
      ) : (
        <Hits fold={fold} onShow={show} />
      )}
      <Clearances fold={fold} onShow={show} />
      {fold.reach.length > 0 ? <Reach plan={plan} /> : null}
    </>
  );
}

function Reach({ plan }: { plan: Plan }) {
  const say = useSay();
  return (
    <Figures title="swing.reach" columns={['part.name', 'swing.stowed', 'swing.lowered']} quietHeads="first">
      {plan.fold.reach.map((r) => (
        <tr key={r.id}>
          <th scope="row">{say.name(r.id)}</th>
          <Measure as="td" mm={r.stowed} />
          <Measure as="td" mm={r.lowered} />
        </tr>
      ))}
    </Figures>
  );
}
