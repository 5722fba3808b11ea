import { Trash2 } from 'lucide-react';
import type { Edit } from '../../../design/edit/edit.ts';
import { isLettered } from '../../../design/made.ts';
import { characterOf, picturesIn } from '../../../design/picture.ts';
import type { Lettering, Picture } from '../../../design/schema.ts';
import { boxOfPath } from '../../../geometry/path.ts';
import { ORNAMENTS } from '../../../lettering/picture/ornaments.ts';
import { pathOfOutline } from '../../../lettering/picture/outline.ts';
import { Button } from '../../control/Button.tsx';
import { ChoiceField, namesOf } from '../../control/ChoiceField.tsx';
import { pathData } from '../../control/svgPath.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords } from '../../words/t.ts';
import { OpenFile } from '../facts/OpenFile.tsx';
import { useChange } from '../facts/useChange.ts';
import { editsToKeep, openPicture } from './openPicture.ts';

interface PicturesProps {
  readonly lettering: Lettering;
  /** Puts a character into the lettering, together with edits that it needs. */
  readonly onInsert: (character: string, more?: readonly Edit[]) => void;
}

/** What can stand among the letters of a line besides letters. */
export function Pictures({ lettering, onInsert }: PicturesProps) {
  const t = useWords();
  const { pictures = [] } = useSettledDesign();
  const all = [
    ...ORNAMENTS.map(({ id, character, outline }) => ({
      ...{ id, character, name: t(`ornament.${id}`) },
      colors: [{ color: undefined, outline }],
    })),
    ...pictures.map(({ id, name, colors }) => ({ id, character: characterOf(id), name, colors })),
  ];
  return (
    <fieldset className="pictures">
      <legend className="section-sub">{t('pictures.title')}</legend>
      <div className="picture-grid">
        {all.map(({ id, character, name, colors }) => {
          const label = t('pictures.insert', { name });
          return (
            <Button key={id} look="icon" tip={label} onClick={() => onInsert(character)}>
              <PictureView colors={colors} />
            </Button>
          );
        })}
      </div>
      <p className="field-hint">{t('pictures.hint')}</p>
      <OpenPicture onInsert={onInsert} />
      {pictures.map((picture) => (
        <PictureItem key={picture.id} picture={picture} here={picturesIn(lettering, [picture]).length > 0} />
      ))}
    </fieldset>
  );
}

/** A picture of the person's own, read from a file, put into the line at once. */
function OpenPicture({ onInsert }: Pick<PicturesProps, 'onInsert'>) {
  const design = useSettledDesign();
  const open = async (chosen: File) => {
    const opened = await openPicture(chosen);
    if (typeof opened === 'string') return opened;
    const { edits, picture } = editsToKeep(design, opened, chosen.name);
    onInsert(characterOf(picture.id), edits);
    return null;
  };
  return (
    <OpenFile words="pictures.open" hint="pictures.openHint" accept=".svg,image/svg+xml" onOpen={open} />
  );
}

/** No finish has an id without letters. */
const AS_LETTERS = '';

/** What a picture of the design is painted in; one that stands nowhere can be deleted. */
function PictureItem({ picture, here }: { readonly picture: Picture; readonly here: boolean }) {
  const t = useWords();
  const design = useSettledDesign();
  const { replace, remove } = useChange();
  const used = design.parts.filter(isLettered).some((p) => picturesIn(p.lettering, [picture]).length > 0);
  if (!used) {
    return (
      <Button icon={Trash2} look="small" onClick={() => remove('pictures', picture.id, picture.name)}>
        {t('pictures.remove', { name: picture.name })}
      </Button>
    );
  }
  if (!here) return null;
  const choices = [{ value: AS_LETTERS, label: t('pictures.asLetters') }, ...namesOf(design.finishes)];
  const paint = (index: number, finish: string) => {
    const colors = picture.colors.map((color, i) =>
      i === index ? { ...color, finish: finish === AS_LETTERS ? null : finish } : color,
    );
    replace('pictures', { ...picture, colors }, picture.name);
  };
  return (
    <div className="fields three">
      {picture.colors.map(({ color, finish }, i) => (
        <ChoiceField
          // biome-ignore lint/suspicious/noArrayIndexKey: colors have no ids; they are told apart by their place
          key={i}
          label={t('pictures.color', { name: picture.name, number: i + 1, color })}
          value={finish ?? AS_LETTERS}
          choices={choices}
          onCommit={(chosen) => paint(i, chosen)}
        />
      ))}
    </div>
  );
}

interface ViewProps {
  readonly colors: readonly { readonly color: string | undefined; readonly outline: string }[];
}

/** A drawing as large as there is room; one of a single color in that of the text around it. */
function PictureView({ colors }: ViewProps) {
  const paths = colors.map(({ color, outline }) => ({ color, path: pathOfOutline(outline) }));
  const { x, y, w, h } = boxOfPath(paths.flatMap(({ path }) => path));
  return (
    <svg className="picture" viewBox={`${x} ${-y - h} ${w} ${h}`} aria-hidden="true">
      {paths.map(({ color, path }, i) => (
        <path
          // biome-ignore lint/suspicious/noArrayIndexKey: see above
          key={i}
          transform="scale(1 -1)"
          d={pathData(path)}
          fill={paths.length > 1 ? color : undefined}
        />
      ))}
    </svg>
  );
}
