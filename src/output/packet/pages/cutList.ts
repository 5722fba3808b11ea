import { placeOfPiece } from '../../../cutting/drawingText.ts';
import { moved, rectangle, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { shortened } from '../../../drawing/text.ts';
import { boxOfPoints } from '../../../geometry/ring.ts';
import { SAME_PLACE } from '../../../geometry/tolerance.ts';
import { groupPieces, type PieceGroup } from '../../../joinery/label.ts';
import { otherEdge } from '../../../joinery/lengths.ts';
import type { Notch, Piece, PieceEnd } from '../../../joinery/piece.ts';
import { pieceDrawing } from '../../../joinery/pieceDrawing.ts';
import type { Mm } from '../../../measure/units.ts';
import { pieceNames } from '../../../plan/words/pieces.ts';
import { curveWords, followWords, readWords, tapeWords } from '../../../plan/words/tape.ts';
import { type Block, type ColumnOf, heading, paragraph, space, tableOf } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';
import { endMarks, endsWords, notchWords } from '../pieceWords.ts';
import { archBlocks } from './arches.ts';
import { cornerBlocks } from './corners.ts';
import { curveBlocks } from './curves.ts';
import { notchBlocks } from './notches.ts';

function listOf(packet: Packet, width: Mm): Block[] {
  const { say, told } = packet;
  const terms = packet.terms.cutList;
  const all = groupPieces(packet.plan.joinery.pieces);
  return (['flat', 'shaped', 'sheet'] as const).flatMap((form) => {
    const own = all.filter(({ pieces }) => pieces[0].form === form);
    if (own.length === 0) return [];
    const otherOf = (piece: Piece) => {
      const other = otherEdge(piece);
      return other ? told(other.shown) : '';
    };
    const slanted = own.some(({ pieces: [piece] }) => otherEdge(piece) !== null);
    const other: ColumnOf<PieceGroup> = [terms.other, 2.4, ({ pieces: [piece] }) => otherOf(piece), 'figure'];
    const columns: ColumnOf<PieceGroup>[] = [
      [terms.label, 1.7, ({ label }) => label],
      [terms.count, 1, ({ quantity }) => String(quantity), 'figure'],
      // Where no end is slanted, no piece has another length along its other edge: names get the room.
      [terms.name, slanted ? 3.5 : 5.9, ({ pieces }) => pieceNames(pieces, say).join(', ')],
      [terms.stock, 3.1, ({ pieces: [piece] }) => say.stock(piece.stock)],
      [terms.length, 2.4, ({ pieces: [piece] }) => told(piece.shown.length), 'figure'],
      ...(slanted ? [other] : []),
      [terms.width, 2.2, ({ pieces: [piece] }) => told(piece.shown.width), 'figure'],
      [terms.thickness, 1.9, ({ pieces: [piece] }) => told(piece.thickness), 'figure'],
      [terms.ends, 4.6, (group) => endsOf(packet, group)],
    ];
    const rows = tableOf(columns, own, width, ({ label }) => ({ leadsTo: placeOfPiece(label) }));
    return [heading(packet.terms.form[form]), ...rows, space(3)];
  });
}

/** How a piece is read and sawn: its tape edge, ends, curves and notches, and what is measured in place. */
function endsOf(packet: Packet, { pieces }: PieceGroup): string {
  const { plan, say, measure, words } = packet;
  const terms = packet.terms.cutList;
  const [piece] = pieces;
  const has = (groove: boolean) => piece.notches.some(({ side }) => (side === 'groove') === groove);
  const toFit = piece.fit.inPlace && !piece.fit.read;
  return [
    tapeWords(piece, words.tape),
    piece.ends.every((end) => end.cut === 'sawn') ? '' : endsWords(packet, piece),
    curveWords(piece, words.tape, measure),
    has(false) ? terms.notched : '',
    has(true) ? terms.grooved : '',
    toFit ? terms.inPlace(packet.told(piece.fit.allowance)) : readWords(piece, words.tape, measure),
    ...new Set(pieces.map(({ part }) => followWords(part, plan.layout, words.tape, say.name))),
  ]
    .filter((words) => words !== '')
    .join('; ');
}

const CELL = { height: 44, gap: 4 } as const;

/** Drawings of two pieces side by side, each in a frame with its count and name. */
function drawingRow(packet: Packet, row: readonly PieceGroup[], width: Mm): Block {
  const terms = packet.terms.cutList;
  const cellWidth = (width - CELL.gap) / 2;
  const words = {
    length: packet.told,
    end: (end: PieceEnd) => endMarks(packet, end),
    notch: (notch: Notch) => notchWords(packet, notch),
    face: '',
  };
  return {
    height: CELL.height + CELL.gap,
    draw: (at) =>
      row.flatMap((group, i) => {
        const x = at.x + i * (cellWidth + CELL.gap);
        const y = at.y - CELL.height;
        const { quantity } = group;
        const [piece] = group.pieces;
        const name = pieceNames(group.pieces, packet.say).join(', ');
        const title = `${quantity > 1 ? `${terms.times(quantity)}: ` : ''}${name}`;
        const stock = `${packet.say.stock(piece.stock)}, ${words.length(piece.shown.width)} x ${words.length(piece.thickness)}`;
        const drawing = pieceDrawing(piece, { width: cellWidth - 4, height: CELL.height - 12 }, words);
        return [
          rectangle({ x, y, w: cellWidth, h: CELL.height }, { stroke: INK.faint, width: WEIGHT.thin }),
          text(
            { x: x + 2, y: at.y - 4.2 },
            shortened(title, { size: TEXT.small, bold: true }, cellWidth - 4),
            {
              size: TEXT.small,
              bold: true,
            },
          ),
          text({ x: x + 2, y: at.y - 7.6 }, shortened(stock, { size: TEXT.note }, cellWidth - 4), {
            size: TEXT.note,
            color: INK.soft,
          }),
          moved({ x: x + 2, y: y + 1.5 }, drawing.items),
        ];
      }),
  };
}

/** Pieces worth a drawing: those whose shape the list does not tell. */
const needsDrawing = ({ pieces: [piece] }: PieceGroup): boolean => {
  const plain =
    piece.notches.length === 0 &&
    piece.scribed === undefined &&
    piece.ends.every((end) => end.miter === 0 && end.bevel === 0 && end.second === null);
  const box = boxOfPoints(piece.outline);
  const rectangular =
    piece.outline.length === 4 && Math.abs(box.w - piece.length) < SAME_PLACE && piece.holes.length === 0;
  return !(plain && rectangular);
};

/** All pieces by their labels with lengths and ends, and a drawing of every shape that is not a plain rectangle. */
export function cutList(packet: Packet): Content[] {
  const { body } = packet;
  const terms = packet.terms.cutList;
  const all = groupPieces(packet.plan.joinery.pieces);
  const single = all.map(({ pieces }) => pieces[0]);
  const list = [
    ...paragraph(terms.lead, body.w),
    space(2),
    ...listOf(packet, body.w),
    ...notchBlocks(packet, single, body.w),
    ...cornerBlocks(packet, single, body.w),
    ...curveBlocks(packet, single, body.w),
    ...archBlocks(packet, body.w),
  ];
  const drawn = all.filter(needsDrawing);
  const rows: Block[] = [];
  for (let i = 0; i < drawn.length; i += 2) rows.push(drawingRow(packet, drawn.slice(i, i + 2), body.w));
  return [
    { title: packet.terms.titles.cutList, blocks: list },
    { title: packet.terms.titles.pieces, blocks: rows },
  ];
}
