import { useId, useState } from 'react';
import type { Lettering, Sign } from '../../../design/schema.ts';
import { ChoiceField } from '../../control/ChoiceField.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { editsToLetter } from '../../edit/letter.ts';
import { tables } from '../../shipped/tables.ts';
import { useCommit, useDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { PanelFields } from './PanelFields.tsx';
import { usePart } from './usePart.ts';

/** The words of a sign and what decides their size; finer lettering stands in its own step. */
export function SignFields({ part }: { part: Sign }) {
  const t = useWords();
  const design = useDesign();
  const commit = useCommit();
  const { change } = usePart(part);
  const { lettering } = part;
  const letter = (fields: Partial<Lettering>) => change({ lettering: { ...lettering, ...fields } });
  const fonts = [
    ...tables().fonts.map((f) => ({ value: f.id, label: f.name })),
    ...design.fonts.map((f) => ({ value: `own:${f.id}`, label: f.name })),
  ];
  return (
    <>
      <div className="fields">
        <div className="wide">
          <LinesField
            key={lettering.lines.map((l) => l.text).join('\n')}
            value={lettering.lines.map((l) => l.text).join('\n')}
            onCommit={(text) =>
              commit(editsToLetter(part, text), t('did.letter', { text: text.split('\n')[0] ?? '' }))
            }
          />
        </div>
        <ChoiceField
          label={t('lettering.font')}
          value={lettering.font}
          choices={fonts}
          onCommit={(font) => letter({ font })}
        />
        <MeasureField
          label={t('lettering.capHeight')}
          min={1}
          value={lettering.capHeight}
          onCommit={(capHeight) => letter({ capHeight })}
        />
        <ChoiceField
          label={t('lettering.fit')}
          value={lettering.fit}
          choices={(['none', 'width', 'height', 'both'] as const).map((value) => ({
            value,
            label: t(`fit.${value}`),
          }))}
          onCommit={(fit) => letter({ fit })}
        />
        <ChoiceField
          label={t('lettering.finish')}
          value={lettering.finish}
          choices={design.finishes.map((f) => ({ value: f.id, label: f.name }))}
          onCommit={(finish) => letter({ finish })}
        />
      </div>
      <PanelFields part={part} />
    </>
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
