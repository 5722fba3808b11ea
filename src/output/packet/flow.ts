import type { DrawItem } from '../../drawing/drawing.ts';
import { line, rectangle, text } from '../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../drawing/style.ts';
import { shortened, textWidth, wrapped } from '../../drawing/text.ts';
import type { Box, Point } from '../../geometry/shape.ts';
import { pick } from '../../list/at.ts';
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
}

export const space = (height: Mm): Block => ({ height, white: true, draw: () => [] });

/** A page of blocks and how much of it they take up from the top. */
interface Filled {
  readonly height: Mm;
  readonly draw: (at: Box) => DrawItem[];
}

/** Blocks filled onto pages from the top; a heading goes with what follows it. */
export function fillPages(blocks: readonly Block[], body: Box): Filled[] {
  const pages: Block[][] = [];
  let page: Block[] = [];
  let used = 0;
  const turn = () => {
    while (page.at(-1)?.white) page.pop();
    if (page.length > 0) pages.push(page);
    page = [];
    used = 0;
  };
  for (let i = 0; i < blocks.length; i++) {
    const block = pick(blocks, i);
    if (block.white && (page.length === 0 || used + block.height > body.h)) continue;
    let needed = block.height;
    for (let k = i; blocks[k]?.heldToNext && blocks[k + 1]; k++) needed += pick(blocks, k + 1).height;
    if (used + needed > body.h && page.length > 0) {
      turn();
      if (block.head) {
        page.push(block.head);
        used += block.head.height;
      }
    }
    page.push(block);
    used += block.height;
  }
  turn();
  return pages.map((held) => ({
    height: held.reduce((sum, block) => sum + block.height, 0),
    draw: (room: Box) => {
      let y = room.y + room.h;
      return held.flatMap((block) => {
        const items = block.draw({ x: room.x, y }, room.w);
        y -= block.height;
        return items;
      });
    },
  }));
}

export function heading(words: string): Block {
  return {
    height: 9,
    heldToNext: true,
    draw: (at) => [text({ x: at.x, y: at.y - 6.6 }, words, { size: TEXT.large, bold: true, heading: 2 })],
  };
}

/** Running text, one block a line so that it may break over pages. */
export function paragraph(words: string, width: Mm, size: Mm = TEXT.body, indent: Mm = 0): Block[] {
  const lead = size * 1.45;
  return wrapped(words, { size }, width - indent).map((row) => ({
    height: lead,
    draw: (at) => [text({ x: at.x + indent, y: at.y - size }, row, { size })],
  }));
}

/** A bold term in a narrow column with its text beside it. */
export function entry(term: string, words: string, width: Mm, column: Mm): Block {
  const size = TEXT.body;
  const rows = wrapped(words, { size }, width - column);
  const terms = wrapped(term, { size, bold: true }, column - 3);
  const lead = size * 1.45;
  return {
    height: Math.max(rows.length, terms.length) * lead + 1.6,
    draw: (at) => [
      ...terms.map((row, i) => text({ x: at.x, y: at.y - size - i * lead }, row, { size, bold: true })),
      ...rows.map((row, i) => text({ x: at.x + column, y: at.y - size - i * lead }, row, { size })),
    ],
  };
}

export interface Column {
  readonly title: string;
  /** Share of the width; columns share what there is in this ratio. */
  readonly share: number;
  /** Figures are set flush right. */
  readonly figure?: boolean | undefined;
  /** Long words of this column go on in further lines instead of being shortened. */
  readonly wraps?: boolean | undefined;
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

/** A table, one block a row; its head comes again on every page. */
export function table(
  columns: readonly Column[],
  rows: readonly Row[],
  width: Mm,
  size: Mm = TEXT.small,
): Block[] {
  const whole = columns.reduce((sum, c) => sum + c.share, 0);
  const widths = columns.map((c) => (c.share / whole) * width);
  const left = (i: number) => widths.slice(0, i).reduce((sum, w) => sum + w, 0);
  const lead = size * 1.4;
  const swatched = rows.some((row) => row.swatch);
  // Words beside a column of figures stand a little off them.
  const insetOf = (i: number) =>
    i === 0 ? (swatched ? SWATCH : 0) : columns[i - 1]?.figure && !columns[i]?.figure ? 2 : 0;
  const cell = (words: string, i: number, at: Point, bold: boolean, leadsTo?: string): DrawItem => {
    const column = pick(columns, i);
    const inset = insetOf(i);
    const room = pick(widths, i) - 2 * PAD - inset;
    const fit = shortened(words, { size, bold }, room);
    const x = at.x + left(i) + PAD + inset + (column.figure ? room - textWidth(fit, { size, bold }) : 0);
    return text({ x, y: at.y - size - 0.8 }, fit, { size, bold, leadsTo });
  };
  const rule = (at: Point, y: Mm, weight: Mm) =>
    line({ x: at.x, y }, { x: at.x + width, y }, { stroke: INK.line, width: weight });
  const headHeight = lead + 2.6;
  const head: Block = {
    height: headHeight,
    heldToNext: true,
    draw: (at) => [
      rectangle({ x: at.x, y: at.y - headHeight, w: width, h: headHeight }, { fill: INK.tint }),
      ...columns.map((c, i) => cell(c.title, i, { x: at.x, y: at.y - 0.6 }, true)),
      rule(at, at.y, WEIGHT.middle),
      rule(at, at.y - headHeight, WEIGHT.fine),
    ],
  };
  const titleRow = ([words = '']: readonly string[]): Block => {
    const height = lead + 3.6;
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
  const body = rows.map((row): Block => {
    if (row.title) return titleRow(row.cells);
    const bold = row.bold ?? false;
    const cells = row.cells.map((words, i) => {
      const column = columns[i];
      const room = pick(widths, i) - 2 * PAD - insetOf(i);
      return column?.wraps ? wrapped(words, { size, bold }, room) : [words];
    });
    const lines = Math.max(1, ...cells.map((c) => c.length));
    const height = lines * lead + 1.4;
    return {
      height,
      head,
      draw: (at) => [
        ...cells.flatMap((rows, i) =>
          rows.map((words, k) =>
            cell(words, i, { x: at.x, y: at.y - k * lead }, bold, i === 0 ? row.leadsTo : undefined),
          ),
        ),
        ...(row.swatch
          ? row.swatch({ x: at.x + PAD, y: at.y - lead - 0.4, w: SWATCH - 2, h: lead - 0.4 })
          : []),
        rule(at, at.y - height, WEIGHT.hair),
      ],
    };
  });
  return [head, ...body];
}
