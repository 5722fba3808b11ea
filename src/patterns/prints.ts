import type { DrawItem } from '../drawing/drawing.ts';
import { lines, text } from '../drawing/items.ts';
import { INK, PATTERN_TEXT, WEIGHT } from '../drawing/style.ts';
import { shortened } from '../drawing/text.ts';
import { pathOfBox } from '../geometry/path.ts';
import type { Box, Point } from '../geometry/shape.ts';
import { at as numberAt, pick } from '../list/at.ts';
import { wholeUp } from '../measure/round.ts';
import type { Mm } from '../measure/units.ts';
import { type Print, type PrintedSign, printOf } from './kind/print.ts';
import { type PageSetup, type Sheet, sheetsOf } from './paper.ts';
import type { PatternPage, PatternSet } from './result.ts';
import { onShelves } from './shelves.ts';

/** All signs that are printed in color: small ones share pages. */
export interface PrintsPattern {
  readonly kind: 'prints';
  readonly signs: readonly PrintedSign[];
}

/** Beside the picture on every side, for trim marks; below it also for the name of the page. Our own choice. */
const GUTTER: Mm = 5;
const NAMES: Mm = 9;
/** Between two pictures on one page. */
const APART: Mm = 5;
/** A tick of a trim mark ends so far from the picture. */
const CLEAR: Mm = 1;
/** On every page a line to measure. */
const RULE: Mm = 50;
const TICK = { stroke: INK.line, width: WEIGHT.hair } as const;

/** Room for pictures on a sheet. */
interface Room {
  readonly sheet: Sheet;
  readonly w: Mm;
  readonly h: Mm;
}

const roomOn = (sheet: Sheet): Room => ({
  sheet,
  w: sheet.room.w - 2 * GUTTER,
  h: sheet.room.h - 2 * GUTTER - NAMES,
});

/** A part of a picture on a page. */
interface Shown {
  readonly print: Print;
  /** Of the picture, in its own coordinates. */
  readonly window: Box;
  /** Where the window's lower left lies on the page's room. */
  readonly at: Point;
  /** Where this page is trimmed, and where the next one is laid to, in the picture's coordinates. */
  readonly trim: { readonly x: readonly Mm[]; readonly y: readonly Mm[] };
}

/**
 * The pages of printed signs, true to size. What fits a page stands on one, with others where there is room; what is
 * larger is tiled evenly, each page with the overlap of the next at its right and its top, and ticks at the lines to trim
 * and to lay to. Nothing stands on the pictures themselves. Null where the paper leaves no room.
 */
export function printSets({ signs }: PrintsPattern, setup: PageSetup): PatternSet[] | null {
  const prints = signs.map(printOf);
  const most = { w: Math.max(...prints.map(({ w }) => w)), h: Math.max(...prints.map(({ h }) => h)) };
  const rooms = sheetsOf(setup, { w: most.w + 3 * GUTTER, h: most.h + 3 * GUTTER + NAMES })
    .map(roomOn)
    .filter(({ w, h, sheet }) => Math.min(w, h) > 2 * sheet.overlap && Math.min(w, h) >= RULE);
  if (rooms.length === 0) return null;
  const fits = ({ w, h }: Room, print: Print) => print.w <= w && print.h <= h;
  /** Each print on the first of the rooms that has place for it. */
  const ganged = (inOrder: readonly Room[]): PatternSet[] =>
    inOrder.flatMap((room) => {
      const own = prints.filter((print) => inOrder.find((one) => fits(one, print)) === room);
      return own.length === 0 ? [] : [gang(own, room, setup)];
    });
  const pagesIn = (sets: readonly PatternSet[]) => sets.reduce((sum, { pages }) => sum + pages.length, 0);
  const [upright, turned] = [ganged(rooms), ganged(rooms.toReversed())];
  return [
    ...(pagesIn(turned) < pagesIn(upright) ? turned : upright),
    ...prints
      .filter((print) => !rooms.some((room) => fits(room, print)))
      .map((print) => tiled(print, rooms, setup)),
  ];
}

/** Pictures in rows on pages. */
function gang(prints: readonly Print[], room: Room, setup: PageSetup): PatternSet {
  const pages = onShelves(prints, room, APART).map((page) =>
    page.map(({ one: print, at }): Shown => {
      const window = { x: 0, y: 0, w: print.w, h: print.h };
      return { print, window, at, trim: { x: [], y: [] } };
    }),
  );
  const [only, more] = prints;
  const title = only && !more ? only.title : setup.words.prints;
  const drawn = pages.map((shown, i) =>
    pageOf(room, shown, { title, row: i, column: 0 }, i, pages.length, setup),
  );
  return setOf(only && !more ? only.for : 'prints', title, room, drawn, {
    ...{ rows: pages.length, columns: 1, paper: setup.paper.id },
    ...{ width: Math.max(...prints.map(({ w }) => w)), height: Math.max(...prints.map(({ h }) => h)) },
  });
}

