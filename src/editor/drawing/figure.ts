import type { Box, Point } from '../../geometry/shape.ts';
import { fractionsIn } from '../words/fractions.ts';
import { HALO } from './haloed.ts';
import type { Pen } from './pen.ts';

const FACE = '"Barlow Condensed", sans-serif';
/** Numerals of a fraction against the text, and how far they rise, as `.frac` in the style sheet has them. */
const SMALL = 0.72;
const RISE = 0.42;

/** A figure on a plate, as the labels of the page look. */
export interface Plate {
  readonly text: string;
  readonly size: number;
  readonly fill: string;
  readonly ink: string;
  readonly edge?: string | undefined;
  /** Around it, where it lies over the drawing. */
  readonly halo?: string | undefined;
}

/** Room beside the text, and height of the plate against the text. */
const SIDE = 6;
const HIGH = 1.5;

/** Where a plate lies whose middle, or `left` upper corner, is at a point; it stays `within` what is seen. */
export function plateBox(
  ctx: Pen,
  { text, size }: Pick<Plate, 'text' | 'size'>,
  at: Point,
  anchor: 'middle' | 'left',
  within?: Box,
): Box {
  const w = setText(ctx, text, size).width + 2 * SIDE;
  const h = size * HIGH;
  const kept = (start: number, long: number, from: number, room: number): number =>
    Math.round(Math.max(from + HALO, Math.min(start, from + room - HALO - long)));
  const asked = anchor === 'middle' ? { x: at.x - w / 2, y: at.y - h / 2 } : at;
  const x = within ? kept(asked.x, w, within.x, within.w) : Math.round(asked.x);
  const y = within ? kept(asked.y, h, within.y, within.h) : Math.round(asked.y);
  return { x, y, w, h };
}

/** Draws a plate where `plateBox` lays it. */
export function drawPlate(ctx: Pen, plate: Plate, at: Point, anchor: 'middle' | 'left', within?: Box): void {
  const { stretches } = setText(ctx, plate.text, plate.size);
  const { x, y, w, h } = plateBox(ctx, plate, at, anchor, within);
  const lay = (fill: string, out: number) => {
    ctx.fillStyle = fill;
    ctx.beginPath();
    ctx.roundRect(x - out, y - out, w + 2 * out, h + 2 * out, 2 + out);
    ctx.fill();
  };
  if (plate.halo) lay(plate.halo, HALO);
  lay(plate.fill, 0);
  if (plate.edge) {
    ctx.strokeStyle = plate.edge;
    ctx.lineWidth = 1;
    ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
  }
  ctx.fillStyle = plate.ink;
  write(ctx, stretches, { x: x + SIDE, y: y + h * 0.72 });
}

/** A stretch of a text in one size, from the start of its base line. */
interface Stretch {
  readonly text: string;
  readonly font: string;
  readonly x: number;
  readonly rise: number;
}

/** A text with its fractions, stretch by stretch, and its width. */
function setText(ctx: Pen, text: string, size: number) {
  let x = 0;
  const stretches: Stretch[] = [];
  const put = (some: string, share: number, rise: number) => {
    if (some === '') return;
    const font = `600 ${size * share}px ${FACE}`;
    stretches.push({ text: some, font, x, rise: rise * size });
    x += widthOf(ctx, some, font);
  };
  for (const part of fractionsIn(text)) {
    if ('plain' in part) put(part.plain, 1, 0);
    else {
      put(part.whole, 1, 0);
      x += part.whole === '' ? 0 : size * 0.07;
      put(part.over, SMALL, SMALL * RISE);
      put('⁄', SMALL, SMALL * 0.1);
      put(part.under, SMALL, 0);
      put(part.mark, 1, 0);
    }
  }
  return { stretches, width: x };
}

/** Writes a text from a point of its base line: size by size, because setting a font is slow. */
function write(ctx: Pen, stretches: readonly Stretch[], at: Point): void {
  for (const font of new Set(stretches.map((one) => one.font))) {
    ctx.font = font;
    for (const one of stretches) if (one.font === font) ctx.fillText(one.text, at.x + one.x, at.y - one.rise);
  }
}

const MOST_WIDTHS = 2000;
const widths = new Map<string, number>();

/** Width of a text in a font; figures come again and again, and measuring is slow. */
function widthOf(ctx: Pen, text: string, font: string): number {
  const key = `${font} ${text}`;
  let width = widths.get(key);
  if (width === undefined) {
    ctx.font = font;
    width = ctx.measureText(text).width;
    // A text measured before its font came has another width.
    if (document.fonts.status !== 'loaded') return width;
    if (widths.size >= MOST_WIDTHS) widths.clear();
    widths.set(key, width);
  }
  return width;
}
