import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import type { Edit } from '../../../design/edit/edit.ts';
import { inserting } from '../../../design/edit/make.ts';
import { FARTHEST, MOST_PHOTOS } from '../../../design/limits.ts';
import { isLettered } from '../../../design/made.ts';
import type { LyingPhoto, Photo } from '../../../design/schema.ts';
import { LEAST_DPI, type PlacedPhoto } from '../../../lettering/photo/placed.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid } from '../../control/form/Fields.tsx';
import { type FormField, named } from '../../control/form/formField.ts';
import { Section } from '../../control/Section.tsx';
import { Typeset } from '../../control/Typeset.tsx';
import { useSay } from '../../control/useSay.ts';
import { freeId } from '../../edit/ids.ts';
import { useSettledDesign } from '../../state/hooks.ts';
import { useWords, type WordKey } from '../../words/t.ts';
import { OpenFile } from '../facts/OpenFile.tsx';
import { useChange } from '../facts/useChange.ts';
import { openPhotoFile } from './openPhotoFile.ts';

interface PhotosProps {
  readonly lying: readonly LyingPhoto[];
  /** As the plan has them; those that it could not place are missing. */
  readonly placed: readonly PlacedPhoto[];
  readonly onChange: (lying: readonly LyingPhoto[], more?: readonly Edit[]) => void;
}

/** Photos on the paper of a printed sign. */
export function Photos({ lying, placed, onChange }: PhotosProps) {
  const t = useWords();
  const { photos = [], parts } = useSettledDesign();
  const { remove } = useChange();
  const used = new Set(
    parts.filter(isLettered).flatMap((part) => part.lettering.photos?.map(({ photo }) => photo) ?? []),
  );
  const here = new Set(lying.map(({ photo }) => photo));
  const put = (photo: string, more?: readonly Edit[]) => onChange([...lying, newlyLying(photo)], more);
  return (
    <Section id="photos-title" title="photos.title">
      {lying.map((one, i) => (
        <PhotoItem
          // biome-ignore lint/suspicious/noArrayIndexKey: a photo may lie on a sign twice; they are told apart by their place
          key={i}
          lying={one}
          photo={photos.find(({ id }) => id === one.photo)}
          placed={placed.find(({ photo }, k) => photo.id === one.photo && isNth(lying, placed, i, k))}
          onChange={(next) => onChange(lying.map((other, k) => (k === i ? { ...one, ...next } : other)))}
          onRemove={() => onChange(lying.filter((_, k) => k !== i))}
        />
      ))}
      {lying.length < MOST_PHOTOS ? <OpenPhoto photos={photos} onPut={put} /> : null}
      {photos
        .filter(({ id }) => !here.has(id))
        .map(({ id, name }) => (
          <div key={id} className="btn-row">
            <Button icon={Plus} look="small" disabled={lying.length >= MOST_PHOTOS} onClick={() => put(id)}>
              {t('photos.put', { name })}
            </Button>
            {used.has(id) ? null : (
              <Button icon={Trash2} look="small" onClick={() => remove('photos', id, name)}>
                {t('photos.delete', { name })}
              </Button>
            )}
          </div>
        ))}
    </Section>
  );
}

/** Whether a placed photo is the one of a lying one: of those of one photo, the same in order. */
function isNth(
  lying: readonly LyingPhoto[],
  placed: readonly PlacedPhoto[],
  index: number,
  found: number,
): boolean {
  const of = lying[index]?.photo;
  const before = lying.slice(0, index).filter(({ photo }) => photo === of).length;
  return placed.slice(0, found).filter(({ photo }) => photo.id === of).length === before;
}

const newlyLying = (photo: string): LyingPhoto => ({
  ...{ photo, fit: 'cover', width: 100, shift: { x: 0, y: 0 } },
});

interface OpenPhotoProps {
  readonly photos: readonly Photo[];
  readonly onPut: (photo: string, more?: readonly Edit[]) => void;
}

/** A photo read from a file and put on the sign at once; one that the design has already is used again. */
function OpenPhoto({ photos, onPut }: OpenPhotoProps) {
  const t = useWords();
  const design = useSettledDesign();
  const [told, tell] = useState<string | null>(null);
  const open = async (file: File) => {
    tell(null);
    const read = await openPhotoFile(file);
    if (typeof read === 'string') return read;
    const { smaller, ...kept } = read;
    const known = photos.find(({ data }) => data === kept.data);
    if (!known && photos.length >= MOST_PHOTOS) return t('photos.full', { most: MOST_PHOTOS });
    if (smaller) tell(t('photos.smaller', { width: kept.width, height: kept.height }));
    const name = file.name.replace(/\.[^.]*$/, '').slice(0, 190);
    const item: Photo = { ...kept, id: freeId(design, 'photo'), name };
    onPut(known?.id ?? item.id, known ? [] : [inserting('photos', item)]);
    return null;
  };
  return (
    <>
      <OpenFile
        words="photos.open"
        hint="photos.openHint"
        accept="image/png,image/jpeg,image/webp,.png,.jpg,.jpeg,.webp"
        onOpen={open}
      />
      {told ? <p className="note">{told}</p> : null}
    </>
  );
}

