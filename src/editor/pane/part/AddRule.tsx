import { Fragment, type ReactNode, useState } from 'react';
import type { Part } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import {
  type Asked,
  NEW_RULES,
  type NewRuleKind,
  newRule,
  proposed,
  type RuleDraft,
} from '../../edit/newRule.ts';
import { referenceName, ruleSentence } from '../../edit/sentence.ts';
import { useCommit, useShown } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';

const KINDS = Object.keys(NEW_RULES) as NewRuleKind[];

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
    return (
      <button type="button" className="btn" onClick={() => setDraft(START)}>
        {t('rules.add')}
      </button>
    );
  }
  const set = (fields: Partial<RuleDraft>) => setDraft({ ...draft, ...fields });
  const others = design.parts.filter((p) => p.id !== part.id).map((p) => p.id);
  const { asks, about } = NEW_RULES[draft.kind];
  const things = about === 'other' ? others : ['face', ...face.levels.map((l) => `level:${l.id}`), ...others];
  const things2 = things.map((of) => ({ value: of, label: referenceName(design, of) }));
  const rule = newRule(shown, part, draft);
  const sides = (['low', 'mid', 'high'] as const).map((value) => ({
    value,
    label: t(`edge.${draft.axis}.${value}`),
  }));
  const edgeField = (asked: 'side' | 'toSide', label: string) => (
    <ChoiceField
      label={label}
      value={draft[asked]}
      choices={sides}
      onCommit={(side) => set({ [asked]: side })}
    />
  );
  const fields: Readonly<Record<Asked, ReactNode>> = {
    axis: (
      <ChoiceField
        label={t('rules.axis')}
        value={draft.axis}
        choices={(['x', 'y'] as const).map((value) => ({ value, label: t(`axis.${value}`) }))}
        onCommit={(axis) => set({ axis })}
      />
    ),
    side: edgeField('side', t('rules.edge')),
    to: (
      <ChoiceField
        label={t(asks.includes('and') ? 'rules.low' : 'rules.to')}
        value={draft.to}
        choices={things2}
        onCommit={(to) => set({ to, ...(draft.and === draft.to ? { and: to } : {}) })}
      />
    ),
    and: (
      <ChoiceField
        label={t('rules.high')}
        value={draft.and}
        choices={things2}
        onCommit={(and) => set({ and })}
      />
    ),
    toSide: edgeField('toSide', t('rules.toEdge')),
    inner: <SwitchField label={t('rules.inner')} value={draft.inner} onCommit={(inner) => set({ inner })} />,
  };
  return (
    <fieldset className="sub">
      <legend>{t('rules.add')}</legend>
      <div className="fields">
        <ChoiceField
          label={t('rules.kind')}
          value={draft.kind}
          choices={KINDS.map((value) => ({ value, label: t(`rules.kind.${value}`) }))}
          onCommit={(kind) => set({ kind, ...proposed(shown, part, kind) })}
        />
        {asks.map((asked) => (
          <Fragment key={asked}>{fields[asked]}</Fragment>
        ))}
      </div>
      <p className="note">{rule ? ruleSentence(design, rule, undefined) : t('rules.incomplete')}</p>
      <div className="btn-row">
        <button
          type="button"
          className="btn main"
          disabled={!rule}
          onClick={() => {
            if (!rule) return;
            commit(
              [{ kind: 'insert', list: 'rules', item: rule }],
              t('did.addRule', { rule: ruleSentence(design, rule, undefined) }),
            );
            setDraft(null);
          }}
        >
          {t('rules.hold')}
        </button>
        <button type="button" className="btn" onClick={() => setDraft(null)}>
          {t('act.cancel')}
        </button>
      </div>
    </fieldset>
  );
}
