import { numbered } from '../../../cutting/numbered.ts';
import type { CutSheet } from '../../../cutting/result.ts';
import { sheetDrawing } from '../../../cutting/sheetDrawing.ts';
import { fencedFrom, wayOf } from '../../../cutting/sheets/way.ts';
import { moved } from '../../../drawing/items.ts';
import { textsOf } from '../../../drawing/walk.ts';
import type { Box } from '../../../geometry/shape.ts';
import { byId } from '../../../materials/lookup.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { type Block, fillPages, heading, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

/** How high a sheet is drawn: as high as is usual, or lower where that takes fewer pages and leaves nothing out. */
const HEIGHTS = [96, 80, 68] as const satisfies Mm[];

/** A sheet with its cuts, and how much is written on its drawing. */
interface Drawn {
  readonly blocks: readonly Block[];
  readonly told: number;
}

function sheetBlocks(
  packet: Packet<Plan>,
  sheet: CutSheet,
  number: number,
  { w: width, h: height }: Pick<Box, 'w' | 'h'>,
): Drawn {
  const terms = packet.terms.sheets;
  const { plan, say, told } = packet;
  const drawing = sheetDrawing({
    sheet,
    pieces: byId(plan.joinery.pieces),
    kerf: plan.design.shop.sheetKerf,
    text: {
      length: told,
      angle: say.angle,
      offcut: (along, across) =>
        packet.terms.boards.rest(across === undefined ? told(along) : `${told(along)} x ${told(across)}`),
    },
    paper: { width, height },
  });
  const title = `${terms.sheet(number, say.stock(sheet.stock), told(sheet.length), told(sheet.width))}, ${sheet.owned === null ? packet.money(sheet.cost) : terms.shelf}`;
  const picture: Block = {
    height: drawing.height + 3,
    heldToNext: true,
    draw: (at) => [moved({ x: at.x, y: at.y - drawing.height }, drawing.items)],
  };
  const rows = tableOf(
    [
      [terms.number, 1, (cut) => String(cut.number), 'figure'],
      [terms.kind, 2, (cut) => terms[wayOf(cut)]],
      [terms.fence, 2, (cut) => told(cut.fence), 'saw'],
      [terms.edge, 3, (cut) => terms.from[fencedFrom(cut)]],
      [terms.of, 4, ({ of }) => `${told(of.w)} x ${told(of.h)}`, 'figure'],
    ],
    sheet.sequence,
    width * 0.8,
  );
  return {
    blocks: [heading(title), picture, ...rows, space(5)],
    told: textsOf(drawing.items).length,
  };
}

/** Every sheet to scale, and its cuts in their order. */
export function sheets(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.sheets;
  const { body } = packet;
  const all = packet.plan.cutting.sheets;
  if (all.length === 0) return [];
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
