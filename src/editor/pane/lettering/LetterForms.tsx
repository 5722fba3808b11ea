import { SwatchBook, Trash2 } from 'lucide-react';
import { fontOfLine } from '../../../design/look.ts';
import type { Lettering } from '../../../design/schema.ts';
import { boxOfPath } from '../../../geometry/path.ts';
import type { Box } from '../../../geometry/shape.ts';
import { hasForms, type LetterForm } from '../../../lettering/forms.ts';
import { boxOfPaths } from '../../../lettering/placed.ts';
import { Button } from '../../control/Button.tsx';
import { pathData } from '../../control/svgPath.ts';
import { type Line, letterMeant, lettersOf, withForm } from '../../edit/letterSizes.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { useFontFacts, useForms } from './useFontLook.ts';

interface LetterFormsProps {
  readonly lettering: Lettering;
  readonly line: Line;
  readonly onChange: (line: Line) => void;
}

interface FormButtonProps extends LetterFormsProps {
  readonly selection: { readonly from: number; readonly to: number } | null;
}

/** As many as the design's form takes. */
const MOST_LETTERS = 500;

/** Gives the letter at the caret another form; shown where the font of the line has any. */
export function FormButton({ lettering, line, selection, onChange }: FormButtonProps) {
  const t = useWords();
  const { fonts } = useSettledDesign();
  const font = fontOfLine(lettering, line);
  const { features } = useFontFacts(font, fonts);
  const meant = letterMeant(line.text, selection ?? { from: line.text.length, to: line.text.length });
  const forms = useForms(font, fonts, meant?.letter ?? ' ');
  const other = forms.find(({ chosen }) => chosen !== null)?.chosen;
  if (!features.some(({ tag }) => hasForms(tag))) return null;
  const own = line.forms ?? [];
  const has = own.some(({ at }) => at === meant?.at);
  return (
    <Button
      icon={SwatchBook}
      look="bare icon"
      tip={t('letters.otherForm', { letter: meant?.letter ?? '' })}
      disabled={!meant || !other || has || own.length >= MOST_LETTERS}
      onClick={() => meant && other && onChange(withForm(line, meant.at, other))}
    />
  );
}

/** Letters of a line that have another form, with all the forms that their font has for them. */
export function LetterForms({ lettering, line, onChange }: LetterFormsProps) {
  const font = fontOfLine(lettering, line);
  return (line.forms ?? []).map((form) => (
    <FormsOfLetter
      key={form.at}
      font={font}
      form={form}
      letter={lettersOf(line, { from: form.at, count: 1 })}
      onChoose={(chosen) => onChange(withForm(line, form.at, chosen))}
    />
  ));
}

interface FormsOfLetterProps {
  readonly font: string;
  readonly form: NonNullable<Line['forms']>[number];
  readonly letter: string;
  readonly onChoose: (chosen: LetterForm['chosen']) => void;
}

function FormsOfLetter({ font, form, letter, onChoose }: FormsOfLetterProps) {
  const t = useWords();
  const { fonts } = useSettledDesign();
  const forms = useForms(font, fonts, letter);
  const box = boxOfPaths(forms.map(({ outline }) => outline));
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be laid out as a grid
    <div className="row-fields letter-form" role="group" aria-label={t('letters.formsOf', { letter })}>
      <span className="sized" aria-hidden="true">
        {letter}
      </span>
      <div className="picture-grid">
        {forms.map(({ chosen, outline }, i) =>
          chosen ? (
            <Button
              key={`${chosen.tag} ${chosen.value}`}
              look="icon"
              tip={t('letters.formNumber', { number: i, letter })}
              aria-pressed={chosen.tag === form.tag && chosen.value === form.value}
              onClick={() => onChoose(chosen)}
            >
              <FormView outline={outline} box={box} />
            </Button>
          ) : null,
        )}
      </div>
      <Button
        icon={Trash2}
        look="bare icon"
        label={t('letters.usualForm', { letter })}
        onClick={() => onChoose(null)}
      />
    </div>
  );
}

/** A form of a letter, as high as all of them are together. */
function FormView({ outline, box }: { readonly outline: LetterForm['outline']; readonly box: Box }) {
  const { x, w } = outline.length > 0 ? boxOfPath(outline) : box;
  return (
    <svg className="picture" viewBox={`${x} ${-box.y - box.h} ${w} ${box.h}`} aria-hidden="true">
      <path transform="scale(1 -1)" d={pathData(outline)} />
    </svg>
  );
}
