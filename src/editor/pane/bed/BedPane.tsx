import { useEffect, useMemo } from 'react';
import { faceOf } from '../../../bed/faceOf.ts';
import type { Design } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useCheckWords } from '../../control/useCheckWords.ts';
import { tables } from '../../shipped/tables.ts';
import { useCommit, useDesign, useEditor, useSettled, useStore } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { lengthText } from '../../words/text.ts';
import { SwingSection } from '../swing/SwingSection.tsx';
import { BoardList } from './BoardList.tsx';
import { BED_SECTIONS, type BedField, MENDED_AT } from './bedFields.ts';
import { bedChange } from './changeBed.ts';
import { changedMeasures } from './changedMeasures.ts';
import { FaceSection } from './FaceSection.tsx';
import { frameBoardOf, frameBoards } from './frameBoards.ts';
import { MovedList } from './MovedList.tsx';

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
  const asked = useEditor((s) => s.bedQuestion);
  const question = asked?.from === bed ? asked : null;
  const change = useMemo(() => (question ? bedChange(resting, question.next) : null), [question, resting]);

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

  const keep = (next: Design['bed'], label: string) => {
    const measures = changedMeasures(bed, next, (mm) => lengthText(settled, mm));
    store.setState({ bedQuestion: null });
    commit([{ kind: 'set', field: 'bed', value: next }], t('did.bed', { what: label }), {
      say: t('did.bed', { what: measures.join('; ') || label }),
    });
  };
  const propose = (next: Design['bed'], label: string) => {
    if (bedChange(resting, next).moved.length === 0) return keep(next, label);
    store.setState({ bedQuestion: { from: bed, next, label } });
  };
  const drop = () => {
    store.setState({ bedQuestion: null, provisional: null });
  };

  if (question && change) {
    return (
      <>
        <h2 className="hidden-text">{t('step.bed')}</h2>
        <MovedList
          design={design}
          change={change}
          label={question.label}
          onKeep={() => keep(question.next, question.label)}
          onDrop={drop}
        />
      </>
    );
  }

  const { width, length } = bed.mattress;
  const preset = tables().mattresses.find(
    (m) => Math.abs(m.width - width) < 0.5 && Math.abs(m.length - length) < 0.5,
  );
  const woods = tables().materials.map((m) => ({ value: m.id, label: m.name }));
  const wrongAt = (words: string) => {
    const check = checks.find(({ code, figures }) => MENDED_AT[String(figures.what ?? code)] === words);
    return check && message(check);
  };
  const field = (f: BedField) => (
    <MeasureField
      key={f.words}
      label={t(f.words)}
      hint={f.hint ? t(f.hint) : undefined}
      error={wrongAt(f.words)}
      min={f.min ?? 0}
      value={f.get(bed)}
      onCommit={(mm) => propose(f.put(bed, mm), t(f.words))}
    />
  );

  return (
    <div className="pane-stack">
      <h2 className="hidden-text">{t('step.bed')}</h2>
      <p className="note">{t('bed.lead')}</p>
      <section>
        <h3 className="section-title">{t('bed.mattress')}</h3>
        <div className="fields">
          <div className="wide">
            <ChoiceField
              label={t('bed.preset')}
              value={preset?.id ?? 'own'}
              choices={[
                { value: 'own', label: t('bed.ownSize') },
                ...tables().mattresses.map((m) => ({ value: m.id, label: m.name })),
              ]}
              onCommit={(id) => {
                const m = tables().mattresses.find((one) => one.id === id);
                if (m)
                  propose(
                    { ...bed, mattress: { ...bed.mattress, width: m.width, length: m.length } },
                    m.name,
                  );
              }}
            />
          </div>
          <div className="wide">
            <ChoiceField
              label={t('bed.pivotAlong')}
              value={bed.pivotAlong}
              choices={(['end', 'side'] as const).map((value) => ({ value, label: t(`bed.along.${value}`) }))}
              onCommit={(pivotAlong) => propose({ ...bed, pivotAlong }, t(`bed.along.${pivotAlong}`))}
            />
          </div>
        </div>
      </section>
      <FaceSection bed={bed} onPropose={propose} />
      {BED_SECTIONS.map((section) => (
        <section key={section.words}>
          <h3 className="section-title">{t(section.words)}</h3>
          <div className="fields">
            {section.words === 'bed.legs' ? (
              <div className="wide">
                <ChoiceField
                  label={t('bed.legsWhere')}
                  value={bed.legs.where}
                  choices={(['beside', 'on-face'] as const).map((value) => ({
                    value,
                    label: t(`bed.legsWhere.${value}`),
                  }))}
                  onCommit={(where) => propose({ ...bed, legs: { ...bed.legs, where } }, t('bed.legsWhere'))}
                />
              </div>
            ) : null}
            {section.words === 'bed.frame' ? (
              <div className="wide">
                <ChoiceField
                  label={t('bed.frameBoard')}
                  value={frameBoardOf(bed.frame, unit)?.name ?? 'own'}
                  choices={[
                    { value: 'own', label: t('bed.ownSize') },
                    ...frameBoards(unit).map(({ name }) => ({ value: name, label: name })),
                  ]}
                  onCommit={(name) => {
                    const board = frameBoards(unit).find((one) => one.name === name);
                    if (!board) return;
                    const { thickness, depth } = board;
                    propose({ ...bed, frame: { ...bed.frame, thickness, depth } }, t('bed.frameBoard'));
                  }}
                />
              </div>
            ) : null}
            {section.fields.filter((f) => f.when?.(bed) ?? true).map(field)}
            {section.words === 'bed.frame' ? (
              <>
                <ChoiceField
                  label={t('bed.runsPast')}
                  value={bed.frame.runsPast}
                  choices={(['sides', 'ends'] as const).map((value) => ({
                    value,
                    label: t(`bed.past.${value}`),
                  }))}
                  onCommit={(runsPast) =>
                    propose({ ...bed, frame: { ...bed.frame, runsPast } }, t('bed.runsPast'))
                  }
                />
                <ChoiceField
                  label={t('bed.wood')}
                  value={bed.frame.material}
                  choices={woods}
                  onCommit={(material) =>
                    propose({ ...bed, frame: { ...bed.frame, material } }, t('bed.wood'))
                  }
                />
              </>
            ) : null}
            {section.words === 'bed.platform' ? (
              <ChoiceField
                label={t('bed.wood')}
                value={bed.platform.material}
                choices={woods}
                onCommit={(material) =>
                  propose({ ...bed, platform: { ...bed.platform, material } }, t('bed.wood'))
                }
              />
            ) : null}
            {section.words === 'bed.cleats' ? (
              <ChoiceField
                label={t('bed.cleatsRunPast')}
                value={bed.cleats.runsPast}
                choices={(['sides', 'ends'] as const).map((value) => ({
                  value,
                  label: t(`bed.past.${value}`),
                }))}
                onCommit={(runsPast) =>
                  propose({ ...bed, cleats: { ...bed.cleats, runsPast } }, t('bed.cleatsRunPast'))
                }
              />
            ) : null}
          </div>
        </section>
      ))}
      <section>
        <h3 className="section-title">{t('bed.skin')}</h3>
        <div className="fields">
          <div className="wide">
            <SwitchField
              label={t('bed.hasSkin')}
              hint={t('bed.skinHint')}
              value={bed.skin !== null}
              onCommit={(on) =>
                propose({ ...bed, skin: on ? { thickness: 6.35, material: 'plywood' } : null }, t('bed.skin'))
              }
            />
          </div>
          {bed.skin ? (
            <MeasureField
              label={t('bed.skinThickness')}
              min={0.5}
              value={bed.skin.thickness}
              onCommit={(thickness) =>
                propose(
                  { ...bed, skin: { thickness, material: bed.skin?.material ?? 'plywood' } },
                  t('bed.skinThickness'),
                )
              }
            />
          ) : null}
        </div>
      </section>
      <section>
        <h3 className="section-title">{t('bed.beside')}</h3>
        {(['left', 'right'] as const).map((side) => (
          <div className="fields" key={side}>
            <SwitchField
              label={t(`bed.beside.${side}`)}
              value={bed.beside[side] !== null}
              onCommit={(on) =>
                propose({ ...bed, beside: { ...bed.beside, [side]: on ? 50 : null } }, t('bed.beside'))
              }
            />
            {bed.beside[side] !== null ? (
              <MeasureField
                label={t('bed.room')}
                value={bed.beside[side] ?? 0}
                onCommit={(mm) => propose({ ...bed, beside: { ...bed.beside, [side]: mm } }, t('bed.beside'))}
              />
            ) : null}
          </div>
        ))}
      </section>
      <BoardList />
      <SwingSection />
      <p className="caution">{t('caution.bed')}</p>
    </div>
  );
}
