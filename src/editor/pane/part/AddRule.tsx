import { useState } from 'react';
import { inserting } from '../../../design/edit/make.ts';
import type { Part } from '../../../design/schema.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { NEW_RULES, newRule, proposed, type RuleDraft } from '../../edit/newRule.ts';
import { referenceName, ruleSentence } from '../../edit/sentence.ts';
import { useCommit, useShown } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { NEW_RULE_FIELDS, type NewRuleForm } from './ruleFields.ts';

const START: RuleDraft = {
  kind: 'set',
  axis: 'x',
  side: 'low',
  to: 'face',
  and: 'face',
  toSide: 'low',
  inner: false,
};

/** Gives a part another rule, told as a sentence before it is added. */
export function AddRule({ part }: { part: Part }) {
  const t = useWords();
  const shown = useShown();
  const { design, face } = shown;
  const commit = useCommit();
  const [draft, setDraft] = useState<RuleDraft | null>(null);
  if (!draft) {
    return <Button onClick={() => setDraft(START)}>{t('rules.add')}</Button>;
  }
  const set = ({ places: _, ...fields }: Partial<NewRuleForm>) =>
    setDraft({ ...draft, ...fields, ...(fields.kind ? proposed(shown, part, fields.kind) : {}) });
  const others = design.parts.filter((p) => p.id !== part.id).map((p) => p.id);
  const { about } = NEW_RULES[draft.kind];
  const things = about === 'other' ? others : ['face', ...face.levels.map((l) => `level:${l.id}`), ...others];
  const places = things.map((of) => ({ value: of, label: referenceName(design, of) }));
  const rule = newRule(shown, part, draft);
  return (
    <fieldset className="sub">
      <legend>{t('rules.add')}</legend>
      <FieldGrid of={NEW_RULE_FIELDS} value={{ ...draft, places }} onChange={set} />
      <p className="note">{rule ? ruleSentence(design, rule) : t('rules.incomplete')}</p>
      <div className="btn-row">
        <Button
          look="main"
          disabled={!rule}
          onClick={() => {
            if (!rule) return;
            commit([inserting('rules', rule)], t('did.addRule', { rule: ruleSentence(design, rule) }));
            setDraft(null);
          }}
        >
          {t('rules.hold')}
        </Button>
        <Button onClick={() => setDraft(null)}>{t('act.cancel')}</Button>
      </div>
    </fieldset>
  );
}
