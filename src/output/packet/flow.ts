import type { DrawItem } from '../../drawing/drawing.ts';
import { line, rectangle, text } from '../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { type TextStyle, textWidth, wrapped } from '../../drawing/text.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { entryAt, pick } from '../../list/at.ts';
import type { Mm } from '../../measure/units.ts';

/** Something of a known height that is set below what comes before it. */
export interface Block {
  readonly height: Mm;
  /** `at` is the upper left corner. */
  readonly draw: (at: Point, width: Mm) => DrawItem[];
  /** Repeated on top when a page begins within a table. */
  readonly head?: Block | undefined;
  /** Not to stand last on a page. */
  readonly heldToNext?: boolean | undefined;
  /** White between others: left out at the top and the foot of a page. */
  readonly white?: boolean | undefined;
  /** Heading of a section: left out at the top of a page, which has one of its own. */
  readonly begins?: Section | undefined;
}

/** Text and tables that run over upright pages, the next section behind them. */
export interface Section {
  readonly title: string;
  readonly blocks: readonly Block[];
  /** Taken out and carried along, such as a shopping list: nothing else is set on its pages. */
  readonly alone?: boolean | undefined;
}

export const space = (height: Mm): Block => ({ height, white: true, draw: () => [] });

/** A page of blocks and how much of it they take up from the top. */
interface Filled {
  readonly height: Mm;
  /** What its first block belongs to; none where no section is told. */
  readonly section: Section | undefined;
  /** Sections that begin on it. */
  readonly begins: readonly Section[];
  readonly draw: (at: Box) => DrawItem[];
}

/** No page is less full, and no section begins on less of one: a quarter of its height, and the white below a block. */
const LEAST = 0.27;

/** Blocks filled onto pages from the top; a heading goes with what follows it, and the last page is not left almost bare. */
export function fillPages(blocks: readonly Block[], body: Box): Filled[] {
  const full = filled(blocks, body.h, null);
  const last = full.length - 1;
  const isBare = (pages: readonly Filled[]) => pick(pages, pages.length - 1).height < LEAST * body.h;
  if (last < 1 || !isBare(full)) return full;
  // The page before it ends sooner, as little as that takes.
  for (let least = body.h; least > body.h / 2; least -= 2) {
    const pages = filled(blocks, body.h, { page: last - 1, h: least });
    if (pages.length === full.length && !isBare(pages)) return pages;
  }
  return full;
}

/** Pages from the top, one of them `shorter` than the others. */
function filled(blocks: readonly Block[], h: Mm, shorter: { page: number; h: Mm } | null): Filled[] {
  const pages: Filled[] = [];
  let page: Block[] = [];
  let begins: Section[] = [];
  let used = 0;
  let section: Section | undefined;
  let first: Section | undefined;
  const turn = () => {
    while (page.at(-1)?.white) page.pop();
    if (page.length > 0) pages.push(filledWith(page, first, begins));
    page = [];
    begins = [];
    used = 0;
  };
  const put = (block: Block) => {
    if (page.length === 0) first = section;
    page.push(block);
    used += block.height;
  };
  blocks.forEach((block, i) => {
    const room = shorter?.page === pages.length ? shorter.h : h;
    if (block.white && (page.length === 0 || used + block.height > room)) return;
    if (used + neededFrom(blocks, i, h) > room && page.length > 0) {
      turn();
      if (block.head) put(block.head);
    }
    if (block.begins) {
      section = block.begins;
      begins.push(section);
      if (page.length === 0) return;
    }
    put(block);
  });
  turn();
  return pages;
}

/** Height of a block and what is not to part from it; of a section so much that it is worth beginning on a page. */
function neededFrom(blocks: readonly Block[], i: number, h: Mm): Mm {
  const { begins, height } = pick(blocks, i);
  let needed = height;
  for (let k = i; k + 1 < blocks.length; k++) {
    const { begins: other } = pick(blocks, k + 1);
    const held = pick(blocks, k).heldToNext || (begins && !other && needed < LEAST * h);
    if (!held) return needed;
    needed += pick(blocks, k + 1).height;
  }
  return needed;
}

