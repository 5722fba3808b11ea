import { boxOfPath } from '../../../geometry/path.ts';
import type { Path } from '../../../geometry/shape.ts';
import { ORNAMENTS } from '../../../lettering/picture/ornaments.ts';
import { pathOfOutline } from '../../../lettering/picture/outline.ts';
import { Button } from '../../control/Button.tsx';
import { pathData } from '../../control/svgPath.ts';
import { useWords } from '../../words/t.ts';

/** What can stand among the letters of a line besides letters. */
export function Pictures({ onInsert }: { readonly onInsert: (character: string) => void }) {
  const t = useWords();
  return (
    <fieldset className="pictures">
      <legend className="section-sub">{t('pictures.title')}</legend>
      <div className="picture-grid">
        {ORNAMENTS.map(({ id, character, outline }) => {
          const label = t('pictures.insert', { name: t(`ornament.${id}`) });
          return (
            <Button key={id} look="icon" label={label} title={label} onClick={() => onInsert(character)}>
              <PictureView path={pathOfOutline(outline)} />
            </Button>
          );
        })}
      </div>
      <p className="field-hint">{t('pictures.hint')}</p>
    </fieldset>
  );
}

/** A drawing as large as there is room. */
function PictureView({ path }: { readonly path: Path }) {
  const { x, y, w, h } = boxOfPath(path);
  return (
    <svg className="picture" viewBox={`${x} ${-y - h} ${w} ${h}`} aria-hidden="true">
      <path transform="scale(1 -1)" d={pathData(path)} />
    </svg>
  );
}
