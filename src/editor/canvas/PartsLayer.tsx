import { memo, useMemo } from 'react';
import { Group, Layer, Shape } from 'react-konva';
import type { Design } from '../../design/schema.ts';
import { letterLook } from '../../finish/look.ts';
import type { ShadowArea } from '../../finish/shadow.ts';
import type { Layout } from '../../layout/laid.ts';
import { radians } from '../../measure/units.ts';
import type { SignPlan } from '../../plan/types.ts';
import { faceFor, keepClearsOf, looksFor } from '../state/derive.ts';
import type { Look, View } from '../state/store.ts';
import { materialsOf, stocksOf } from '../state/tables.ts';
import { drawPart } from './drawPart.ts';
import { gleamsOn } from './gleam.ts';
import { KeepClears } from './KeepClears.tsx';
import type { Palette } from './palette.ts';
import { appearanceOf } from './partLook.ts';
import { Shadows } from './Shadows.tsx';

interface PartsLayerProps {
  readonly design: Design;
  readonly layout: Layout;
  readonly signs: ReadonlyMap<string, SignPlan>;
  readonly view: View;
  readonly look: Look;
  readonly palette: Palette;
  /** Exact shadows, where they are known; else each part casts its own. */
  readonly shadows: readonly ShadowArea[] | null;
}

/**
 * All parts as one shape. A layer is drawn as a whole whenever one of its parts moved; a node for each part
 * would only be compared and updated besides.
 */
export const PartsLayer = memo(function PartsLayer(props: PartsLayerProps) {
  const { design, layout, signs, view, look, palette, shadows } = props;
  const { finishes, stocks, light } = design;
  const looks = looksFor(design, layout);
  const appearance = useMemo(
    () => appearanceOf({ looks, finishes, stocks: stocksOf({ stocks }), materials: materialsOf() }),
    [looks, finishes, stocks],
  );
  const letterOf = useMemo(() => {
    const sheens = new Map(finishes.map((f) => [f.id, f.sheen]));
    return (sign: string, finish: string) => ({
      fill: letterLook(looks, finishes, sign, finish) ?? '#888888',
      sheen: sheens.get(finish) ?? null,
    });
  }, [looks, finishes]);
  const falling = useMemo(() => shadowOf(light), [light]);
  return (
    <Layer listening={false}>
      <Group x={view.x} y={view.y} scaleX={view.scale} scaleY={-view.scale}>
        <Shape
          perfectDrawEnabled={false}
          sceneFunc={(konva) => {
            const gleams = gleamsOn(konva._context, light, faceFor(design.bed).box);
            for (const part of layout.parts) {
              drawPart(konva._context, {
                part,
                appearance: appearance(part),
                look,
                scale: view.scale,
                tape: palette.tape,
                outline: palette.outline,
                sign: signs.get(part.id),
                letterOf,
                gleamOf: gleams,
                light: falling,
                shadeless: shadows !== null,
              });
            }
          }}
        />
        {shadows ? <Shadows areas={shadows} /> : null}
        <KeepClears items={keepClearsOf(design)} palette={palette} scale={view.scale} />
      </Group>
    </Layer>
  );
});

/** Shadow offset on the face for each millimeter of height; `azimuth` counterclockwise from the right. */
function shadowOf(light: { readonly azimuth: number; readonly altitude: number }) {
  const reach = 1 / Math.tan(radians(light.altitude));
  return { x: -Math.cos(radians(light.azimuth)) * reach, y: -Math.sin(radians(light.azimuth)) * reach };
}
