import { useState } from 'react';
import type { Edit } from '../../../design/edit/edit.ts';
import type { FeatureTag } from '../../../design/features.ts';
import { featuresOfLine, fontOfLine, type Look, looksOfLines } from '../../../design/look.ts';
import { textTold } from '../../../design/picture.ts';
import type { LetteredPart, Lettering, LetterLine } from '../../../design/schema.ts';
import { pick } from '../../../list/at.ts';
import { Button } from '../../control/Button.tsx';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { FontChooser } from './FontChooser.tsx';
import { FontFeatures } from './FontFeatures.tsx';
import { FILL_FIELDS, LAYER_FIELDS, type Looked, layerFields } from './layerFields.ts';
import type { Kept } from './useBridges.ts';

/** None are chosen: as a design has it that never asked. */
const given = (features: readonly FeatureTag[]) => (features.length > 0 ? [...features] : undefined);

/** No line has this number. */
const ALL = '0';

interface LookStepProps {
  readonly part: LetteredPart;
  readonly onChange: (fields: Partial<Lettering>, kept?: Kept, more?: readonly Edit[]) => void;
}

/** Letter style and colors, of all lines that have none of their own, or of one line. */
export function LookStep({ part, onChange }: LookStepProps) {
  const t = useWords();
  const { pictures } = useSettledDesign();
  const [chosen, choose] = useState(ALL);
  const { lettering } = part;
  const { lines } = lettering;
  const index = Number(chosen) - 1;
  const line = lines[index];
  const putLine = (own: LetterLine, kept?: Kept, more?: readonly Edit[]) =>
    onChange({ lines: lines.map((l, i) => (i === index ? own : l)) }, kept, more);
  const choices = [
    { value: ALL, label: t('letters.allLines') },
    ...lines.map(({ text }, i) => ({
      value: `${i + 1}`,
      label: `${t('letters.line', { number: i + 1 })}: ${textTold(text, pictures)}`,
    })),
  ];
  const picker =
    lines.length > 1 ? (
      <ChoiceField
        label={t('letters.lookOf')}
        value={line ? chosen : ALL}
        choices={choices}
        onCommit={choose}
      />
    ) : null;
  if (!line) {
    return (
      <>
        {picker}
        <FontChooser
          lines={lines}
          font={lettering.font}
          onChoose={(font, kept, more) => onChange({ font }, kept, more)}
        />
        <FontFeatures
          font={lettering.font}
          chosen={lettering.features ?? []}
          onChange={(features) => onChange({ features: given(features) })}
        />
        <LookFields look={lettering} board={part.finish} onChange={onChange} />
      </>
    );
  }
  const { look } = pick(looksOfLines(lettering, lettering), index);
  const { finish, outline, inline, shade, ribbon } = look;
  const { font: _font, look: _look, features: _features, ...asOthers } = line;
  return (
    <>
      {picker}
      {line.font !== undefined || line.look || line.features ? (
        <div className="btn-row spaced">
          <Button onClick={() => putLine(asOthers)}>{t('letters.asOthers')}</Button>
        </div>
      ) : null}
      <FontChooser
        lines={[line]}
        font={fontOfLine(lettering, line)}
        onChoose={(font, kept, more) => putLine({ ...line, font }, kept, more)}
      />
      <FontFeatures
        font={fontOfLine(lettering, line)}
        chosen={featuresOfLine(lettering, line)}
        onChange={(features) => putLine({ ...line, features: [...features] })}
      />
      <LookFields
        look={{ ...look, capHeight: line.capHeight ?? lettering.capHeight }}
        board={part.finish}
        onChange={(own) => putLine({ ...line, look: { finish, outline, inline, shade, ribbon, ...own } })}
      />
    </>
  );
}

interface LookFieldsProps {
  readonly look: Looked;
  /** Finish of the sign's board. */
  readonly board: string | null;
  readonly onChange: (own: Partial<Look>) => void;
}

/** Colors of the letters, and what is painted around, in and under them. */
function LookFields({ look, board, onChange }: LookFieldsProps) {
  const { finishes } = useSettledDesign();
  const layers = layerFields(finishes, look.finish, board);
  return (
    <>
      <FieldGrid three of={FILL_FIELDS} value={look} onChange={onChange} />
      {(['outline', 'inline', 'shade', 'ribbon'] as const).map((layer) => (
        <fieldset key={layer} className="look">
          <Fields of={layers[layer]} value={look} onChange={onChange} />
          {look[layer] ? <FieldGrid three of={LAYER_FIELDS[layer]} value={look} onChange={onChange} /> : null}
        </fieldset>
      ))}
    </>
  );
}
