import { ALargeSmall, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { picturesIn } from '../../../design/picture.ts';
import type { Lettering, LetterLine } from '../../../design/schema.ts';
import { ORNAMENTS } from '../../../lettering/picture/ornaments.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { TextField } from '../../control/TextField.tsx';
import {
  aspectOf,
  type LetterSize,
  type Line,
  lettersMeant,
  lettersOf,
  lineAfterTyping,
  type PictureSides,
  sidesOf,
  sizeBySide,
  withOwnSize,
  withoutSize,
  withSizeChanged,
} from '../../edit/letterSizes.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { t, useWords } from '../../words/t.ts';
import { FormButton, LetterForms } from './LetterForms.tsx';

interface LineFieldsProps {
  readonly lettering: Lettering;
  readonly line: Line;
  /** Characters that the font does not have. */
  readonly missing: readonly string[];
  /** Counted from 1. */
  readonly number: number;
  readonly onChange: (line: Line) => void;
  /** Where the caret went, in the line's text. */
  readonly onCaret: (at: number) => void;
  readonly onRemove: () => void;
}

/** As many as the design's form takes. */
const MOST_SIZES = 100;

/** Of the line's cap height, as the design's form takes it. */
const [LEAST_SIZE, MOST_SIZE] = [0.2, 3];

const SIZE_FIELDS: readonly FormField<LetterSize>[] = [
  { is: 'share', label: 'size.size', field: 'size', min: 100 * LEAST_SIZE, max: 100 * MOST_SIZE, step: 5 },
  {
    is: 'choice',
    label: 'letters.stand',
    field: 'stand',
    of: named('letters.stand', ['baseline', 'middle', 'top']),
  },
];

/** A picture of a size of its own. */
interface SizedPicture {
  readonly size: LetterSize;
  readonly sides: PictureSides;
  readonly fitted: boolean;
}

/** A picture is scaled by the side that was measured. */
const sideField = (side: 'height' | 'width'): FormField<SizedPicture, Partial<LetterSize>> => ({
  is: 'length',
  label: `pictures.${side}`,
  min: ({ sides }) => sidesOf({ size: LEAST_SIZE }, sides)[side],
  max: ({ sides }) => sidesOf({ size: MOST_SIZE }, sides)[side],
  off: ({ fitted }) => fitted,
  get: ({ size, sides }) => sidesOf(size, sides)[side],
  put: (mm, { sides }) => ({ size: sizeBySide(side, mm, sides) }),
});
const SIDE_FIELDS = [sideField('height'), sideField('width')];

interface Lined {
  readonly line: Line;
  readonly lettering: Lettering;
}

/** The height of a line's capitals; one as high as the others has none of its own. */
const capField = (number: number): FormField<Lined, Line> => ({
  is: 'length',
  label: { name: t('letters.lineCap', { number }) },
  min: 1,
  off: ({ lettering }) => lettering.fit !== 'none',
  get: ({ line, lettering }) => line.capHeight ?? lettering.capHeight,
  put: (mm, { line, lettering }) => {
    const { capHeight: _own, ...asOthers } = line;
    return Math.abs(mm - lettering.capHeight) < 0.01 ? asOthers : { ...line, capHeight: mm };
  },
});

/** Asked for where lines have marks, or run along an outline. */
const LINE_FIELDS: readonly FormField<Lined, LetterLine>[] = [
  {
    is: 'choice',
    label: 'letters.markOfLine',
    when: ({ lettering }) => lettering.lines.some(({ mark }) => mark),
    of: named('letters.mark', ['none', 'bullet', 'number']),
    get: ({ line }) => line.mark ?? 'none',
    put: (mark: 'none' | 'bullet' | 'number', { line }) => ({
      ...line,
      mark: mark === 'none' ? undefined : mark,
    }),
  },
  {
    is: 'switch',
    label: 'letters.foot',
    when: ({ lettering }) => hasFoot(lettering),
    get: ({ line }) => line.foot ?? false,
    put: (foot, { line }) => ({ ...line, foot: foot || undefined }),
  },
];

/** Whether lines run along an outline, which has a foot. */
function hasFoot({ along }: Lettering): boolean {
  return along === 'inside' || along === 'outside';
}

/** One line of a sign: its words, its height, and its letters that are larger or smaller. */
export function LineFields({
  lettering,
  line,
  missing,
  number,
  onChange,
  onCaret,
  onRemove,
}: LineFieldsProps) {
  useWords();
  const [selection, select] = useState<{ from: number; to: number } | null>(null);
  const meant = lettersMeant(line.text, selection);
  const letters = meant ? lettersOf(line, meant) : '';
  const sizes = line.sizes ?? [];
  // Not every device has signs for them.
  const { pictures } = useSettledDesign();
  const names = [
    ...ORNAMENTS.filter(({ character }) => line.text.includes(character)).map(({ id }) =>
      t(`ornament.${id}`),
    ),
    ...picturesIn({ lines: [line] }, pictures).map(({ name }) => name),
  ];
  const picturedBy = (size: LetterSize): SizedPicture | null => {
    const aspect = aspectOf(lettersOf(line, size), pictures);
    const capHeight = line.capHeight ?? lettering.capHeight;
    return aspect === null ? null : { size, sides: { capHeight, aspect }, fitted: lettering.fit !== 'none' };
  };
  const lost = missing.filter((character) => line.text.includes(character));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid
    <div className="line" role="group" aria-label={t('letters.line', { number })}>
      <div className="row-fields line-fields">
        <TextField
          label={t('letters.line', { number })}
          most={500}
          value={line.text}
          hint={names.length > 0 ? t('pictures.inLine', { names: names.join(', ') }) : undefined}
          error={lost.length > 0 ? t('letters.missing', { characters: lost.join(' ') }) : undefined}
          onCommit={(text) => onChange(lineAfterTyping(line, text))}
          onSelect={(from, to) => {
            select({ from, to });
            onCaret(to);
          }}
        />
        <Fields of={[capField(number)]} value={{ line, lettering }} onChange={onChange} />
        <Button
          icon={ALargeSmall}
          look="bare icon"
          tip={t('letters.ownSize', { letters })}
          disabled={meant === null || sizes.length >= MOST_SIZES}
          onClick={() => meant && onChange(withOwnSize(line, meant.from, meant.count))}
        />
        <FormButton lettering={lettering} line={line} selection={selection} onChange={onChange} />
        <Button
          icon={Trash2}
          look="bare icon"
          label={t('letters.removeLine', { number })}
          disabled={lettering.lines.length === 1}
          onClick={onRemove}
        />
      </div>
      {hasFoot(lettering) || lettering.lines.some(({ mark }) => mark) ? (
        <FieldGrid of={LINE_FIELDS} value={{ line, lettering }} onChange={onChange} />
      ) : null}
      {sizes.map((size, i) => (
        <SizeFields
          key={`${size.from}:${size.count}`}
          size={size}
          letters={lettersOf(line, size)}
          pictured={picturedBy(size)}
          onChange={(fields) => onChange(withSizeChanged(line, i, fields))}
          onRemove={() => onChange(withoutSize(line, i))}
        />
      ))}
      <LetterForms lettering={lettering} line={line} onChange={onChange} />
    </div>
  );
}

interface SizeFieldsProps {
  readonly size: LetterSize;
  /** Where the letters are one picture. */
  readonly pictured: SizedPicture | null;
  readonly letters: string;
  readonly onChange: (fields: Partial<LetterSize>) => void;
  readonly onRemove: () => void;
}

function SizeFields({ size, letters, pictured, onChange, onRemove }: SizeFieldsProps) {
  const t = useWords();
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid
    <div className="row-fields letter-size" role="group" aria-label={t('letters.sized', { letters })}>
      <span className="sized" aria-hidden="true">
        {letters}
      </span>
      <Fields of={SIZE_FIELDS} value={size} onChange={onChange} />
      {pictured ? <Fields of={SIDE_FIELDS} value={pictured} onChange={onChange} /> : null}
      <Button
        icon={Trash2}
        look="bare icon"
        label={t('letters.removeSize', { letters })}
        onClick={onRemove}
      />
    </div>
  );
}
