import { useState } from 'react';
import { EVEN_MODES } from '../../../design/rule/even.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { TextField } from '../../control/TextField.tsx';
import { referenceName } from '../../edit/sentence.ts';
import {
  editsForShared,
  readRatio,
  SHARED_RULES,
  type SharedDraft,
  type SharedRuleKind,
} from '../../edit/sharedRule.ts';
import { useCommit, useFace, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

const KINDS = Object.keys(SHARED_RULES) as SharedRuleKind[];

const START: SharedDraft = { kind: 'even', axis: 'x', mode: 'gaps', low: 'face', high: 'face', ratio: '' };

/** One rule for all that is selected: even, centered as a block, same size, graded. */
export function SharedRuleSection({ ids }: { ids: readonly string[] }) {
  const t = useWords();
  const { design, layout } = useSettled();
  const face = useFace();
  const commit = useCommit();
  const [draft, setDraft] = useState(START);
  const set = (fields: Partial<SharedDraft>) => setDraft({ ...draft, ...fields });
  const others = design.parts.filter((p) => !ids.includes(p.id)).map((p) => p.id);
  const things = ['face', ...face.levels.map((l) => `level:${l.id}`), ...others].map((value) => ({
    value,
    label: referenceName(design, value),
  }));
  const { asks } = SHARED_RULES[draft.kind];
  const ready = !asks.includes('ratio') || readRatio(draft.ratio, ids.length) !== null;
  const hold = () => {
    const edits = editsForShared(design, layout, ids, draft);
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
          choices={KINDS.map((value) => ({ value, label: t(`shared.${value}`) }))}
          onCommit={(kind) => set({ kind })}
        />
        <ChoiceField
          label={t('rules.axis')}
          value={draft.axis}
          choices={(['x', 'y'] as const).map((value) => ({ value, label: t(`axis.${value}`) }))}
          onCommit={(axis) => set({ axis })}
        />
        {asks.includes('ends') ? (
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
        ) : null}
        {asks.includes('mode') ? (
          <div className="wide">
            <ChoiceField
              label={t('array.spacing')}
              value={draft.mode}
              choices={EVEN_MODES.map((value) => ({
                value,
                label: t(`even.${value}`),
              }))}
              onCommit={(mode) => set({ mode })}
            />
          </div>
        ) : null}
        {asks.includes('ratio') ? (
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
