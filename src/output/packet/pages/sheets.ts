import { numbered } from '../../../cutting/numbered.ts';
import type { CutSheet } from '../../../cutting/result.ts';
import { sheetDrawing } from '../../../cutting/sheetDrawing.ts';
import { fencedFrom, wayOf } from '../../../cutting/sheets/way.ts';
import { moved } from '../../../drawing/items.ts';
import { flatten } from '../../../drawing/walk.ts';
import type { Box } from '../../../geometry/shape.ts';
import { byId } from '../../../materials/lookup.ts';
import { formatMoney, formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, fillPages, heading, paragraph, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';

/** How high a sheet is drawn: as high as is usual, or lower where that takes fewer pages and leaves nothing out. */
const HEIGHTS = [96, 80, 68] as const satisfies Mm[];

/** A sheet with its cuts, and how much is written on its drawing. */
interface Drawn {
  readonly blocks: readonly Block[];
  readonly told: number;
}

function sheetBlocks(
  packet: Packet,
  sheet: CutSheet,
  number: number,
  { w: width, h: height }: Pick<Box, 'w' | 'h'>,
): Drawn {
  const terms = packet.terms.sheets;
  const { plan, measure, say } = packet;
  const told = (mm: Mm) => formatReading(mm, measure);
  const drawing = sheetDrawing({
    sheet,
    pieces: byId(plan.joinery.pieces),
    kerf: plan.design.shop.sheetKerf,
    text: {
      length: told,
      angle: packet.say.angle,
      offcut: (along, across) =>
        packet.terms.boards.rest(across === undefined ? told(along) : `${told(along)} x ${told(across)}`),
    },
    paper: { width, height },
  });
  const money = formatMoney(sheet.cost, plan.design.measure.currency, packet.measure.notation);
  const title = `${terms.sheet(number, say.stock(sheet.stock), told(sheet.length), told(sheet.width))}, ${sheet.owned === null ? money : terms.shelf}`;
  const picture: Block = {
    height: drawing.height + 3,
    heldToNext: true,
    draw: (at) => [moved({ x: at.x, y: at.y - drawing.height }, drawing.items)],
  };
  const rows = sheet.sequence.map((cut) => ({
    cells: [
      String(cut.number),
      terms[wayOf(cut)],
      told(cut.fence),
      terms.from[fencedFrom(cut)],
      `${told(cut.of.w)} x ${told(cut.of.h)}`,
    ],
  }));
  const columns = [
    { title: terms.number, share: 1, figure: true },
    { title: terms.kind, share: 2 },
    { title: terms.fence, share: 2, figure: true, saw: true },
    { title: terms.edge, share: 3 },
    { title: terms.of, share: 4, figure: true },
  ];
  return {
    blocks: [heading(title), picture, ...table(columns, rows, width * 0.8), space(5)],
    told: flatten(drawing.items).texts.length,
  };
}

/** Every sheet to scale, and its cuts in their order. */
export function sheets(packet: Packet): Content[] {
  const terms = packet.terms.sheets;
  const all = packet.plan.cutting.sheets;
  if (all.length === 0) return [];
  const body = bodyOf(packet.sheet);
  const bounds = packet.plan.cutting.sheetsBound.map(
    (b) =>
      `${packet.say.stock(b.stock)}: ${b.proved ? packet.terms.boards.proved : packet.terms.boards.bound(b.used, b.lowerBound)}`,
  );
  const at = (height: Mm) => {
    const drawn = numbered(all).map(({ cut, number }) =>
      sheetBlocks(packet, cut, number, { w: body.w, h: height }),
    );
    const blocks = [
      ...paragraph(terms.lead, body.w),
      ...(all.some(({ placements }) => placements.some(({ from }) => from))
        ? paragraph(terms.nested, body.w)
        : []),
      ...drawn.flatMap((one) => one.blocks),
      ...bounds.flatMap((words) => paragraph(words, body.w)),
    ];
    const told = drawn.reduce((sum, one) => sum + one.told, 0);
    return { blocks, told, pages: fillPages(blocks, body).length };
  };
  const { blocks } = HEIGHTS.map(at).reduce((best, lower) =>
    lower.pages < best.pages && lower.told >= best.told ? lower : best,
  );
  return [{ title: packet.terms.titles.sheets, blocks }];
}
