import type { DrawItem } from '../drawing/drawing.ts';
import { lines, shape, text } from '../drawing/items.ts';
import { DASH, INK, PATTERN_TEXT, WEIGHT } from '../drawing/style.ts';
import { fittedSize, shortened, wrapped } from '../drawing/text.ts';
import { pathOfBox } from '../geometry/path.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { inches, MM_PER_INCH, type Mm } from '../measure/units.ts';
import type { Cell } from './cells.ts';
import type { PatternWords } from './words.ts';

/** What stands in the measuring square of a page. */
export interface Plate {
  readonly cell: Cell;
  readonly keyMap: KeyMap;
  readonly title: string;
  readonly note: string;
  readonly design: string;
  /** Where the cell's lower left corner lies in the pattern. */
  readonly place: string;
  /** Parts of the pattern have no page, since only lines for laying it on the work are there. */
  readonly bare: boolean;
  readonly page: number;
  readonly of: number;
  readonly unit: 'in' | 'mm';
  readonly terms: PatternWords;
}

export const squareSide = (unit: 'in' | 'mm'): Mm => (unit === 'in' ? inches(2) : 50);

const LIGHT = { stroke: INK.line, width: WEIGHT.thin };

/** What all plates of a pattern show of its pages, and a page's box as it stands there. */
interface KeyMap {
  readonly items: readonly DrawItem[];
  readonly small: (box: Box) => Box;
}

/** Left free within the square, and the height of the key map in it. */
const PAD: Mm = 2.5;
const KEY_MAP_HEIGHT: Mm = 20;

/**
 * Small plan of the whole pattern with all its pages; what has no page is left bare.
 *
 * @param whole of the whole pattern, pages or not
 */
export function keyMapOf(whole: Box, cells: readonly Cell[], unit: Plate['unit']): KeyMap {
  const side = squareSide(unit);
  const wide = (side - 2 * PAD) * 0.45;
  const room = { x: side - PAD - wide, y: side - PAD - KEY_MAP_HEIGHT, w: wide, h: KEY_MAP_HEIGHT };
  const { x: x0, y: y0, w, h } = whole;
  const k = Math.min(room.w / w, room.h / h);
  const at = { x: room.x + (room.w - k * w) / 2, y: room.y + (room.h - k * h) / 2 };
  const small = (b: Box): Box => ({
    x: at.x + k * (b.x - x0),
    y: at.y + k * (b.y - y0),
    w: k * b.w,
    h: k * b.h,
  });
  const all = cells.flatMap((cell) => pathOfBox(small(cell.box)));
  const items = [
    shape(pathOfBox(small(whole)), { stroke: INK.soft, width: WEIGHT.hair, dash: DASH.dotted }),
    shape(all, { stroke: INK.line, width: WEIGHT.hair }),
  ];
  return { items, small };
}

/**
 * The sides of the square, as a filled band about its true lines: renderers push strokes onto whole pixels,
 * which is enough to read a pixel too much, but they leave fills where they are.
 */
function squareFrame(side: Mm): DrawItem {
  const half = WEIGHT.thin / 2;
  const band = (by: Mm) => pathOfBox({ x: -by, y: -by, w: side + 2 * by, h: side + 2 * by });
  return shape([...band(half), ...band(-half)], { fill: INK.line, fillRule: 'evenodd' });
}

const LEADING = 1.3;

/** A row of the plate; of those that have no room the ones of the highest rank are left out. */
interface Row {
  readonly words: string;
  readonly size: Mm;
  readonly bold: boolean;
  readonly rank: number;
}

/**
 * What stands below the key map, from the top, no higher than `height` from the first row to the last. What must be
 * read on the page itself goes before the rest, which the cover of the file tells whole.
 */
