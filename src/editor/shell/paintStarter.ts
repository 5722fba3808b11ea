import type { Design } from '../../design/schema.ts';
import type { Shown } from '../document/shown.ts';
import { drawFaceLevels } from '../drawing/drawFaceLevels.ts';
import { finishLook } from '../drawing/finishLook.ts';
import { fromBelow } from '../drawing/order.ts';
import { partPainter } from '../drawing/paintParts.ts';
import type { Palette } from '../drawing/palette.ts';
import type { Letters } from './useLetterPictures.ts';

/** Left free around the face for the shadows that its parts throw, pixels. */
const AROUND = 6;

/** Paints the face of a design as large as its canvas is shown, by the painters of the drawing. */
export function paintStarter(
  on: HTMLCanvasElement,
  {
    shown,
    design,
    palette,
    letters,
  }: {
    readonly shown: Shown;
    readonly design: Design;
    readonly palette: Palette;
    readonly letters: Letters | undefined;
  },
): void {
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
    imageOf: () => undefined,
    signOf: (id) => {
      const layers = letters?.get(id);
      return layers && { lettered: { layers } };
    },
  });
  for (const part of fromBelow(layout)) paint(part);
}
