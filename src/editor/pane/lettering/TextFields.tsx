import { Plus } from 'lucide-react';
import { FARTHEST, type Lettering } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { NumberField } from '../../control/NumberField.tsx';
import { SwitchField } from '../../control/SwitchField.tsx';
import { useWords } from '../../words/t.ts';
import { LineFields } from './LineFields.tsx';

export interface LetteringFieldsProps {
  readonly lettering: Lettering;
  readonly onChange: (fields: Partial<Lettering>) => void;
}

interface TextFieldsProps extends LetteringFieldsProps {
  /** Characters that the font does not have. */
  readonly missing: readonly string[];
}

const ALIGNS = ['left', 'center', 'right'] as const;
const FITS = ['none', 'width', 'height', 'both'] as const;
const percent = (share: number): number => Math.round(share * 1000) / 10;

/** What is written, how high, and how it is set. */
export function TextFields({ lettering, missing, onChange }: TextFieldsProps) {
  const t = useWords();
  const { lines } = lettering;
  const share = (key: 'tracking' | 'wordSpace' | 'lineSpace', least: number, most: number) => (
    <NumberField
      label={t(`letters.${key}`)}
      hint={t('letters.ofCap')}
      unit="%"
      min={least}
      max={most}
      value={percent(lettering[key])}
      onCommit={(value) => onChange({ [key]: value / 100 })}
    />
  );
  return (
    <>
      <div className="lines">
        {lines.map((line, i) => (
          <LineFields
            // biome-ignore lint/suspicious/noArrayIndexKey: lines have no ids; they are told apart by their place
            key={i}
            lettering={lettering}
            line={line}
            missing={missing}
            number={i + 1}
            onChange={(next) => onChange({ lines: lines.map((l, k) => (k === i ? next : l)) })}
            onRemove={() => onChange({ lines: lines.filter((_, k) => k !== i) })}
          />
        ))}
        <button
          type="button"
          className="btn small"
          disabled={lines.length >= 40}
          onClick={() => onChange({ lines: [...lines, { text: '' }] })}
        >
          <Plus aria-hidden="true" />
          {t('letters.addLine')}
        </button>
        <p className="note">{t('letters.ownSizeHint')}</p>
      </div>
      <div className="fields three">
        <ChoiceField
          label={t('lettering.fit')}
          value={lettering.fit}
          choices={FITS.map((value) => ({ value, label: t(`fit.${value}`) }))}
          onCommit={(fit) => onChange({ fit })}
        />
        <MeasureField
          label={t('lettering.capHeight')}
          min={1}
          disabled={lettering.fit !== 'none'}
          value={lettering.capHeight}
          onCommit={(capHeight) => onChange({ capHeight })}
        />
        <MeasureField
          label={t('letters.margin')}
          value={lettering.margin}
          onCommit={(margin) => onChange({ margin })}
        />
        <ChoiceField
          label={t('letters.align')}
          value={lettering.align}
          choices={ALIGNS.map((value) => ({ value, label: t(`letters.align.${value}`) }))}
          onCommit={(align) => onChange({ align })}
        />
        {share('tracking', -50, 300)}
        {share('wordSpace', -50, 500)}
        {share('lineSpace', 50, 600)}
        <MeasureField
          label={t('letters.arc')}
          hint={t('letters.arcHint')}
          min={-5000}
          max={5000}
          value={lettering.arcRise}
          onCommit={(arcRise) => onChange({ arcRise })}
        />
        <MeasureField
          label={t('letters.shiftX')}
          min={-FARTHEST}
          value={lettering.shift.x}
          onCommit={(x) => onChange({ shift: { ...lettering.shift, x } })}
        />
        <MeasureField
          label={t('letters.shiftY')}
          min={-FARTHEST}
          value={lettering.shift.y}
          onCommit={(y) => onChange({ shift: { ...lettering.shift, y } })}
        />
        <div className="wide">
          <SwitchField
            label={t('letters.kerning')}
            value={lettering.kerning}
            onCommit={(kerning) => onChange({ kerning })}
          />
        </div>
      </div>
    </>
  );
}
