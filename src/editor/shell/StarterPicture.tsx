import { useEffect, useMemo, useRef } from 'react';
import type { Design } from '../../design/schema.ts';
import { usePalette } from '../canvas/usePalette.ts';
import { shownFrom } from '../document/shown.ts';
import { drawFaceLevels } from '../drawing/drawFaceLevels.ts';
import { finishLook } from '../drawing/finishLook.ts';
import { partPainter } from '../drawing/paintParts.ts';
import type { Letters } from './useLetterPictures.ts';

interface StarterPictureProps {
  readonly design: Design;
  /** The lettering of its signs, once it is drawn. */
  readonly letters: Letters | undefined;
}

/** Left free around the face for the shadows that its parts throw, pixels. */
const AROUND = 6;

/** The face of a design as a small picture, drawn from its own layout by the painters of the drawing. */
export function StarterPicture({ design, letters }: StarterPictureProps) {
  const shown = useMemo(() => shownFrom(design), [design]);
  const palette = usePalette();
  const canvas = useRef<HTMLCanvasElement>(null);
  useEffect(() => {
    const on = canvas.current;
    if (!on) return;
    const draw = () => {
      const [width, height, ratio] = [on.clientWidth, on.clientHeight, devicePixelRatio];
      on.width = Math.ceil(width * ratio);
      on.height = Math.ceil(height * ratio);
      const pen = on.getContext('2d');
      if (!pen || width === 0) return;
      const { face, layout } = shown;
      const scale = Math.min((width - 2 * AROUND) / face.width, (height - 2 * AROUND) / face.height);
      pen.scale(ratio, ratio);
      pen.translate((width - face.width * scale) / 2, (height + face.height * scale) / 2);
      pen.scale(scale, -scale);
      drawFaceLevels(pen, face, palette, scale);
      const paint = partPainter(pen, {
        ...finishLook(shown, design),
        ...{ scale, palette, look: 'shadow', shadows: null, width, height, view: { x: 0, y: 0 } },
        signOf: (id) => {
          const layers = letters?.get(id);
          return layers && { lettered: { layers } };
        },
      });
      for (const part of layout.parts) paint(part);
    };
    const watch = new ResizeObserver(draw);
    watch.observe(on);
    return () => watch.disconnect();
  }, [shown, design, palette, letters]);
  return (
    <span className="first-picture" data-lettered={letters !== undefined} aria-hidden="true">
      <canvas ref={canvas} />
    </span>
  );
}
