import { useState } from 'react';
import { referenceName } from '../../action/sentence.ts';
import { ChoiceField } from '../../field/ChoiceField.tsx';
import { TextField } from '../../field/TextField.tsx';
import { layoutOf } from '../../state/derive.ts';
import { useCommit, useFace, useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { editsForShared, readRatio, SHARED_RULES, type SharedDraft } from './sharedRule.ts';

const START: SharedDraft = { kind: 'even', axis: 'x', mode: 'gaps', low: 'face', high: 'face', ratio: '' };

/** One rule for all that is selected: even, centered as a block, same size, graded. */
export function SharedRuleSection({ ids }: { ids: readonly string[] }) {
  const t = useWords();
  const design = useSettledDesign();
  const face = useFace();
  const commit = useCommit();
  const [draft, setDraft] = useState(START);
  const set = (fields: Partial<SharedDraft>) => setDraft({ ...draft, ...fields });
  const others = design.parts.filter((p) => !ids.includes(p.id)).map((p) => p.id);
  const things = ['face', ...face.levels.map((l) => `level:${l.id}`), ...others].map((value) => ({
    value,
    label: referenceName(design, value),
  }));
  const ready = draft.kind !== 'graded' || readRatio(draft.ratio, ids.length) !== null;
  const hold = () => {
    const edits = editsForShared(design, layoutOf(design), ids, draft);
    if (edits.length > 0)
      commit(edits, t('did.shared', { rule: t(`shared.${draft.kind}`), count: ids.length }));
  };
  return (
    <fieldset className="sub">
      <legend>{t('shared.title')}</legend>
      <div className="fields">
        <ChoiceField
          label={t('rules.kind')}
          value={draft.kind}
          choices={SHARED_RULES.map((value) => ({ value, label: t(`shared.${value}`) }))}
          onCommit={(kind) => set({ kind })}
        />
        <ChoiceField
          label={t('rules.axis')}
          value={draft.axis}
          choices={(['x', 'y'] as const).map((value) => ({ value, label: t(`axis.${value}`) }))}
          onCommit={(axis) => set({ axis })}
        />
        {draft.kind === 'same' ? null : (
          <>
            <ChoiceField
              label={t('rules.low')}
              value={draft.low}
              choices={things}
              onCommit={(low) => set({ low })}
            />
            <ChoiceField
              label={t('rules.high')}
              value={draft.high}
              choices={things}
              onCommit={(high) => set({ high })}
            />
          </>
        )}
        {draft.kind === 'even' ? (
          <div className="wide">
            <ChoiceField
              label={t('array.spacing')}
              value={draft.mode}
              choices={(['gaps', 'flush', 'half', 'centers', 'most'] as const).map((value) => ({
                value,
                label: t(`even.${value}`),
              }))}
              onCommit={(mode) => set({ mode })}
            />
          </div>
        ) : null}
        {draft.kind === 'graded' ? (
          <div className="wide">
            <TextField
              label={t('shared.ratio')}
              hint={t('shared.ratioHint', { count: ids.length })}
              value={draft.ratio}
              onCommit={(ratio) => set({ ratio })}
            />
          </div>
        ) : null}
      </div>
      <div className="btn-row">
        <button type="button" className="btn main" disabled={!ready} onClick={hold}>
          {t('rules.hold')}
        </button>
      </div>
    </fieldset>
  );
}