function filledWith(
  blocks: readonly Block[],
  section: Section | undefined,
  begins: readonly Section[],
): Filled {
  return {
    height: blocks.reduce((sum, block) => sum + block.height, 0),
    section,
    begins,
    draw: ({ x, y, w, h }: Box) => stacked(blocks, { x, y: y + h }, w),
  };
}

/** Blocks one below the other, from their upper left corner. */
export function stacked(blocks: readonly Block[], { x, y }: Point, width: Mm): DrawItem[] {
  let top = y;
  return blocks.flatMap((block) => {
    const items = block.draw({ x, y: top }, width);
    top -= block.height;
    return items;
  });
}

/** None of them parts from what comes next. */
export const held = (blocks: readonly Block[]): Block[] =>
  blocks.map((block) => ({ ...block, heldToNext: true }));

export function heading(words: string): Block {
  return {
    height: 9,
    heldToNext: true,
    draw: (at) => [text({ x: at.x, y: at.y - 6.6 }, words, { size: TEXT.large, bold: true, heading: 2 })],
  };
}

/** Running text, one block a line so that it may break over pages, but leaves no line alone on one. */
export function paragraph(words: string, width: Mm, size: Mm = TEXT.body): Block[] {
  const lead = size * 1.45;
  return wrapped(words, { size }, width).map((row, i, rows) => ({
    height: lead,
    heldToNext: i + 1 < rows.length && (i === 0 || i === rows.length - 2),
    draw: (at) => [text({ x: at.x, y: at.y - size }, row, { size })],
  }));
}

/** A table with what explains it below: neither comes on a page without the other's nearest lines. */
export function withNote(rows: readonly Block[], note: readonly Block[]): Block[] {
  return [...rows.slice(0, -1), ...held([...rows.slice(-1), space(1.5)]), ...note];
}

/** A table below what leads to it, which does not stay behind on the page before. */
export const led = (lead: readonly Block[], rows: readonly Block[]): Block[] => [
  ...held([...lead, space(1.5)]),
  ...rows,
];

/** Lines that stay together: what has more goes on as further blocks, so that none is higher than a page. */
const TOGETHER = 14;

/** Lines in groups that each stay together; one group where all may. */
export function groupsOf<T>(rows: readonly T[]): T[][] {
  const groups = Math.max(1, Math.ceil(rows.length / TOGETHER));
  const size = Math.ceil(rows.length / groups);
  return Array.from({ length: groups }, (_, i) => rows.slice(i * size, (i + 1) * size));
}

/** A bold term in a narrow column with its text beside it. */
export function entry(term: string, words: string, width: Mm, column: Mm): Block[] {
  const size = TEXT.body;
  const groups = groupsOf(wrapped(words, { size }, width - column));
  const terms = wrapped(term, { size, bold: true }, column - 3);
  const lead = size * 1.45;
  return groups.map((rows, k) => ({
    height: Math.max(rows.length, k === 0 ? terms.length : 0) * lead + (k === groups.length - 1 ? 1.6 : 0),
    draw: (at) => [
      ...(k === 0 ? terms : []).map((row, i) =>
        text({ x: at.x, y: at.y - size - i * lead }, row, { size, bold: true }),
      ),
      ...rows.map((row, i) => text({ x: at.x + column, y: at.y - size - i * lead }, row, { size })),
    ],
  }));
}

export interface Column {
  readonly title: string;
  /** Share of the width; columns share it in this ratio, as far as each holds its longest word and figure. */
  readonly share: number;
  /** Figures are set flush right, and on one line as long as there is room. */
  readonly figure?: boolean | undefined;
  /** What a saw is set to: read from where one stands at it. */
  readonly saw?: boolean | undefined;
}

