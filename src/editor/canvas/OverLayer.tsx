import type { Layer as KonvaLayer } from 'konva/lib/Layer';
import { memo, type ReactNode, useCallback, useRef } from 'react';
import { Group, Layer, Shape } from 'react-konva';
import { withoutMeasured } from '../drawing/dimensions.ts';
import { drawDimensions, drawFigures } from '../drawing/drawDimensions.ts';
import { drawInHand } from '../drawing/drawInHand.ts';
import { drawReal } from '../drawing/drawReal.ts';
import { drawPlates } from '../drawing/figure.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Rulers } from '../drawing/rulers.ts';
import { sceneOf } from '../drawing/scene.ts';
import { RULER } from '../drawing/ticks.ts';
import { useStore } from '../state/hooks.ts';
import { type EditorState, isCarrying, shownNow, type View } from '../state/store.ts';
import { t } from '../words/t.ts';
import { lengthText } from '../words/text.ts';
import { useOwnFrames } from './useOwnFrames.ts';

interface OverLayerProps {
  readonly width: number;
  readonly height: number;
  readonly view: View;
  readonly palette: Palette;
  readonly rulers: Rulers;
  /** What else lies over the parts, beneath the selection. */
  readonly children: ReactNode;
}

/** Where rulers and the line along them end, in pixels. */
const INSIDE = RULER + 1;

/** Room that a tag keeps from the edges of the canvas, in pixels. */
const TAG = { right: 16, below: 18 } as const;

/**
 * What lies over the parts and goes with the hand: selection, handles, guides, dimensions and their reach on the
 * rulers. Drawn from the store and not by React, so that a drag draws one frame and renders nothing.
 */
export const OverLayer = memo(function OverLayer(props: OverLayerProps) {
  const { width, height, view, palette, rulers, children } = props;
  const store = useStore();
  const layer = useRef<KonvaLayer>(null);

  const paint = useCallback<NonNullable<React.ComponentProps<typeof Shape>['sceneFunc']>>(
    (ctx) => {
      const state = store.getState();
      const shown = shownNow(state);
      const carrying = isCarrying(state);
      const { corner, opening, member, path, frame, provisional, hud } = state;
      const { selection } = state.edit;
      const scene = sceneOf(shown, { selection, view, corner, opening, member, carrying });
      ctx.save();
      ctx.beginPath();
      ctx.rect(INSIDE, INSIDE, width - INSIDE, height - INSIDE);
      ctx.clip();
      if (state.step === 'bed')
        drawReal(
          ctx,
          shown.face,
          view,
          palette,
          ({ is, by, alone }, times) =>
            t(is === 'longer' ? 'bed.drawnMore' : `bed.drawn${by > 0 ? 'Out' : 'In'}${alone ? 'More' : ''}`, {
              by: lengthText(shown.design, Math.abs(by)),
              times,
            }),
          { x: RULER, y: RULER, w: width - RULER, h: height - RULER },
        );
      const guides = withoutMeasured(provisional?.guides ?? [], scene.dimensions);
      drawInHand(ctx, { ...scene, view, palette, guides, path, frame });
      drawDimensions(ctx, scene.dimensions, view, palette);
      const textOf = (d: { from: number; to: number }) => lengthText(shown.design, Math.abs(d.to - d.from));
      if (carrying) drawFigures(ctx, scene.dimensions, view, palette, textOf);
      ctx.restore();
      const look = { view, width, height, unit: shown.design.measure.unit, palette };
      if (scene.marked) rulers.mark(ctx, look, scene.marked, ctx.canvas.pixelRatio);
      // What is typed shows as a tag of the page.
      if (hud && hud.text !== '' && !hud.typed)
        drawPlates(ctx, [
          {
            ...{ text: hud.text, size: 15, fill: palette.ink, ink: palette.paper, halo: palette.halo },
            ...{ at: { x: hud.at.x + TAG.right, y: hud.at.y + TAG.below }, anchor: 'left' },
            // The hand may have left the drawing.
            within: { x: INSIDE, y: INSIDE, w: width - INSIDE, h: height - INSIDE },
          },
        ]);
    },
    [store, width, height, view, palette, rulers],
  );

  useOwnFrames(layer, differs);

  return (
    <Layer ref={layer} listening={false}>
      {children ? (
        <Group clipX={INSIDE} clipY={INSIDE} clipWidth={width - INSIDE} clipHeight={height - INSIDE}>
          {children}
        </Group>
      ) : null}
      <Shape perfectDrawEnabled={false} sceneFunc={paint} />
    </Layer>
  );
});

const differs = (now: EditorState, before: EditorState): boolean =>
  now.edit !== before.edit ||
  now.step !== before.step ||
  now.provisional !== before.provisional ||
  now.hud !== before.hud ||
  now.frame !== before.frame ||
  now.path !== before.path ||
  now.corner !== before.corner ||
  now.opening !== before.opening ||
  now.member !== before.member;
