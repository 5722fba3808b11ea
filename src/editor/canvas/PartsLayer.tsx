import type { Layer as KonvaLayer } from 'konva/lib/Layer';
import { memo, useCallback, useMemo, useRef } from 'react';
import { Layer, Shape } from 'react-konva';
import type { Looks } from '../../finish/look.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { LaidPart } from '../../layout/laid.ts';
import { remembering } from '../../plan/memory.ts';
import type { SignPlan } from '../../plan/types.ts';
import type { Shown } from '../document/shown.ts';
import { carrier } from '../drawing/carried.ts';
import { faceDimensions } from '../drawing/dimensions.ts';
import { dimensionsAbove } from '../drawing/drawDimensions.ts';
import { finishLook } from '../drawing/finishLook.ts';
import { fromBelow } from '../drawing/order.ts';
import { type Painted, type PartsLook, paintParts } from '../drawing/paintParts.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Rulers } from '../drawing/rulers.ts';
import type { DrawnPart } from '../drawing/sawn.ts';
import { usePhotoImages } from '../photo/usePhotoImages.ts';
import { useStraightened } from '../photo/useStraightened.ts';
import { useStore } from '../state/hooks.ts';
import type { Photo, PhotoMode } from '../state/photo.ts';
import { type EditorState, isCarrying, type Look, shownNow, type View } from '../state/store.ts';
import { groundPainter } from './ground.ts';
import { useOwnFrames } from './useOwnFrames.ts';

interface PartsLayerProps {
  readonly width: number;
  readonly height: number;
  readonly shown: Shown;
  readonly signs: ReadonlyMap<string, SignPlan>;
  /** How parts are drawn, such as to their cuts. */
  readonly sawn: (parts: readonly LaidPart[]) => readonly DrawnPart[];
  readonly view: View;
  readonly look: Look;
  readonly palette: Palette;
  /** Exact shadows, where they are known; else each part casts its own. */
  readonly shadows: readonly ShadowArea[] | null;
  readonly rulers: Rulers;
  readonly photo: Photo | null;
  readonly photoMode: PhotoMode;
}

/**
 * All parts as one shape, drawn from the store and not by React: a drag changes few of them in each frame, and
 * only where those are is drawn anew. The layer keeps what stands on it from one frame to the next.
 */
export const PartsLayer = memo(function PartsLayer(props: PartsLayerProps) {
  const { width, height, shown, signs, sawn, view, look, palette, shadows, rulers, photo, photoMode } = props;
  const { face, stocks, materials } = shown;
  const { finishes, light, bed } = shown.design;
  const { unit } = shown.design.measure;
  const store = useStore();
  const layer = useRef<KonvaLayer>(null);
  const drawn = useRef<Drawn | null>(null);
  const ground = useRef(groundPainter());
  const inHand = useRef(carrier());
  const straightened = useStraightened(photo, face);
  const images = usePhotoImages(shown.design.photos);
  const lookWith = useMemo(() => {
    // The same object while parts only move: what it is made from is drawn anew as a whole.
    return remembering(
      (looks: Looks): PartsLook => ({
        ...{ width, height, view, look, palette, shadows },
        scale: view.scale,
        ...finishLook({ face, stocks, materials, looks }, { finishes, light }),
        signOf: (id) => signs.get(id),
        imageOf: (photo) => images.get(photo),
      }),
    );
  }, [width, height, finishes, stocks, materials, light, face, signs, images, view, look, palette, shadows]);
  const groundLook = useMemo(
    () => ({ width, height, view, face, bed, unit, palette, photo, photoMode, straightened }),
    [width, height, view, face, bed, unit, palette, photo, photoMode, straightened],
  );

  const above = useMemo(
    () => [
      ...dimensionsAbove(faceDimensions(face), view, palette),
      ...rulers.bands({ view, width, height, unit, palette }),
    ],
    [rulers, face, view, width, height, unit, palette],
  );

  const paint = useCallback<NonNullable<React.ComponentProps<typeof Shape>['sceneFunc']>>(
    (pen) => {
      const state = store.getState();
      const { looks, layout, keepClears } = shownNow(state);
      const parts = sawn(fromBelow(layout));
      const shown = lookWith(looks);
      const { pixelRatio } = pen.canvas;
      const now: Painted = {
        ...{ look: shown, parts, keepClears },
        carried: inHand.current(parts, shown, pixelRatio, isCarrying(state)),
        ground: ground.current(groundLook, pixelRatio),
        above,
      };
      const last = drawn.current;
      paintParts(pen, now, last?.on === pen.canvas ? last.what : null);
      drawn.current = { on: pen.canvas, what: now };
    },
    [store, lookWith, groundLook, above, sawn],
  );

  useOwnFrames(layer, differs);

  return (
    <Layer ref={layer} listening={false} clearBeforeDraw={false}>
      <Shape perfectDrawEnabled={false} sceneFunc={paint} />
    </Layer>
  );
});

const differs = (now: EditorState, before: EditorState): boolean =>
  now.edit.shown !== before.edit.shown || now.provisional !== before.provisional;

/** What stands on which canvas. */
interface Drawn {
  readonly on: object;
  readonly what: Painted;
}
