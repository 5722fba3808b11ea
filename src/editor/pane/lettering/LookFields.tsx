import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import type { LetteringFieldsProps } from './TextFields.tsx';

interface LookFieldsProps extends LetteringFieldsProps {
  /** Finish of the sign's board. */
  readonly board: string | null;
}

/** Colors of the letters, and what is painted around, in and under them. */
export function LookFields({ lettering, board, onChange }: LookFieldsProps) {
  const t = useWords();
  const { finishes } = useSettledDesign();
  const colors = finishes.map((f) => ({ value: f.id, label: f.name }));
  const { outline, inline, shade, capHeight } = lettering;
  // What is put on first has a size that shows at any cap height, in another color than the letters and, where
  // there is one, than the board, on which it would not be seen.
  const others = finishes.filter((f) => f.id !== lettering.finish);
  const other = (others.find((f) => f.id !== board) ?? others[0])?.id ?? lettering.finish;
  const thin = Math.max(1, Math.round(capHeight / 25));
  return (
    <>
      <div className="fields three">
        <ChoiceField
          label={t('letters.fill')}
          value={lettering.finish}
          choices={colors}
          onCommit={(finish) => onChange({ finish })}
        />
      </div>
      <fieldset className="look">
        <SwitchField
          label={t('letters.outline')}
          value={outline !== null}
          onCommit={(on) => onChange({ outline: on ? { width: thin, finish: other } : null })}
        />
        {outline ? (
          <div className="fields three">
            <MeasureField
              label={t('letters.outlineWidth')}
              min={0.1}
              value={outline.width}
              onCommit={(width) => onChange({ outline: { ...outline, width } })}
            />
            <ChoiceField
              label={t('letters.outlineIn')}
              value={outline.finish}
              choices={colors}
              onCommit={(finish) => onChange({ outline: { ...outline, finish } })}
            />
          </div>
        ) : null}
      </fieldset>
      <fieldset className="look">
        <SwitchField
          label={t('letters.inline')}
          value={inline !== null}
          onCommit={(on) => onChange({ inline: on ? { inset: thin, width: thin, finish: other } : null })}
        />
        {inline ? (
          <div className="fields three">
            <MeasureField
              label={t('letters.inset')}
              min={0.1}
              value={inline.inset}
              onCommit={(inset) => onChange({ inline: { ...inline, inset } })}
            />
            <MeasureField
              label={t('letters.inlineWidth')}
              min={0.1}
              value={inline.width}
              onCommit={(width) => onChange({ inline: { ...inline, width } })}
            />
            <ChoiceField
              label={t('letters.inlineIn')}
              value={inline.finish}
              choices={colors}
              onCommit={(finish) => onChange({ inline: { ...inline, finish } })}
            />
          </div>
        ) : null}
      </fieldset>
      <fieldset className="look">
        <SwitchField
          label={t('letters.shade')}
          value={shade !== null}
          onCommit={(on) =>
            onChange({ shade: on ? { kind: 'drop', angle: -45, distance: thin * 2, finish: other } : null })
          }
        />
        {shade ? (
          <div className="fields three">
            <ChoiceField
              label={t('letters.shadeKind')}
              value={shade.kind}
              choices={(['drop', 'block'] as const).map((value) => ({
                value,
                label: t(`letters.shade.${value}`),
              }))}
              onCommit={(kind) => onChange({ shade: { ...shade, kind } })}
            />
            <NumberField
              label={t('letters.shadeAngle')}
              hint={t('letters.shadeAngleHint')}
              unit="°"
              min={-180}
              max={180}
              value={shade.angle}
              onCommit={(angle) => onChange({ shade: { ...shade, angle } })}
            />
            <MeasureField
              label={t('letters.shadeDistance')}
              min={0.1}
              value={shade.distance}
              onCommit={(distance) => onChange({ shade: { ...shade, distance } })}
            />
            <ChoiceField
              label={t('letters.shadeIn')}
              value={shade.finish}
              choices={colors}
              onCommit={(finish) => onChange({ shade: { ...shade, finish } })}
            />
          </div>
        ) : null}
      </fieldset>
    </>
  );
}
