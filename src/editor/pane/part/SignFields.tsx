import { useId, useState } from 'react';
import type { LetteredPart, Lettering, PartOf, Sign } from '../../../design/schema.ts';
import { pick } from '../../../list/at.ts';
import { namesOf } from '../../control/ChoiceField.tsx';
import { Fields } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { editsToLetter } from '../../edit/letter.ts';
import { tables } from '../../shipped/tables.ts';
import { useCommit } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { PaintedFields } from './PaintedFields.tsx';
import { PanelFields } from './PanelFields.tsx';
import { usePart } from './usePart.ts';
import '../../words/letteringWords.ts';

const FIELDS: readonly FormField<Lettering>[] = [
  {
    is: 'choice',
    label: 'letters.font',
    field: 'font',
    of: (_, { fonts }) => [
      ...namesOf(tables().fonts),
      ...fonts.map((f) => ({ value: `own:${f.id}`, label: f.name })),
    ],
  },
  { is: 'length', label: 'lettering.capHeight', field: 'capHeight', min: 1 },
  {
    is: 'choice',
    label: 'lettering.fit',
    field: 'fit',
    of: named('fit', ['none', 'width', 'height', 'both', 'lines']),
  },
  { is: 'choice', label: 'letters.fill', field: 'finish', of: (_, { finishes }) => namesOf(finishes) },
];

/** The words of a sign and what decides their size; finer lettering stands in its own step. */
export function SignFields({ part }: { part: Sign }) {
  return (
    <>
      <WordFields part={part} />
      <PanelFields part={part} />
    </>
  );
}

/** The same of letters without a board; the shape is that of what is painted under them, where that has a finish. */
export function LetteringFields({ part }: { part: PartOf<'lettering'> }) {
  return (
    <>
      <WordFields part={part} />
      <PaintedFields part={part} />
    </>
  );
}

function WordFields({ part }: { part: LetteredPart }) {
  const t = useWords();
  const commit = useCommit();
  const { change } = usePart(part);
  const { lettering } = part;
  const letter = (fields: Partial<Lettering>) => change({ lettering: { ...lettering, ...fields } });
  return (
    <div className="fields">
      <div className="wide">
        <LinesField
          key={lettering.lines.map((l) => l.text).join('\n')}
          value={lettering.lines.map((l) => l.text).join('\n')}
          onCommit={(text) =>
            commit(editsToLetter(part, text), t('did.letter', { text: pick(text.split('\n'), 0) }))
          }
        />
      </div>
      <Fields of={FIELDS} value={lettering} onChange={letter} />
    </div>
  );
}

function LinesField({ value, onCommit }: { value: string; onCommit: (text: string) => void }) {
  const t = useWords();
  const id = useId();
  const [text, setText] = useState(value);
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {t('lettering.text')}
      </label>
      <div className="input">
        <textarea
          id={id}
          rows={Math.max(1, text.split('\n').length)}
          value={text}
          onFocus={(e) => e.currentTarget.select()}
          onChange={(e) => setText(e.currentTarget.value)}
          onBlur={() => {
            if (text !== value) onCommit(text);
          }}
          onKeyDown={(e) => {
            if (e.key === 'Escape') setText(value);
          }}
        />
      </div>
    </div>
  );
}
