import { Image, ImagePlus, Trash2, Undo2 } from 'lucide-react';
import { useState } from 'react';
import { boxAround } from '../../../geometry/box.ts';
import { Button } from '../../control/Button.tsx';
import { FieldGrid, Fields } from '../../control/form/Fields.tsx';
import { lazyPart } from '../../control/lazyPart.tsx';
import { MeasureField } from '../../control/MeasureField.tsx';
import { Guard } from '../../frame/Guard.tsx';
import { pickByInput } from '../../kept/file.ts';
import { openPhoto } from '../../photo/open.ts';
import { frameOf, scaledTo } from '../../photo/placing.ts';
import { fitToBox } from '../../state/fit.ts';
import { useEditor, useStore } from '../../state/hooks.ts';
import type { Photo, PhotoMode, Placing } from '../../state/photo.ts';
import { shownOn } from '../../state/place.ts';
import { useWords } from '../../words/t.ts';
import { PHOTO_FIELDS, PLACING_FIELDS, STRAIGHT_FIELDS } from './photoFields.ts';
import { QuadFields } from './QuadFields.tsx';

const RoomDialog = lazyPart(() => import('./RoomDialog.tsx').then((m) => m.RoomDialog));

const MODES = ['move', 'scale', 'straighten'] as const;

/** A photo of the bed under the drawing: sized by a known length, straightened by the bed's corners. */
export function PhotoSection() {
  const t = useWords();
  const store = useStore();
  const photo = useEditor((s) => s.photo);
  const before = useEditor((s) => s.photoBefore);
  const choose = async () => {
    const file = await pickByInput('image/jpeg,image/png,image/webp');
    if (file) await openPhoto(store, file);
  };
  return (
    <details className="fold" open={photo !== null || before !== null}>
      <summary className="section-title">{t('photo.title')}</summary>
      <div className="pane-stack">
        <p className="note">{t('photo.lead')}</p>
        {photo ? <PhotoFields photo={photo} /> : null}
        <div className="btn-row">
          <Button icon={ImagePlus} onClick={() => void choose()}>
            {t(photo ? 'photo.other' : 'photo.open')}
          </Button>
          {photo ? (
            <Button
              icon={Trash2}
              onClick={() => store.setState({ photo: null, photoBefore: photo, photoMode: 'rest' })}
            >
              {t('photo.remove')}
            </Button>
          ) : null}
          {before ? (
            <Button
              icon={Undo2}
              onClick={() => store.setState({ photo: before, photoBefore: photo, photoMode: 'rest' })}
            >
              {t('photo.putBack')}
            </Button>
          ) : null}
        </div>
      </div>
    </details>
  );
}

function PhotoFields({ photo }: { photo: Photo }) {
  const t = useWords();
  const store = useStore();
  const mode = useEditor((s) => s.photoMode);
  const [inRoom, setInRoom] = useState(false);
  const { placing, image, locked } = photo;
  const change = (next: Partial<Photo>) =>
    store.setState({ photo: { ...photo, ...next }, ...('locked' in next ? { photoMode: 'rest' } : {}) });
  const place = (next: Partial<Placing>) => {
    change({ placing: { ...placing, ...next } });
    if (next.straight) store.setState({ photoMode: 'rest', fitted: true });
  };
  const setMode = (next: PhotoMode) => {
    const { canvas } = store.getState();
    if (next === mode || !canvas) store.setState({ photoMode: 'rest', fitted: true });
    else {
      // Its marks may lie beyond the face, where the tools cover them or the window ends.
      const photo = frameOf(placing, image);
      const around = boxAround([photo, store.getState().edit.shown.face.box]) ?? photo;
      const view = fitToBox(around, shownOn(canvas));
      store.setState({ photoMode: next, fitted: false, view });
    }
  };
  return (
    <>
      <FieldGrid of={PHOTO_FIELDS} value={photo} onChange={change} />
      <fieldset className="btn-row photo-modes" disabled={locked}>
        <legend className="hidden-text">{t('photo.modes')}</legend>
        {MODES.map((one) => (
          <Button key={one} aria-pressed={mode === one} onClick={() => setMode(one)}>
            {t(`photo.mode.${one}`)}
          </Button>
        ))}
      </fieldset>
      {mode === 'rest' ? null : <p className="note">{t(`photo.hint.${mode}`)}</p>}
      {mode === 'move' ? <FieldGrid of={PLACING_FIELDS} value={photo} onChange={place} /> : null}
      {mode === 'scale' ? <KnownLength photo={photo} /> : null}
      {mode === 'straighten' ? (
        <QuadFields quad={placing.quad} size={image} onCommit={(quad) => place({ quad })} />
      ) : null}
      <Fields of={STRAIGHT_FIELDS} value={photo} onChange={place} />
      <Button icon={Image} onClick={() => setInRoom(true)}>
        {t('room.open')}
      </Button>
      {inRoom ? (
        <Guard onLost={() => setInRoom(false)}>
          <RoomDialog photo={photo} onClose={() => setInRoom(false)} />
        </Guard>
      ) : null}
    </>
  );
}

/** The length between the two marks: typing what it is in truth sizes the photo. */
function KnownLength({ photo }: { photo: Photo }) {
  const t = useWords();
  const store = useStore();
  const { placing, image } = photo;
  const [a, b] = placing.marks;
  // Typing the same measure again is meant too: the draft then starts from nothing.
  const [times, setTimes] = useState(0);
  return (
    <MeasureField
      key={times}
      label={t('photo.apart')}
      min={1}
      value={Math.hypot(b.x - a.x, b.y - a.y) * placing.scale}
      onCommit={(mm) => {
        store.setState({ photo: { ...photo, placing: scaledTo(placing, image, mm) } });
        setTimes(times + 1);
      }}
    />
  );
}
