import { useEffect, useRef, useState } from 'react';
import type { Point } from '../../../geometry/shape.ts';
import { Button } from '../../control/Button.tsx';
import { Dialog } from '../../control/Dialog.tsx';
import { Slider } from '../../control/Slider.tsx';
import { useSay } from '../../control/useSay.ts';
import { faceOnCanvas, pngOf } from '../../kept/export/facePicture.ts';
import { saveBytes } from '../../kept/file.ts';
import { layIn } from '../../photo/layIn.ts';
import { usePlanner, useStore } from '../../state/hooks.ts';
import { type InRoom, type Photo, PLAIN_ROOM } from '../../state/photo.ts';
import { useWords } from '../../words/t.ts';

/** Longest side of the face as it is laid in, and of what is shown of the photo, in pixels. */
const FACE = 2400;
const SHOWN = 1200;
/** Larger photos than this are saved at this size. */
const SAVED = 6000;
/** An outline by hand needs so many points, this far apart on the photo shown. */
const FEWEST = 4;
const APART = 3;

/** The face of the plan as it is now; null until it is drawn. */
function useFace(): ImageBitmap | null {
  const planner = usePlanner();
  const [face, setFace] = useState<ImageBitmap | null>(null);
  useEffect(() => {
    const stop = new AbortController();
    const draw = async () => {
      const plan = await planner.current(stop.signal);
      const canvas = await faceOnCanvas(plan, { signal: stop.signal, pixels: FACE, onFile: () => {} });
      if (canvas) setFace(await createImageBitmap(canvas));
    };
    void draw().catch(() => undefined);
    return () => stop.abort();
  }, [planner]);
  return face;
}

/** Puts a picture on a canvas of its size. */
function put(on: HTMLCanvasElement, picture: ImageBitmap): void {
  on.width = picture.width;
  on.height = picture.height;
  on.getContext('2d')?.drawImage(picture, 0, 0);
}

/** The face in the photo of the bed: in its corners, in the light of the room, behind what stands before it. */
export function RoomDialog({ photo, onClose }: { photo: Photo; onClose: () => void }) {
  const t = useWords();
  const say = useSay();
  const store = useStore();
  const face = useFace();
  const sheet = useRef<HTMLCanvasElement>(null);
  const [fails, setFails] = useState(false);
  const room = photo.room ?? PLAIN_ROOM;
  const change = (next: Partial<InRoom>) =>
    store.setState({ photo: { ...photo, room: { ...room, ...next } } });
  const hand = useOutline(photo, (ring) => change({ before: [...room.before, ring] }));

  useEffect(() => {
    if (!face) return;
    const stop = new AbortController();
    const show = async () => {
      const laid = await layIn(photo, face, SHOWN, stop.signal);
      const on = sheet.current;
      setFails(laid === null);
      if (!on || !laid) return;
      put(on, laid);
      on.dataset.laid = String(photo.room?.before.length ?? 0);
    };
    void show().catch(() => undefined);
    return () => stop.abort();
  }, [photo, face]);

  const save = async () => {
    const laid = face && (await layIn(photo, face, SAVED, new AbortController().signal));
    if (!laid) return;
    const canvas = document.createElement('canvas');
    put(canvas, laid);
    const file = await pngOf(canvas, 'room.png');
    if (file) await saveBytes(file.name, file.type, file.bytes);
  };

  return (
    <Dialog title={t('room.title')} className="room" onClose={onClose}>
      <p className="note">{t('room.lead')}</p>
      {fails ? <p className="bad-text">{t('room.corners')}</p> : null}
      <div className="room-view">
        <canvas ref={sheet} width={photo.image.width} height={photo.image.height} />
        <svg viewBox={`0 0 ${photo.image.width} ${photo.image.height}`} {...hand.events}>
          <title>{t('room.view')}</title>
          <polyline points={hand.points.map(({ x, y }) => `${x},${y}`).join(' ')} />
        </svg>
        {face ? null : <p className="note room-wait">{t('room.making')}</p>}
      </div>
      <div className="room-fields">
        <Slider
          label={t('room.brightness')}
          hint={t('room.brightnessHint')}
          min={40}
          max={140}
          value={room.brightness * 100}
          told={say.share(room.brightness)}
          onChange={(value) => change({ brightness: value / 100 })}
        />
        <Slider
          label={t('room.warmth')}
          hint={t('room.warmthHint')}
          min={-100}
          max={100}
          value={room.warmth * 100}
          told={say.share(room.warmth)}
          onChange={(value) => change({ warmth: value / 100 })}
        />
      </div>
      <p className="note">{t('room.before')}</p>
      <div className="btn-row">
        <Button
          disabled={room.before.length === 0}
          onClick={() => change({ before: room.before.slice(0, -1) })}
        >
          {t('room.takeBack')}
        </Button>
        <Button disabled={!face || fails} onClick={() => void save()}>
          {t('room.save')}
        </Button>
      </div>
    </Dialog>
  );
}

/** An outline that a hand draws over the photo. */
function useOutline({ image }: Photo, onDrawn: (ring: readonly Point[]) => void) {
  const [points, setPoints] = useState<readonly Point[]>([]);
  const at = (e: React.PointerEvent<SVGSVGElement>): Point => {
    const box = e.currentTarget.getBoundingClientRect();
    const k = image.width / box.width;
    return { x: (e.clientX - box.left) * k, y: (e.clientY - box.top) * k };
  };
  const events = {
    onPointerDown: (e: React.PointerEvent<SVGSVGElement>) => {
      e.currentTarget.setPointerCapture(e.pointerId);
      setPoints([at(e)]);
    },
    onPointerMove: (e: React.PointerEvent<SVGSVGElement>) => {
      const last = points.at(-1);
      if (!last) return;
      const next = at(e);
      const apart = (APART * image.width) / e.currentTarget.getBoundingClientRect().width;
      if (Math.hypot(next.x - last.x, next.y - last.y) >= apart) setPoints([...points, next]);
    },
    onPointerUp: () => {
      if (points.length >= FEWEST) onDrawn(points);
      setPoints([]);
    },
    onPointerCancel: () => setPoints([]),
  };
  return { points, events };
}
