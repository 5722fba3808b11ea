import { inSlot, measuresOf, slotsOf, withFields } from '../../../design/rule/table.ts';
import type { Rule } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { ruleWord } from '../../edit/ruleWords.ts';
import { ruleSentence } from '../../edit/sentence.ts';
import { useCommit, useDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { EvenCount } from './EvenCount.tsx';

/** The measures and choices that a rule holds. */
export function RuleFields({ rule }: { rule: Rule }) {
  const t = useWords();
  const design = useDesign();
  const commit = useCommit();
  const change = (fields: Readonly<Record<string, unknown>>) => {
    const item = withFields(rule, fields);
    commit([{ kind: 'replace', list: 'rules', id: rule.id, item }], t('did.rule'), {
      say: t('did.addRule', { rule: ruleSentence(design, item, undefined) }),
    });
  };
  const slots = slotsOf(rule);
  const counting: readonly unknown[] = measuresOf(rule);
  const fields = slots.map((slot) => {
    const { field } = slot;
    if (slot.is === 'choice') {
      const choose = (value: string) => {
        const begins = slots.flatMap((other): [string, unknown][] =>
          other.is === 'measure' && other.where?.field === field && other.where.is === value
            ? [[other.field, inSlot(rule, other) ?? other.where.start]]
            : [],
        );
        change({ [field]: value, ...Object.fromEntries(begins) });
      };
      const choices = slot.of.map((value) => ({ value, label: t(`${rule.kind}.${value}` as WordKey) }));
      const value = String(rule[field as keyof Rule]);
      return (
        <ChoiceField
          key={field}
          label={t(ruleWord(field))}
          value={value}
          choices={choices}
          onCommit={choose}
        />
      );
    }
    if (slot.is !== 'measure' || !counting.includes(slot)) return null;
    return (
      <MeasureField
        key={field}
        label={t(ruleWord(field))}
        quiet={slot.quiet ?? false}
        min={slot.least}
        value={inSlot(rule, slot) ?? 0}
        onCommit={(mm) => change({ [field]: mm })}
      />
    );
  });
  const several = slots.filter(({ is }) => is === 'measure' || is === 'choice').length > 1;
  if (!several) return fields;
  return (
    <div className="fields">
      {fields}
      {rule.kind === 'even' && rule.mode === 'most' && rule.most !== undefined ? (
        <EvenCount rule={rule} most={rule.most} />
      ) : null}
    </div>
  );
}
