import { useState } from 'react';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { referenceName } from '../../edit/sentence.ts';
import { editsForShared, readRatio, SHARED_RULES, type SharedDraft } from '../../edit/sharedRule.ts';
import { useCommit, useFace, useSettled } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { SHARED_RULE_FIELDS, type SharedRuleForm } from './ruleFields.ts';

const START: SharedDraft = { kind: 'even', axis: 'x', mode: 'gaps', low: 'face', high: 'face', ratio: '' };

/** One rule for all that is selected: even, centered as a block, same size, graded. */
export function SharedRuleSection({ ids }: { ids: readonly string[] }) {
  const t = useWords();
  const { design, layout } = useSettled();
  const face = useFace();
  const commit = useCommit();
  const [draft, setDraft] = useState(START);
  const set = ({ places: _, count: __, ...fields }: Partial<SharedRuleForm>) =>
    setDraft({ ...draft, ...fields });
  const others = design.parts.filter((p) => !ids.includes(p.id)).map((p) => p.id);
  const places = ['face', ...face.levels.map((l) => `level:${l.id}`), ...others].map((value) => ({
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
      <FieldGrid of={SHARED_RULE_FIELDS} value={{ ...draft, places, count: ids.length }} onChange={set} />
      <div className="btn-row">
        <Button look="main" disabled={!ready} onClick={hold}>
          {t('rules.hold')}
        </Button>
      </div>
    </fieldset>
  );
}
