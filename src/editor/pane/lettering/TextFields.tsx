import { Plus } from 'lucide-react';
import { FARTHEST, type Lettering } from '../../../design/schema.ts';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named, within } from '../../control/form/formField.ts';
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

const ofCap = { is: 'share', hint: 'letters.ofCap' } as const;

const FIELDS: readonly FormField<Lettering>[] = [
  {
    is: 'choice',
    label: 'lettering.fit',
    field: 'fit',
    of: named('fit', ['none', 'width', 'height', 'both']),
  },
  {
    is: 'length',
    label: 'lettering.capHeight',
    field: 'capHeight',
    min: 1,
    off: ({ fit }) => fit !== 'none',
  },
  { is: 'length', label: 'letters.margin', field: 'margin' },
  {
    is: 'choice',
    label: 'letters.align',
    field: 'align',
    of: named('letters.align', ['left', 'center', 'right']),
  },
  { ...ofCap, label: 'letters.tracking', field: 'tracking', min: -50, max: 300 },
  { ...ofCap, label: 'letters.wordSpace', field: 'wordSpace', min: -50, max: 500 },
  { ...ofCap, label: 'letters.lineSpace', field: 'lineSpace', min: 50, max: 600 },
  { is: 'length', label: 'letters.arc', hint: 'letters.arcHint', field: 'arcRise', min: -5000, max: 5000 },
  ...within<Lettering, 'shift'>('shift', [
    { is: 'length', label: 'letters.shiftX', field: 'x', min: -FARTHEST },
    { is: 'length', label: 'letters.shiftY', field: 'y', min: -FARTHEST },
  ]),
  { is: 'switch', label: 'letters.kerning', field: 'kerning', place: 'wide' },
];

/** What is written, how high, and how it is set. */
export function TextFields({ lettering, missing, onChange }: TextFieldsProps) {
  const t = useWords();
  const { lines } = lettering;
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
      <FieldGrid three of={FIELDS} value={lettering} onChange={onChange} />
    </>
  );
}