/** Even stretches of a length on pages that share an overlap: where each begins, and how far on the next one does. */
function stretches(
  length: Mm,
  room: Mm,
  overlap: Mm,
): { readonly from: Mm[]; readonly step: Mm; readonly size: Mm } {
  if (length <= room) return { from: [0], step: length, size: length };
  const count = wholeUp((length - overlap) / (room - overlap));
  const step = (length - overlap) / count;
  return { from: Array.from({ length: count }, (_, i) => i * step), step, size: step + overlap };
}

function tiled(print: Print, rooms: readonly Room[], setup: PageSetup): PatternSet {
  const ways = rooms.map((room) => ({
    room,
    x: stretches(print.w, room.w, room.sheet.overlap),
    y: stretches(print.h, room.h, room.sheet.overlap),
  }));
  const { room, x, y } = pick(
    ways.toSorted((a, b) => a.x.from.length * a.y.from.length - b.x.from.length * b.y.from.length),
    0,
  );
  const [columns, rows] = [x.from.length, y.from.length];
  const inner = (all: readonly Mm[], i: number) => all.slice(i, i + 2).filter((one) => one > 0);
  const pages = Array.from({ length: rows * columns }, (_, i) => {
    const [row, column] = [Math.floor(i / columns), i % columns];
    // Rows count from the top, stretches from below.
    const up = rows - 1 - row;
    const window = { x: numberAt(x.from, column), y: numberAt(y.from, up), w: x.size, h: y.size };
    const trim = { x: inner(x.from, column), y: inner(y.from, up) };
    const shown: Shown = { print, window, at: { x: 0, y: 0 }, trim };
    return pageOf(room, [shown], { title: print.title, row, column }, i, rows * columns, setup);
  });
  const size = { width: print.w, height: print.h, paper: setup.paper.id };
  return setOf(print.for, print.title, room, pages, { rows, columns, ...size });
}

const setOf = (
  of: string,
  title: string,
  { sheet }: Room,
  pages: readonly PatternPage[],
  more: Pick<PatternSet, 'rows' | 'columns' | 'width' | 'height' | 'paper'>,
): PatternSet => ({ for: of, title, turned: sheet.turned, pages, ...more });

function pageOf(
  room: Room,
  shown: readonly Shown[],
  { title, row, column }: { readonly title: string; readonly row: number; readonly column: number },
  index: number,
  of: number,
  { words }: PageSetup,
): PatternPage {
  const { sheet } = room;
  const told = `${title}: ${words.pageOf(index + 1, of)}`;
  const origin = { x: GUTTER, y: GUTTER + NAMES };
  const pictures = shown.flatMap(({ print, window: seen, at, trim }): DrawItem[] => {
    const move = { x: origin.x + at.x - seen.x, y: origin.y + at.y - seen.y };
    return [
      { kind: 'group', move, clip: pathOfBox(seen), items: print.items },
      { kind: 'group', move, items: [ticks(seen, trim)] },
    ];
  });
  const note = [words.print, `${words.mode.printed}.`, words.rule].join(' ');
  const wide = sheet.room.w;
  const content: DrawItem = {
    kind: 'group',
    scale: sheet.scale,
    move: { x: sheet.margin.left, y: sheet.margin.bottom },
    items: [
      ...pictures,
      text({ x: 0, y: 5.2 }, shortened(told, { size: PATTERN_TEXT.body }, wide - RULE - 4), {
        size: PATTERN_TEXT.body,
      }),
      text({ x: 0, y: 1.2 }, shortened(note, { size: PATTERN_TEXT.note }, wide), { size: PATTERN_TEXT.note }),
      ruler(wide),
    ],
  };
  const first = pick(shown, 0);
  return {
    name: `${index + 1}`,
    row,
    column,
    cell: first.window,
    window: first.window,
    drawing: { width: sheet.width, height: sheet.height, title: told, items: [content] },
  };
}

/** A line of a known length, to see whether the page is printed true. */
const ruler = (wide: Mm): DrawItem =>
  lines(
    [
      [
        { x: wide - RULE, y: 6 },
        { x: wide, y: 6 },
      ],
      ...[wide - RULE, wide].map(
        (x) =>
          [
            { x, y: 4.8 },
            { x, y: 7.2 },
          ] as const,
      ),
    ],
    TICK,
  );

/** Short lines beside the window at each line where a page is trimmed or the next one is laid to. */
function ticks({ x, y, w, h }: Box, trim: Shown['trim']): DrawItem {
  const out = (low: Mm, high: Mm): [Mm, Mm][] => [
    [low - GUTTER + CLEAR, low - CLEAR],
    [high + CLEAR, high + GUTTER - CLEAR],
  ];
  return lines(
    [
      ...trim.x.flatMap((at) =>
        out(y, y + h).map(
          ([a, b]) =>
            [
              { x: at, y: a },
              { x: at, y: b },
            ] as const,
        ),
      ),
      ...trim.y.flatMap((at) =>
        out(x, x + w).map(
          ([a, b]) =>
            [
              { x: a, y: at },
              { x: b, y: at },
            ] as const,
        ),
      ),
    ],
    TICK,
  );
}
