import type { Rule } from '../../../design/schema.ts';
import { inches } from '../../../measure/units.ts';
import { ruleSentence } from '../../action/sentence.ts';
import { ChoiceField } from '../../field/ChoiceField.tsx';
import { MeasureField } from '../../field/MeasureField.tsx';
import { useCommit, useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { EvenCount } from './EvenCount.tsx';

/** The measures and choices that a rule holds. */
export function RuleFields({ rule }: { rule: Rule }) {
  const t = useWords();
  const design = useDesign();
  const commit = useCommit();
  const change = (item: Rule) =>
    commit([{ kind: 'replace', list: 'rules', id: rule.id, item }], t('did.rule'), {
      say: t('did.addRule', { rule: ruleSentence(design, item, undefined) }),
    });
  switch (rule.kind) {
    case 'set':
      return (
        <MeasureField
          label={t('rule.distance')}
          quiet
          min={-20_000}
          value={rule.distance}
          onCommit={(distance) => change({ ...rule, distance })}
        />
      );
    case 'between':
      return (
        <div className="fields">
          <MeasureField
            label={t('rule.insetLow')}
            min={-20_000}
            value={rule.insetLow}
            onCommit={(insetLow) => change({ ...rule, insetLow })}
          />
          <MeasureField
            label={t('rule.insetHigh')}
            min={-20_000}
            value={rule.insetHigh}
            onCommit={(insetHigh) => change({ ...rule, insetHigh })}
          />
        </div>
      );
    case 'even':
      return (
        <div className="fields">
          <ChoiceField
            label={t('array.spacing')}
            value={rule.mode}
            choices={(['gaps', 'flush', 'half', 'centers', 'most'] as const).map((value) => ({
              value,
              label: t(`even.${value}`),
            }))}
            onCommit={(mode) =>
              change({
                ...rule,
                mode,
                ...(mode === 'centers' ? { pitch: rule.pitch ?? inches(3) } : {}),
                ...(mode === 'most' ? { most: rule.most ?? inches(3) } : {}),
              })
            }
          />
          {rule.mode === 'centers' ? (
            <MeasureField
              label={t('array.pitch')}
              min={1}
              value={rule.pitch ?? 0}
              onCommit={(pitch) => change({ ...rule, pitch })}
            />
          ) : null}
          {rule.mode === 'most' ? (
            <MeasureField
              label={t('array.most')}
              min={1}
              value={rule.most ?? 0}
              onCommit={(most) => change({ ...rule, most })}
            />
          ) : null}
          {rule.mode === 'most' && rule.most !== undefined ? (
            <EvenCount rule={rule} most={rule.most} />
          ) : null}
        </div>
      );
    case 'reveal':
      return (
        <MeasureField
          label={t('rule.margin')}
          quiet
          min={-20_000}
          value={rule.margin}
          onCommit={(margin) => change({ ...rule, margin })}
        />
      );
    case 'graded':
      return (
        <MeasureField label={t('rule.gap')} value={rule.gap} onCommit={(gap) => change({ ...rule, gap })} />
      );
    case 'gap':
    case 'center':
    case 'mirror':
    case 'same':
      return null;
  }
}
