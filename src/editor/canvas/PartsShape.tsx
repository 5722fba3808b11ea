import type { Layer as KonvaLayer } from 'konva/lib/Layer';
import type { Shape as KonvaShape } from 'konva/lib/Shape';
import { memo, type RefObject, useCallback, useEffect, useMemo, useRef } from 'react';
import { Shape } from 'react-konva';
import type { Design } from '../../design/schema.ts';
import { type Looks, letterLook } from '../../finish/look.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import { radians } from '../../measure/units.ts';
import { remembering } from '../../plan/memory.ts';
import type { SignPlan } from '../../plan/types.ts';
import { faceFor, keepClearsOf, layoutOf, looksFor } from '../state/derive.ts';
import { useStore } from '../state/hooks.ts';
import { type Look, shownDesign, type View } from '../state/store.ts';
import { materialsOf, stocksOf } from '../state/tables.ts';
import { gleamsOn } from './gleam.ts';
import { type Painted, type PartsLook, paintParts } from './paintParts.ts';
import type { Palette } from './palette.ts';
import { appearanceOf } from './partLook.ts';

interface PartsShapeProps {
  readonly width: number;
  readonly height: number;
  readonly design: Design;
  readonly signs: ReadonlyMap<string, SignPlan>;
  readonly view: View;
  readonly look: Look;
  readonly palette: Palette;
  /** Exact shadows, where they are known; else each part casts its own. */
  readonly shadows: readonly ShadowArea[] | null;
  /** What lies beneath, drawn out of sight. */
  readonly base: RefObject<KonvaLayer | null>;
}

/**
 * All parts as one shape, drawn from the store and not by React: a drag changes few of them in each frame, and
 * only where those are is drawn anew. They are kept with what lies beneath as one picture out of sight: every
 * canvas that is seen costs time in each frame, though nothing on it changes.
 */
export const PartsShape = memo(function PartsShape(props: PartsShapeProps) {
  const { width, height, design, signs, view, look, palette, shadows, base } = props;
  const { finishes, stocks, light, bed } = design;
  const store = useStore();
  const shape = useRef<KonvaShape>(null);
  const picture = useRef<Picture | null>(null);
  /** How often the base was drawn by itself: a photo that came, or another bed. */
  const baseDrawn = useRef(0);
  const lookWith = useMemo(() => {
    const sheens = new Map(finishes.map((f) => [f.id, f.sheen]));
    const { box } = faceFor(bed);
    // The same object while parts only move: what it is made from is drawn anew as a whole.
    return remembering((looks: Looks): PartsLook => {
      return {
        ...{ width, height, view, look, palette, shadows },
        scale: view.scale,
        light: shadowOf(light),
        appearance: appearanceOf({ looks, finishes, stocks: stocksOf({ stocks }), materials: materialsOf() }),
        letterOf: (sign, finish) => ({
          fill: letterLook(looks, finishes, sign, finish) ?? '#888888',
          sheen: sheens.get(finish) ?? null,
        }),
        gleamsOn: (ctx) => gleamsOn(ctx, light, box),
        signOf: (id) => signs.get(id),
      };
    });
  }, [width, height, finishes, stocks, light, bed, signs, view, look, palette, shadows]);

  const paint = useCallback<NonNullable<React.ComponentProps<typeof Shape>['sceneFunc']>>(
    (konva) => {
      const shown = shownDesign(store.getState());
      const layout = layoutOf(shown);
      const partsLook = lookWith(looksFor(shown, layout));
      const now = { look: partsLook, parts: layout.parts, keepClears: keepClearsOf(shown) };
      const ratio = konva.canvas.pixelRatio;
      const last = pictureOf(picture.current, width, height, ratio);
      const before = last.base === baseDrawn.current ? last.what : null;
      // Where all is drawn anew the base may be about to be: it goes first.
      if (before?.look !== partsLook) base.current?.drawScene();
      const ground = base.current?.getNativeCanvasElement() ?? null;
      paintParts(last.pen, now, before, { ratio, picture: ground });
      picture.current = { ...last, base: baseDrawn.current, what: now };
      konva._context.drawImage(last.pen.canvas, 0, 0, width, height);
    },
    [store, lookWith, base, width, height],
  );

  useEffect(() => {
    const beneath = base.current;
    const redraw = () => {
      baseDrawn.current++;
      shape.current?.getLayer()?.batchDraw();
    };
    beneath?.on('draw.parts', redraw);
    return () => {
      beneath?.off('draw.parts', redraw);
    };
  }, [base]);

  return <Shape ref={shape} perfectDrawEnabled={false} sceneFunc={paint} />;
});

/** A canvas out of sight and what stands on it. */
interface Picture {
  readonly pen: CanvasRenderingContext2D;
  readonly ratio: number;
  readonly base: number;
  readonly what: Painted | null;
}

/** The picture as it is, or an empty one of another size. */
function pictureOf(last: Picture | null, width: number, height: number, ratio: number): Picture {
  const [w, h] = [Math.max(1, Math.round(width * ratio)), Math.max(1, Math.round(height * ratio))];
  if (last?.ratio === ratio && last.pen.canvas.width === w && last.pen.canvas.height === h) return last;
  const canvas = document.createElement('canvas');
  canvas.width = w;
  canvas.height = h;
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('The browser gives no canvas to draw on.');
  pen.scale(ratio, ratio);
  return { pen, ratio, base: 0, what: null };
}

/** Shadow offset on the face for each millimeter of height; `azimuth` counterclockwise from the right. */
function shadowOf(light: { readonly azimuth: number; readonly altitude: number }) {
  const reach = 1 / Math.tan(radians(light.altitude));
  return { x: -Math.cos(radians(light.azimuth)) * reach, y: -Math.sin(radians(light.azimuth)) * reach };
}