export interface Row {
  readonly cells: readonly string[];
  /** A title over the rows that follow it: its first cell alone, over the whole width. */
  readonly title?: boolean | undefined;
  readonly bold?: boolean | undefined;
  /** Place that its first cell leads to. */
  readonly leadsTo?: string | undefined;
  /** A small swatch before the first cell. */
  readonly swatch?: ((box: Box) => DrawItem[]) | undefined;
}

const PAD: Mm = 1.5;
const SWATCH: Mm = 8;
/** From line to line of a cell, by its size. */
const LEADING = 1.4;

/** A table, one block a row; its head comes again on every page. No cell is cut short: what has no room goes on below. */
export function table(columns: readonly Column[], rows: readonly Row[], width: Mm): Block[] {
  const size = TEXT.small;
  const sizeOf = ({ saw }: Column): Mm => (saw ? Math.max(TEXT.figure, size) : size);
  // Lines of a row stand on one height, whatever size they are set in.
  const tall = Math.max(size, ...columns.map(sizeOf));
  const swatched = rows.some((row) => row.swatch);
  // Words beside a column of figures stand a little off them.
  const insets = columns.map(({ figure }, i) => {
    if (i === 0) return swatched ? SWATCH : 0;
    return columns[i - 1]?.figure && !figure ? 2 : 0;
  });
  const beside = (i: number) => 2 * PAD + pick(insets, i);
  const widths = widthsOf(columns, rows, width, beside, size, sizeOf);
  const left = (i: number) => widths.slice(0, i).reduce((sum, w) => sum + w, 0);
  const linesOf = (words: string, i: number, look: TextStyle) =>
    wrapped(words, look, pick(widths, i) - beside(i));
  const cell = (words: string, i: number, at: Point, look: TextStyle, leadsTo?: string): DrawItem => {
    const spare = pick(widths, i) - beside(i) - textWidth(words, look);
    const x = at.x + left(i) + PAD + pick(insets, i) + (pick(columns, i).figure ? spare : 0);
    return text({ x, y: at.y }, words, { ...look, leadsTo });
  };
  /** Lines of cells, the first of them on one height. */
  const cellsAt = (
    cells: readonly (readonly string[])[],
    at: Point,
    looks: readonly TextStyle[],
    leadsTo?: string,
  ) => {
    const first = at.y - Math.max(...looks.map((look) => look.size)) - 0.8;
    return cells.flatMap((lines, i) => {
      const look = pick(looks, i);
      return lines.map((words, k) =>
        cell(words, i, { x: at.x, y: first - k * look.size * LEADING }, look, i === 0 ? leadsTo : undefined),
      );
    });
  };
  const heightOf = (cells: readonly (readonly string[])[], looks: readonly TextStyle[]) => {
    const [high] = looks.map((look) => look.size).sort((a, b) => b - a);
    const below = cells.map((lines, i) => (lines.length - 1) * pick(looks, i).size * LEADING);
    return (high ?? size) * LEADING + Math.max(0, ...below);
  };
  const rule = (at: Point, y: Mm, weight: Mm) =>
    line({ x: at.x, y }, { x: at.x + width, y }, { stroke: INK.line, width: weight });
  const looksOf = (bold: boolean) => columns.map((column) => ({ size: sizeOf(column), bold }));
  const headLooks = columns.map(() => ({ size, bold: true }));
  const titles = columns.map(({ title }, i) => linesOf(title, i, pick(headLooks, i)));
  const headHeight = heightOf(titles, headLooks) + 2.6;
  const head: Block = {
    height: headHeight,
    heldToNext: true,
    draw: (at) => [
      rectangle({ x: at.x, y: at.y - headHeight, w: width, h: headHeight }, { fill: INK.tint }),
      ...cellsAt(titles, { x: at.x, y: at.y - 0.6 }, headLooks),
      rule(at, at.y, WEIGHT.middle),
      rule(at, at.y - headHeight, WEIGHT.fine),
    ],
  };
  const titleRow = ([words = '']: readonly string[]): Block => {
    const height = size * LEADING + 3.6;
    return {
      height,
      head,
      heldToNext: true,
      draw: (at) => [
        text({ x: at.x + PAD, y: at.y - size - 2.4 }, words, { size, bold: true }),
        rule(at, at.y - height, WEIGHT.thin),
      ],
    };
  };
  const body = rows.flatMap((row, i): Block[] => {
    if (row.title) return [titleRow(row.cells)];
    const bold = row.bold ?? false;
    const looks = looksOf(bold);
    const cells = row.cells.map((words, i) => groupsOf(linesOf(words, i, pick(looks, i))));
    const groups = Math.max(...cells.map((own) => own.length));
    return Array.from({ length: groups }, (_, k): Block => {
      const own = cells.map((group) => entryAt(group, k) ?? []);
      const last = k === groups - 1;
      const height = heightOf(own, looks) + (last ? 1.4 : 0);
      return {
        height,
        head,
        // No row stands alone at the top of a page, nor below the head at its foot.
        heldToNext: rows.length > 1 && ((k === 0 && i === 0) || (last && i === rows.length - 2)),
        draw: (at) => [
          ...cellsAt(own, at, looks, k === 0 ? row.leadsTo : undefined),
          ...(row.swatch && k === 0
            ? row.swatch({
                x: at.x + PAD,
                y: at.y - tall * LEADING - 0.4,
                w: SWATCH - 2,
                h: tall * LEADING - 0.4,
              })
            : []),
          ...(last ? [rule(at, at.y - height, WEIGHT.hair)] : []),
        ],
      };
    });
  });
  return [head, ...body];
}

