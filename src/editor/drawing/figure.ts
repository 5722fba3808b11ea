import { boxesMeet } from '../../geometry/region.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { keptByValue } from '../../list/keptBy.ts';
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

/** A plate and where it lies: its middle, or its `left` upper corner, at a point; it stays `within` what is seen. */
export interface PlacedPlate extends Plate {
  readonly at: Point;
  readonly anchor: 'middle' | 'left';
  readonly within?: Box | undefined;
}

type Lain = Pick<PlacedPlate, 'text' | 'size' | 'at' | 'anchor' | 'within'>;

/** Where a plate lies. */
export const plateBox = (ctx: Pen, plate: Lain): Box => lain(plate, setText(ctx, plate).width);

/** @param width of its text */
function lain({ size, at, anchor, within }: Lain, width: number): Box {
  const w = width + 2 * SIDE;
  const h = size * HIGH;
  const kept = (start: number, long: number, from: number, room: number): number =>
    Math.round(Math.max(from + HALO, Math.min(start, from + room - HALO - long)));
  const asked = anchor === 'middle' ? { x: at.x - w / 2, y: at.y - h / 2 } : at;
  const x = within ? kept(asked.x, w, within.x, within.w) : Math.round(asked.x);
  const y = within ? kept(asked.y, h, within.y, within.h) : Math.round(asked.y);
  return { x, y, w, h };
}

/**
 * Draws plates, each over those before it, where `plateBox` lays them. Setting a font is slow: what does not lie over
 * each other is written all at once, size by size.
 */
export function drawPlates(ctx: Pen, plates: readonly PlacedPlate[]): void {
  let blank: Written[] = [];
  for (const plate of plates) {
    const { stretches, width } = setText(ctx, plate);
    const box = lain(plate, width);
    const edge = { x: box.x - HALO, y: box.y - HALO, w: box.w + 2 * HALO, h: box.h + 2 * HALO };
    if (blank.some((one) => boxesMeet(one.edge, edge))) {
      write(ctx, blank);
      blank = [];
    }
    drawBlank(ctx, plate, box);
    blank.push({ stretches, ink: plate.ink, edge, at: { x: box.x + SIDE, y: box.y + box.h * 0.72 } });
  }
  write(ctx, blank);
}

/** A plate without its text. */
function drawBlank(ctx: Pen, { halo, fill, edge }: Plate, { x, y, w, h }: Box): void {
  const lay = (color: string, out: number) => {
    ctx.fillStyle = color;
    ctx.beginPath();
    ctx.roundRect(x - out, y - out, w + 2 * out, h + 2 * out, 2 + out);
    ctx.fill();
  };
  if (halo) lay(halo, HALO);
  lay(fill, 0);
  if (!edge) return;
  ctx.strokeStyle = edge;
  ctx.lineWidth = 1;
  ctx.strokeRect(x + 0.5, y + 0.5, w - 1, h - 1);
}

/** A stretch of a text in one size, from the start of its base line. */
interface Stretch {
  readonly text: string;
  readonly font: string;
  readonly x: number;
  readonly rise: number;
}

/** A text that is to be written from a point of its base line, on a plate that reaches to its `edge`. */
interface Written {
  readonly stretches: readonly Stretch[];
  readonly at: Point;
  readonly ink: string;
  readonly edge: Box;
}

/** Fonts of a text of a size, and of its fractions. */
const fontsOf = keptByValue((size: number) => ({
  plain: `600 ${size}px ${FACE}`,
  small: `600 ${size * SMALL}px ${FACE}`,
}));

/** A text with its fractions, stretch by stretch, and its width. */
function setText(ctx: Pen, { text, size }: Pick<Plate, 'text' | 'size'>) {
  let x = 0;
  const stretches: Stretch[] = [];
  const { plain, small } = fontsOf(size);
  const put = (some: string, font: string, rise: number) => {
    if (some === '') return;
    stretches.push({ text: some, font, x, rise: rise * size });
    x += widthOf(ctx, some, font);
  };
  for (const part of fractionsIn(text)) {
    if ('plain' in part) put(part.plain, plain, 0);
    else {
      put(part.whole, plain, 0);
      x += part.whole === '' ? 0 : size * 0.07;
      put(part.over, small, SMALL * RISE);
      put('⁄', small, SMALL * 0.1);
      put(part.under, small, 0);
      put(part.mark, plain, 0);
    }
  }
  return { stretches, width: x };
}

function write(ctx: Pen, texts: readonly Written[]): void {
  const needed = new Set(texts.flatMap(({ stretches }) => stretches.map((one) => one.font)));
  for (const font of needed) {
    ctx.font = font;
    for (const { stretches, at, ink } of texts) {
      ctx.fillStyle = ink;
      for (const { text, font: own, x, rise } of stretches)
        if (own === font) ctx.fillText(text, at.x + x, at.y - rise);
    }
  }
}

const MOST_WIDTHS = 2000;
const widths = new Map<string, Map<string, number>>();

/** Width of a text in a font; figures come again and again, and measuring is slow. */
function widthOf(ctx: Pen, text: string, font: string): number {
  let inFont = widths.get(font);
  if (inFont === undefined) {
    inFont = new Map();
    widths.set(font, inFont);
  }
  let width = inFont.get(text);
  if (width === undefined) {
    ctx.font = font;
    width = ctx.measureText(text).width;
    // A text measured before its font came has another width.
    if (document.fonts.status !== 'loaded') return width;
    if (inFont.size >= MOST_WIDTHS) inFont.clear();
    inFont.set(text, width);
  }
  return width;
}
