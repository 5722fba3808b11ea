import { Trash2 } from 'lucide-react';
import { useId, useState } from 'react';
import type { Edit } from '../../../design/edit/edit.ts';
import { inserting } from '../../../design/edit/make.ts';
import { fontsIn } from '../../../design/look.ts';
import { isLettered } from '../../../design/made.ts';
import type { Design, Lettering } from '../../../design/schema.ts';
import type { Face } from '../../../lettering/font/faces.ts';
import { Button } from '../../control/Button.tsx';
import { freeId } from '../../edit/ids.ts';
import { tables } from '../../shipped/tables.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { OpenFile } from '../facts/OpenFile.tsx';
import { useChange } from '../facts/useChange.ts';
import { findFonts, openFont } from './openFont.ts';
import type { Kept } from './useBridges.ts';
import { useFontFace } from './useFontFace.ts';

const FAMILIES = ['sans', 'slab', 'serif', 'script', 'deco', 'stencil'] as const;

interface FontChooserProps {
  /** Their words are shown in each style. */
  readonly lines: Lettering['lines'];
  readonly font: string;
  readonly onChoose: (font: string, kept?: Kept, more?: readonly Edit[]) => void;
}

/** Letter styles, each shown in its own letters with the sign's own words. */
export function FontChooser({ lines, font, onChoose }: FontChooserProps) {
  const t = useWords();
  const id = useId();
  const design = useSettledDesign();
  const { remove } = useChange();
  const sample = lines.map((l) => l.text).find((text) => text.trim() !== '') ?? 'ABC';
  const used = (own: string) =>
    design.parts.filter(isLettered).some((p) => fontsIn(p.lettering).includes(`own:${own}`));
  const group = (words: WordKey, fonts: readonly { readonly id: string; readonly name: string }[]) =>
    fonts.length === 0 ? null : (
      <div className="font-family" key={words}>
        <p className="caption">{t(words)}</p>
        <div className="font-grid">
          {fonts.map((f) => (
            <FontCard
              key={f.id}
              group={id}
              font={f}
              own={design.fonts}
              sample={sample}
              chosen={f.id === font}
              onChoose={() => onChoose(f.id)}
            />
          ))}
        </div>
      </div>
    );
  return (
    <fieldset className="font-chooser">
      <legend className="section-sub">{t('letters.font')}</legend>
      {FAMILIES.map((family) =>
        group(
          `letters.family.${family}`,
          tables().fonts.filter((f) => f.family === family),
        ),
      )}
      {group(
        'letters.family.own',
        design.fonts.map((f) => ({ id: `own:${f.id}`, name: f.name })),
      )}
      {design.fonts
        .filter((f) => !used(f.id))
        .map((f) => (
          <Button key={f.id} icon={Trash2} look="small" onClick={() => remove('fonts', f.id, f.name)}>
            {t('act.removeNamed', { name: f.name })}
          </Button>
        ))}
      <OpenFont onChoose={onChoose} />
    </fieldset>
  );
}

/** A font of the person's own, read from a file, set in the sign at once; of a file with several, the one that is chosen. */
function OpenFont({ onChoose }: Pick<FontChooserProps, 'onChoose'>) {
  const t = useWords();
  const design = useSettledDesign();
  const [choice, setChoice] = useState<readonly Face[]>([]);
  const [problem, setProblem] = useState<string | null>(null);
  const use = async (font: Face): Promise<string | null> => {
    const opened = await openFont(font);
    if (!opened.ok) return opened.message;
    setChoice([]);
    const { name } = font;
    const item = { id: freeId(design, 'font'), name, data: opened.data };
    const label = t('did.font', { name });
    onChoose(`own:${item.id}`, { label }, [inserting('fonts', item)]);
    return null;
  };
  const open = async (chosen: File) => {
    setChoice([]);
    setProblem(null);
    const found = await findFonts(chosen);
    if (!found.ok) return found.message;
    const [first, ...more] = found.fonts;
    if (first && more.length === 0) return use(first);
    setChoice(found.fonts);
    return null;
  };
  const label = useId();
  return (
    <>
      <OpenFile
        words="letters.openFont"
        hint="letters.openHint"
        accept=".ttf,.otf,.woff,.woff2,.ttc,.otc"
        onOpen={open}
      />
      {choice.length > 0 ? (
        // biome-ignore lint/a11y/useSemanticElements: a fieldset within one draws a frame of its own.
        <div role="group" aria-labelledby={label}>
          <p className="caption" id={label}>
            {t('letters.whichFont')}
          </p>
          <div className="btn-row">
            {choice.map((font) => (
              <Button key={font.name} look="small" onClick={() => void use(font).then(setProblem)}>
                {font.name}
              </Button>
            ))}
          </div>
          {problem ? (
            <p className="field-error" role="alert">
              {problem}
            </p>
          ) : null}
        </div>
      ) : null}
    </>
  );
}

interface FontCardProps {
  readonly group: string;
  readonly font: { readonly id: string; readonly name: string };
  readonly own: Design['fonts'];
  readonly sample: string;
  readonly chosen: boolean;
  readonly onChoose: () => void;
}

function FontCard({ group, font, own, sample, chosen, onChoose }: FontCardProps) {
  const family = useFontFace(font.id, own);
  return (
    <label className="font-card">
      <input type="radio" name={group} value={font.id} checked={chosen} onChange={onChoose} />
      <span
        className="font-sample"
        style={family ? { fontFamily: `"${family}"` } : undefined}
        aria-hidden="true"
      >
        {sample}
      </span>
      <span className="font-name">{font.name}</span>
    </label>
  );
}
