import type { Pages } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useChange } from '../facts/useChange.ts';

const SIDES = ['left', 'right', 'top', 'bottom'] as const;
const ALSO = ['story-sticks', 'face', 'parts'] as const;

/** On what paper, how pages join, and what is printed besides the signs. */
export function PaperFields() {
  const t = useWords();
  const { pages } = useSettledDesign();
  const { set } = useChange();
  const put = (fields: Partial<Pages>) => set('pages', { ...pages, ...fields }, t('pages.paper'));
  const paper = tables().papers.find((p) => p.id === pages.paper);
  const roll = paper !== undefined && paper.height === undefined;
  return (
    <>
      <section aria-labelledby="pages-paper">
        <h3 id="pages-paper" className="section-title">
          {t('pages.paper')}
        </h3>
        <div className="fields">
          <ChoiceField
            label={t('pages.paperSize')}
            value={pages.paper}
            choices={tables().papers.map((p) => ({ value: p.id, label: p.name }))}
            onCommit={(id) => put({ paper: id })}
          />
          {roll ? (
            <MeasureField
              label={t('pages.rollWidth')}
              min={100}
              value={pages.rollWidth ?? paper.width}
              onCommit={(rollWidth) => put({ rollWidth })}
            />
          ) : null}
          <ChoiceField
            label={t('pages.join')}
            value={pages.join}
            choices={(['overlap', 'butt'] as const).map((value) => ({
              value,
              label: t(`pages.join.${value}`),
            }))}
            onCommit={(join) => put({ join })}
          />
          {pages.join === 'overlap' ? (
            <MeasureField
              label={t('pages.overlap')}
              value={pages.overlap}
              onCommit={(overlap) => put({ overlap })}
            />
          ) : null}
          <div className="wide">
            <SwitchField
              label={t('pages.wholeLetters')}
              value={pages.wholeLetters}
              onCommit={(wholeLetters) => put({ wholeLetters })}
            />
          </div>
        </div>
      </section>
      <section aria-labelledby="pages-margin">
        <h3 id="pages-margin" className="section-title">
          {t('pages.margin')}
        </h3>
        <div className="fields">
          {SIDES.map((side) => (
            <MeasureField
              key={side}
              label={t(`pages.margin.${side}`)}
              value={pages.margin[side]}
              onCommit={(mm) => put({ margin: { ...pages.margin, [side]: mm } })}
            />
          ))}
        </div>
      </section>
      <section aria-labelledby="pages-also">
        <h3 id="pages-also" className="section-title">
          {t('pages.also')}
        </h3>
        {ALSO.map((what) => (
          <SwitchField
            key={what}
            label={t(`pages.also.${what}`)}
            value={pages.also.includes(what)}
            onCommit={(on) => put({ also: ALSO.filter((a) => (a === what ? on : pages.also.includes(a))) })}
          />
        ))}
      </section>
    </>
  );
}