function rowsIn(plate: Plate, room: Mm, height: Mm): Row[] {
  const { terms } = plate;
  const small = { size: PATTERN_TEXT.note, bold: false };
  const strong = { size: PATTERN_TEXT.small, bold: true };
  const note = (words: string, rank: number): Row[] =>
    words === '' ? [] : wrapped(words, small, room).map((row) => ({ ...small, words: row, rank }));
  const printed = wrapped(terms.print, small, room).length;
  const rows: Row[] = [
    ...wrapped(plate.title, strong, room).map((words, i) => ({ ...strong, words, rank: i === 0 ? 0 : 4 })),
    ...note([terms.print, plate.note].filter(Boolean).join(' '), 5).map((row, i) =>
      i < printed ? { ...row, rank: 1 } : row,
    ),
    ...note(plate.page === 1 ? terms.caution : '', 2),
    ...note(plate.bare ? terms.bare : '', 3),
    { ...small, words: plate.place, rank: 6 },
    { ...small, words: plate.design, rank: 7 },
  ];
  // The first row takes no room above it.
  let left = height;
  const kept = new Set<Row>();
  for (const row of [...rows].sort((a, b) => a.rank - b.rank)) {
    if (kept.size > 0 && row.size * LEADING > left) break;
    if (kept.size > 0) left -= row.size * LEADING;
    kept.add(row);
  }
  return rows.filter((row) => kept.has(row));
}

/** The measuring square with the page's name, key map and title in it, its lower left corner at the origin. */
export function drawPlate(plate: Plate): DrawItem[] {
  const side = squareSide(plate.unit);
  const pad = PAD;
  const room = side - 2 * pad;
  const name = `${plate.page}`;
  const big = 10;
  const nameRoom = room * 0.5;
  const items: DrawItem[] = [squareFrame(side)];
  items.push(
    text({ x: pad, y: side - pad - big * 0.72 }, name, {
      size: fittedSize(name, { size: big, bold: true }, nameRoom),
      bold: true,
    }),
    text({ x: pad, y: side - pad - big * 0.72 - 4 }, plate.terms.pageOf(plate.page, plate.of), {
      size: PATTERN_TEXT.small,
    }),
    ...plate.keyMap.items,
    shape(pathOfBox(plate.keyMap.small(plate.cell.box)), { fill: INK.line }),
  );
  let y = side - pad - 24;
  for (const { words, bold, size } of rowsIn(plate, room, y - pad - 2.8)) {
    items.push(text({ x: pad, y }, shortened(words, { size, bold }, room), { size, bold }));
    y -= size * LEADING;
  }
  items.push(
    text({ x: side / 2, y: 1 }, plate.terms.square[plate.unit], {
      size: PATTERN_TEXT.note,
      anchor: 'middle',
      color: INK.soft,
    }),
  );
  return items;
}

export const RULER_HEIGHT: Mm = 10;

/** Longest ruler that fits, in whole centimeters and whole inches as near to each other as they come. */
export function rulerLength(room: Mm): { mm: number; in: number } {
  const whole = Math.min(100, Math.floor(Math.max(room, 0) / 10) * 10);
  return { mm: whole, in: Math.min(4, Math.floor(Math.max(room, 0) / MM_PER_INCH)) };
}

/** A ruler with millimeters below and inches above, both from the same zero at the origin's left end. */
export function drawRuler(length: { mm: number; in: number }, words: PatternWords): DrawItem[] {
  const pairs: [Point, Point][] = [];
  const high = RULER_HEIGHT;
  for (let mm = 0; mm <= length.mm; mm++) {
    const tick = mm % 10 === 0 ? 3.2 : mm % 5 === 0 ? 2.2 : 1.2;
    pairs.push([
      { x: mm, y: 0 },
      { x: mm, y: tick },
    ]);
  }
  for (let eighth = 0; eighth <= length.in * 8; eighth++) {
    const tick = eighth % 8 === 0 ? 3.2 : eighth % 4 === 0 ? 2.2 : 1.2;
    const x = inches(eighth / 8);
    pairs.push([
      { x, y: high },
      { x, y: high - tick },
    ]);
  }
  const end = Math.max(length.mm, inches(length.in));
  pairs.push(
    [
      { x: 0, y: 0 },
      { x: end, y: 0 },
    ],
    [
      { x: 0, y: high },
      { x: end, y: high },
    ],
  );
  const figure = { size: 1.9, anchor: 'start' as const };
  const items: DrawItem[] = [lines(pairs, LIGHT)];
  for (let mm = 10; mm <= length.mm; mm += 10) {
    items.push(text({ x: mm - 0.4, y: 1.8 }, String(mm), { ...figure, anchor: 'end' }));
  }
  for (let inch = 1; inch <= length.in; inch++) {
    items.push(text({ x: inches(inch) - 0.4, y: high - 3.2 }, String(inch), { ...figure, anchor: 'end' }));
  }
  items.push(
    text({ x: 0.8, y: 3.1 }, words.ruler.mm, figure),
    text({ x: 0.8, y: high - 4.3 }, words.ruler.in, figure),
  );
  return items;
}