/** A column's title and share, and what each entry has in it; what is for the saw is a figure. */
export type ColumnOf<T> = readonly [
  title: string,
  share: number,
  cell: (entry: T) => string,
  as?: 'figure' | 'saw',
];

/** A table of entries, a row each, which may look otherwise than plain; none where there are no entries. */
export function tableOf<T>(
  columns: readonly ColumnOf<T>[],
  entries: readonly T[],
  width: Mm,
  look: (entry: T) => Omit<Row, 'cells'> = () => ({}),
): Block[] {
  if (entries.length === 0) return [];
  return table(
    columns.map(([title, share, , as]) => ({ title, share, figure: as !== undefined, saw: as === 'saw' })),
    entries.map((entry) => ({ ...look(entry), cells: columns.map(([, , cell]) => cell(entry)) })),
    width,
  );
}

/**
 * Widths of the columns: by their shares, where one of these is too narrow for a word of its cells, or a whole figure,
 * at the cost of those that have room to spare, by how much they have.
 */
function widthsOf(
  columns: readonly Column[],
  rows: readonly Row[],
  width: Mm,
  beside: (i: number) => Mm,
  size: Mm,
  sizeOf: (column: Column) => Mm,
): Mm[] {
  const whole = columns.reduce((sum, { share }) => sum + share, 0);
  const asked = columns.map(({ share }) => (share / whole) * width);
  const least = columns.map((column, i) => {
    const { title, figure } = column;
    const words = rows.flatMap(({ cells, title: over, bold = false }) => {
      const cell = over ? undefined : entryAt(cells, i);
      if (cell === undefined) return [];
      return (figure ? [cell] : cell.split(' ')).map((word) =>
        textWidth(word, { size: sizeOf(column), bold }),
      );
    });
    const heading = title.split(' ').map((word) => textWidth(word, { size, bold: true }));
    return beside(i) + Math.max(0, ...words, ...heading) + 0.1;
  });
  const short = asked.map((w, i) => Math.max(0, pick(least, i) - w));
  const spare = asked.map((w, i) => Math.max(0, w - pick(least, i)));
  const [lacking, left] = [short, spare].map((list) => list.reduce((sum, w) => sum + w, 0)) as [Mm, Mm];
  // Where nothing helps, each gets as much of what it lacks as there is, and its words are broken.
  const given = lacking > 0 ? Math.min(1, left / lacking) : 0;
  const taken = left > 0 ? (given * lacking) / left : 0;
  return asked.map((w, i) => w + given * pick(short, i) - taken * pick(spare, i));
}
