import { memo } from 'react';
import { Shape } from 'react-konva';
import type { ShadowArea } from '../../finish/shadow.ts';
import { traceRegion } from './trace.ts';

/** Shadows on what is seen; they lie beside each other, so one tint over all of them is right. */
export const Shadows = memo(function Shadows({ areas }: { areas: readonly ShadowArea[] }) {
  return (
    <Shape
      perfectDrawEnabled={false}
      sceneFunc={(konva) => {
        const ctx = konva._context;
        ctx.beginPath();
        for (const area of areas) traceRegion(ctx as never, area.region);
        ctx.fillStyle = '#0d0a14';
        ctx.globalAlpha = 0.46;
        ctx.fill('evenodd');
        ctx.globalAlpha = 1;
      }}
    />
  );
});
