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
