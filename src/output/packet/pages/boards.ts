import { boardDrawing } from '../../../cutting/boardDrawing.ts';
import { numbered } from '../../../cutting/numbered.ts';
import type { CutBoard } from '../../../cutting/result.ts';
import { moved, text } from '../../../drawing/items.ts';
import { TEXT } from '../../../drawing/style.ts';
import { unusedOn } from '../../../job/unused.ts';
import { byId } from '../../../materials/lookup.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { type Block, heading, paragraph, space } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

/** Boards of a stock are drawn this high where that takes a larger scale than those of others have. */
const HIGH: Mm = 7;

function boardBlock(
  packet: Packet<Plan>,
  board: CutBoard,
  number: number,
  longest: Mm,
  width: Mm,
  heldToNext: boolean,
): Block {
  const terms = packet.terms.boards;
  const { plan, told } = packet;
  const stock = plan.stocks.get(board.stock);
  const drawing = boardDrawing({
    board,
    pieces: byId(plan.joinery.pieces),
    width: stock && stock.form !== 'sheet' ? stock.width : 50,
    unused: unusedOn(board, plan.design),
    text: { length: told, angle: packet.say.angle, offcut: (along) => terms.rest(told(along)) },
    paper: width,
    longest,
  });
  const cost = board.owned === null ? `, ${packet.money(board.cost)}` : '';
  const title = `${terms.board(number, told(board.length), board.owned !== null)}${cost}`;
  return {
    height: drawing.height + 7,
    heldToNext,
    draw: (at) => [
      text({ x: at.x, y: at.y - 4 }, title, { size: TEXT.small }),
      moved({ x: at.x, y: at.y - 6 - drawing.height }, drawing.items),
    ],
  };
}

/** Every board from left to right, stock by stock, with what is known about the least that must be bought. */
export function boards(packet: Packet<Plan>): Content[] {
  const terms = packet.terms.boards;
  const { cutting } = packet.plan;
  if (cutting.boards.length === 0) return [];
  const { body } = packet;
  const longest = Math.max(...cutting.boards.map((b) => b.length));
  const stocks = [...new Set(cutting.boards.map((b) => b.stock))];
  const blocks = stocks.flatMap((stock): Block[] => {
    const own = numbered(cutting.boards).filter(({ cut }) => cut.stock === stock);
    const bound = cutting.boardsBound.find((b) => b.stock === stock);
    const told = bound ? (bound.proved ? terms.proved : terms.bound(bound.used, bound.lowerBound)) : '';
    const wide = packet.plan.stocks.get(stock);
    // Narrow stock to a larger scale, as far as its longest board has room.
    const enough = wide && wide.form !== 'sheet' ? (wide.width * body.w) / HIGH : longest;
    const filling = Math.max(Math.min(longest, enough), ...own.map(({ cut }) => cut.length));
    return [
      heading(packet.say.stock(stock)),
      ...own.map(({ cut, number }, i) =>
        boardBlock(packet, cut, number, filling, body.w, told !== '' && i === own.length - 1),
      ),
      ...(told === '' ? [] : paragraph(told, body.w, TEXT.small)),
      space(2),
    ];
  });
  return [
    { title: packet.terms.titles.boards, blocks: [...paragraph(terms.lead, body.w), space(2), ...blocks] },
  ];
}
