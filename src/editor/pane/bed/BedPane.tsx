import { useEffect, useMemo } from 'react';
import { faceOf } from '../../../bed/faceOf.ts';
import type { Bed, Design } from '../../../design/schema.ts';
import type { Mm } from '../../../measure/units.ts';
import { Caution } from '../../control/Caution.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { type Label, labelText, shownIn } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import type { Shown } from '../../document/shown.ts';
import { changesLayout, layoutChange } from '../../frame/layoutChange.ts';
import { MovedList } from '../../frame/MovedList.tsx';
import { useCommit, useDesign, useEditor, useSettled, useStore } from '../../state/hooks.ts';
import { t, useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';
import { SwingSection } from '../swing/SwingSection.tsx';
import { BoardList } from './BoardList.tsx';
import { BED_SECTIONS, BESIDE_FIELDS, frameBoardField, MENDED_AT, SKIN_FIELDS } from './bedFields.ts';
import { FaceSection } from './FaceSection.tsx';
import { MeasuredSection } from './MeasuredSection.tsx';
import { MATTRESS_FIELDS, presetOf } from './mattressFields.ts';

/** The bed as its builder measured it. A change that moves parts shows what moves before it is taken. */
export default function BedPane() {
  const t = useWords();
  const store = useStore();
  const design = useDesign();
  const resting = useSettled();
  const settled = resting.design;
  const commit = useCommit();
  const { bed } = settled;
  const { unit } = settled.measure;
  const message = useCheckWords(settled);
  const checks = useMemo(() => faceOf(bed).checks, [bed]);
  const { question, change } = useBedQuestion(resting);
  const keep = (next: Design['bed'], label: string) => {
    const measures = changedMeasures(bed, next, (mm) => lengthText(settled, mm));
    store.setState({ bedQuestion: null });
    commit([{ kind: 'set', field: 'bed', value: next }], t('did.bed', { what: label }), {
      say: t('did.bed', { what: measures.join('; ') || label }),
    });
  };
  const propose = (next: Design['bed'], label: string) => {
    if (!changesLayout(layoutChange(resting, { bed: next }))) return keep(next, label);
    store.setState({ bedQuestion: { from: bed, next, label } });
  };
  const drop = () => {
    store.setState({ bedQuestion: null, provisional: null });
  };

  if (question && change) {
    return (
      <>
        <h2 className="hidden-text">{t('step.bed')}</h2>
        {/* A reading that cannot be is told while it is asked about: its field is out of sight. */}
        {change.shown.bed.checks
          .filter(({ code }) => code === 'bed.not-closing')
          .map((check) => (
            <Typeset
              as="p"
              className="warn-text"
              role="alert"
              key={String(check.figures.of)}
              text={message(check)}
            />
          ))}
        <MovedList
          design={design}
          change={change}
          label={question.label}
          drop="moved.drop"
          onKeep={() => keep(question.next, question.label)}
          onDrop={drop}
        />
      </>
    );
  }

  const wrongAt = (words: Label) => {
    const check = checks.find(({ code, figures }) => MENDED_AT[String(figures.what ?? code)] === words);
    return check && message(check);
  };
  const take = (fields: Partial<Design['bed']>, label: Label) =>
    propose({ ...bed, ...fields }, labelText(label));
  const withBeside = (sides: Partial<Design['bed']['beside']>) =>
    take({ beside: { ...bed.beside, ...sides } }, 'bed.beside');

  return (
    <div className="pane-stack">
      <h2 className="hidden-text">{t('step.bed')}</h2>
      <p className="note">{t('bed.lead')}</p>
      <MattressSection bed={bed} onPropose={propose} />
      <FaceSection bed={bed} onPropose={propose} />
      <MeasuredSection onPropose={propose} />
      {BED_SECTIONS.map((section) => (
        <Section key={section.words} title={section.words}>
          <div className="fields">
            {section.words === 'bed.frame' ? (
              <Fields of={[frameBoardField(unit)]} value={bed} onChange={take} />
            ) : null}
            <Fields of={section.fields} value={bed} onChange={take} errorOf={wrongAt} />
          </div>
        </Section>
      ))}
      <Section title="bed.skin">
        <FieldGrid
          of={SKIN_FIELDS}
          value={bed}
          onChange={(fields, label) => take(fields, label === 'bed.hasSkin' ? 'bed.skin' : label)}
        />
      </Section>
      <Section title="bed.beside">
        {BESIDE_FIELDS.map((of) => (
          <div className="fields" key={of.map(({ label }) => labelText(label)).join()}>
            <Fields of={of} value={bed.beside} onChange={withBeside} />
          </div>
        ))}
      </Section>
      <BoardList />
      <SwingSection />
      <Caution of="bed" />
    </div>
  );
}

/** What was asked of the bed and not answered yet, and what it would move. */
function useBedQuestion(resting: Shown) {
  const t = useWords();
  const store = useStore();
  const { bed } = resting.design;
  const asked = useEditor((s) => s.bedQuestion);
  const question = asked?.from === bed ? asked : null;
  const change = useMemo(
    () => (question ? layoutChange(resting, { bed: question.next }) : null),
    [question, resting],
  );

  // The drawing shows the bed in question while it is asked about; left for another step, the question waits here.
  useEffect(() => {
    if (!question || !change) return;
    store.setState(({ notice }) => ({
      provisional: { shown: change.shown, guides: [], live: false },
      notice: notice?.text === t('bed.waits') ? null : notice,
    }));
    return () => {
      if (store.getState().bedQuestion !== question || store.getState().edit.design.bed !== question.from)
        return;
      store.setState({ provisional: null, notice: { tone: 'warn', text: t('bed.waits') } });
    };
  }, [question, change, store, t]);
  return { question, change };
}

interface MattressSectionProps {
  readonly bed: Design['bed'];
  readonly onPropose: (next: Design['bed'], label: string) => void;
}

/** A mattress of the table, and along which side the bed folds. */
function MattressSection({ bed, onPropose }: MattressSectionProps) {
  const t = useWords();
  return (
    <Section title="bed.mattress">
      <FieldGrid
        of={MATTRESS_FIELDS}
        value={bed}
        onChange={(change) => {
          const { pivotAlong, mattress = bed.mattress } = change;
          const label = pivotAlong
            ? t(`bed.along.${pivotAlong}`)
            : (presetOf(mattress)?.name ?? t('bed.mattress'));
          onPropose({ ...bed, ...change }, label);
        }}
      />
    </Section>
  );
}

/** Each measure in which two beds differ: what it is now, and by how much it changed. */
function changedMeasures(was: Bed, now: Bed, length: (mm: Mm) => string): string[] {
  return BED_SECTIONS.flatMap((section) => section.fields).flatMap((field) => {
    if (field.is !== 'length') return [];
    const to = shownIn(field, now) as Mm;
    const change = to - (shownIn(field, was) as Mm);
    if (change === 0) return [];
    const figures = { what: labelText(field.label), to: length(to), by: length(Math.abs(change)) };
    return [t(change < 0 ? 'bed.less' : 'bed.more', figures)];
  });
}