interface Lies {
  readonly lying: LyingPhoto;
  readonly placed: PlacedPhoto;
}
type PhotoField = FormField<Lies, Partial<LyingPhoto>>;

type Crop = NonNullable<LyingPhoto['crop']>;
const cropOf = ({ crop }: LyingPhoto): Crop => crop ?? { left: 0, right: 0, bottom: 0, top: 0 };
/** At least a twentieth of each side is left. */
const MOST_CUT = 95;

type Side = keyof Crop;

const cutOff = (label: WordKey, side: Side, across: Side): PhotoField => ({
  ...{ is: 'share', label, min: 0 },
  max: ({ lying }) => MOST_CUT - Math.round(cropOf(lying)[across] * 100),
  get: ({ lying }) => cropOf(lying)[side],
  put: (cut: number, { lying }: Lies) => ({ crop: { ...cropOf(lying), [side]: cut } }),
});

const FIELDS: readonly PhotoField[] = [
  {
    is: 'choice',
    label: 'photos.fit',
    place: 'wide',
    of: named('photos.fit', ['cover', 'inside', 'sized']),
    get: ({ lying }) => lying.fit,
    // A photo that is sized from now on stays as large as it is.
    put: (fit: LyingPhoto['fit'], { placed }) => ({ fit, width: placed.frame.w }),
  },
  // Whichever side is measured, the other follows, and the photo has a size of its own.
  {
    is: 'length',
    label: 'photos.width',
    min: 1,
    get: ({ placed }) => placed.shown.w,
    put: (w, { placed: { frame, shown } }) => ({ fit: 'sized', width: (frame.w * w) / shown.w }),
  },
  {
    is: 'length',
    label: 'photos.height',
    min: 1,
    get: ({ placed }) => placed.shown.h,
    put: (h, { placed: { frame, shown } }) => ({ fit: 'sized', width: (frame.w * h) / shown.h }),
  },
  cutOff('photos.cutLeft', 'left', 'right'),
  cutOff('photos.cutRight', 'right', 'left'),
  cutOff('photos.cutTop', 'top', 'bottom'),
  cutOff('photos.cutBottom', 'bottom', 'top'),
  {
    is: 'length',
    label: 'letters.shiftX',
    min: -FARTHEST,
    get: ({ lying }) => lying.shift.x,
    put: (x, { lying: { shift } }) => ({ shift: { ...shift, x } }),
  },
  {
    is: 'length',
    label: 'letters.shiftY',
    min: -FARTHEST,
    get: ({ lying }) => lying.shift.y,
    put: (y, { lying: { shift } }) => ({ shift: { ...shift, y } }),
  },
];

interface PhotoItemProps {
  readonly lying: LyingPhoto;
  readonly photo: Photo | undefined;
  readonly placed: PlacedPhoto | undefined;
  readonly onChange: (next: Partial<LyingPhoto>) => void;
  readonly onRemove: () => void;
}

/** One photo: what is shown of it, how large, where, and how fine it is there. */
function PhotoItem({ lying, photo, placed, onChange, onRemove }: PhotoItemProps) {
  const t = useWords();
  const say = useSay();
  const name = photo?.name ?? lying.photo;
  return (
    <fieldset className="look">
      <legend className="section-sub">{name}</legend>
      {photo && placed ? (
        <>
          <p className={Math.floor(placed.dpi) < LEAST_DPI ? 'warn-text' : 'note'}>
            <Typeset
              text={t('photos.fine', {
                ...{ width: photo.width, height: photo.height, dpi: Math.floor(placed.dpi) },
                ...{ least: LEAST_DPI, most: say.short((placed.shown.w * placed.dpi) / LEAST_DPI) },
              })}
            />
          </p>
          <FieldGrid three of={FIELDS} value={{ lying, placed }} onChange={onChange} />
        </>
      ) : null}
      <div className="btn-row spaced">
        <Button icon={Trash2} look="small" onClick={onRemove}>
          {t('photos.remove', { name })}
        </Button>
      </div>
    </fieldset>
  );
}
