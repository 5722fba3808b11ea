import type { Box } from '../../geometry/shape.ts';

/** What the painters of the drawing draw with: the layers of the canvas give one, and so does any plain canvas. */
export type Pen = Pick<
  CanvasRenderingContext2D,
  | 'fillStyle'
  | 'strokeStyle'
  | 'lineWidth'
  | 'lineJoin'
  | 'globalAlpha'
  | 'imageSmoothingQuality'
  | 'font'
  | 'save'
  | 'restore'
  | 'translate'
  | 'scale'
  | 'rotate'
  | 'beginPath'
  | 'closePath'
  | 'moveTo'
  | 'lineTo'
  | 'bezierCurveTo'
  | 'arc'
  | 'rect'
  | 'roundRect'
  | 'clip'
  | 'fill'
  | 'stroke'
  | 'clearRect'
  | 'fillRect'
  | 'strokeRect'
  | 'setLineDash'
  | 'fillText'
  | 'measureText'
  | 'createLinearGradient'
  | 'drawImage'
>;

/** A picture out of sight, for what is drawn seldom and shown often. */
export interface Picture {
  readonly canvas: HTMLCanvasElement;
  readonly ratio: number;
}

/** Draws a picture of a size in pixels of the page, on the canvas of an earlier one where that fits. */
export function pictureOf(
  size: { readonly width: number; readonly height: number },
  ratio: number,
  draw: (pen: Pen) => void,
  earlier?: Picture | undefined,
): Picture {
  const canvas = earlier?.canvas ?? document.createElement('canvas');
  // Setting a size wipes the canvas, too.
  canvas.width = Math.max(1, Math.ceil(size.width * ratio));
  canvas.height = Math.max(1, Math.ceil(size.height * ratio));
  const pen = canvas.getContext('2d');
  if (!pen) throw new Error('The browser gives no canvas to draw on.');
  pen.scale(ratio, ratio);
  draw(pen);
  return { canvas, ratio };
}

/** Draws a picture of the page only where an area is, so that each of its pixels falls on one of the canvas. */
export function drawCut(ctx: Pen, { ratio, canvas }: Picture, { x, y, w, h }: Box): void {
  const [px, py] = [Math.max(0, x), Math.max(0, y)];
  const pw = Math.min(x + w, canvas.width / ratio) - px;
  const ph = Math.min(y + h, canvas.height / ratio) - py;
  if (pw > 0 && ph > 0) ctx.drawImage(canvas, px * ratio, py * ratio, pw * ratio, ph * ratio, px, py, pw, ph);
}
