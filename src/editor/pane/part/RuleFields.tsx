import { replacing } from '../../../design/edit/make.ts';
import {
  inSlot,
  type MeasureSlot,
  measuresOf,
  type NamedSlot,
  slotsOf,
  withFields,
} from '../../../design/rule/table.ts';
import type { Rule, RuleKind } from '../../../design/schema.ts';
import { Fields } from '../../control/form/Fields.tsx';
import type { FormField } from '../../control/form/formField.ts';
import { ruleWord } from '../../edit/ruleWords.ts';
import { ruleSentence } from '../../edit/sentence.ts';
import { useCommit, useDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { EvenCount } from './EvenCount.tsx';

type RuleChange = Readonly<Record<string, unknown>>;

type RuleField = FormField<Rule, RuleChange>;

/** A choice begins the measures that count by it. */
function choiceField(kind: RuleKind, { field, of }: NamedSlot & { readonly is: 'choice' }): RuleField {
  return {
    is: 'choice',
    label: ruleWord(field),
    of: of.map((value) => ({ value, words: `${kind}.${value}` as WordKey })),
    get: (rule) => String(rule[field as keyof Rule]),
    put: (value, rule) => {
      const begins = slotsOf(rule).flatMap((other): [string, unknown][] =>
        other.is === 'measure' && other.where?.field === field && other.where.is === value
          ? [[other.field, inSlot(rule, other) ?? other.where.start]]
          : [],
      );
      return { [field]: value, ...Object.fromEntries(begins) };
    },
  };
}

const measureField = (slot: MeasureSlot): RuleField => ({
  is: 'length',
  label: ruleWord(slot.field),
  quiet: slot.quiet ?? false,
  min: slot.least,
  when: (rule) => measuresOf(rule).includes(slot),
  get: (rule) => inSlot(rule, slot) ?? 0,
  put: (mm) => ({ [slot.field]: mm }),
});

/** The measures and choices of a kind of rule, by its slots. */
export const ruleFields = (rule: Rule): readonly RuleField[] =>
  slotsOf(rule).flatMap((slot) => {
    if (slot.is === 'choice') return [choiceField(rule.kind, slot)];
    return slot.is === 'measure' ? [measureField(slot)] : [];
  });

/** What a rule holds, to be given otherwise. */
export function RuleFields({ rule }: { rule: Rule }) {
  const t = useWords();
  const design = useDesign();
  const commit = useCommit();
  const change = (fields: RuleChange) => {
    const item = withFields(rule, fields);
    commit([replacing('rules', item)], t('did.rule'), {
      say: t('did.addRule', { rule: ruleSentence(design, item) }),
    });
  };
  const of = ruleFields(rule);
  const fields = <Fields of={of} value={rule} onChange={change} />;
  if (of.length < 2) return fields;
  return (
    <div className="fields">
      {fields}
      {rule.kind === 'even' && rule.mode === 'most' && rule.most !== undefined ? (
        <EvenCount rule={rule} most={rule.most} />
      ) : null}
    </div>
  );
}
