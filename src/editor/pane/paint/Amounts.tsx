import type { FinishUse } from '../../../finish/result.ts';
import { designPart } from '../../../layout/reference.ts';
import type { Plan } from '../../../plan/types.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { useWords } from '../../words/t.ts';
import { Figures } from '../facts/Figures.tsx';
import { FinishChip } from './FinishMap.tsx';

/** How much of every finish: areas, paint, cans, what is left, and tape. */
export function Amounts({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  const { uses } = plan.finish;
  if (uses.length === 0) return <p className="note">{t('paint.none')}</p>;
  const finishes = new Map(plan.design.finishes.map((f) => [f.id, f]));
  const cans = new Map(plan.tables.containers.map((c) => [c.id, c.name]));
  const bought = (use: FinishUse) =>
    use.buy.length === 0
      ? t('paint.buyNothing')
      : use.buy
          .map((b) => t('paint.buyOne', { count: b.count, container: cans.get(b.container) ?? b.container }))
          .join(', ');
  return (
    <Section id="paint-amounts" className="amounts-room" title="paint.amounts">
      <p className="note">{t('paint.amountsLead')}</p>
      <Figures
        title="paint.amounts"
        quiet
        columns={[
          'part.finish',
          'paint.area',
          'paint.painted',
          'step.paint',
          'paint.buy',
          'paint.left',
          'paint.tape',
        ]}
        scrolls
        className="amounts"
      >
        {uses.map((use) => {
          const finish = finishes.get(use.finish);
          return (
            <tr key={use.finish}>
              <th scope="row">
                {finish ? <FinishChip plan={plan} finish={finish} /> : null}
                {finish?.name ?? use.finish}
                <span className="note block">{t('paint.coatsOf', { count: use.coats })}</span>
              </th>
              <td data-label={t('paint.area')}>
                <Amount words={t('paint.face')} value={say.covered(use.face)} />
                <Amount words={t('paint.edge')} value={say.covered(use.edge)} />
              </td>
              <td data-label={t('paint.painted')}>
                <Amount words={t('paint.face')} value={say.covered(use.painted.face)} />
                <Amount words={t('paint.edge')} value={say.covered(use.painted.edge)} />
                {use.painted.back > 0 ? (
                  <Amount words={t('paint.back')} value={say.covered(use.painted.back)} />
                ) : null}
              </td>
              <td data-label={t('step.paint')}>
                {say.volume(use.volume)}
                {use.primer > 0 ? <Amount words={t('paint.primer')} value={say.volume(use.primer)} /> : null}
              </td>
              <td data-label={t('paint.buy')}>
                {bought(use)}
                {use.cost > 0 ? <span className="note block">{say.money(use.cost)}</span> : null}
              </td>
              <td data-label={t('paint.left')}>{say.volume(use.left)}</td>
              <td data-label={t('paint.tape')}>
                <Typeset text={use.tape > 0 ? say.far(use.tape) : '–'} />
              </td>
            </tr>
          );
        })}
      </Figures>
    </Section>
  );
}

function Amount({ words, value }: { words: string; value: string }) {
  return (
    <span className="amount">
      <span className="note">{words}</span> {value}
    </span>
  );
}

/** What is painted lying on the bench and what after it is fixed. */
export function PaintOrder({ plan }: { plan: Plan }) {
  const t = useWords();
  const say = useSay();
  if (plan.finish.uses.length === 0) return null;
  const names = (parts: readonly string[]) => {
    // Members of a row are one thing to the painter.
    const named = [...new Set(parts.map((id) => say.name(designPart(id))))];
    return named.length === 0 ? t('paint.nothing') : named.join(', ');
  };
  return (
    <Section id="paint-order" title="paint.order">
      <dl className="pairs">
        <dt>{t('paint.before')}</dt>
        <dd>{names(plan.finish.before)}</dd>
        <dt>{t('paint.after')}</dt>
        <dd>{names(plan.finish.after)}</dd>
      </dl>
    </Section>
  );
}
