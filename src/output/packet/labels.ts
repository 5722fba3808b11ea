import { numbered } from '../../cutting/numbered.ts';
import type { DrawItem } from '../../drawing/drawing.ts';
import { text } from '../../drawing/items.ts';
import { INK, TEXT } from '../../drawing/style.ts';
import { fittedSize, shortened, wrapped } from '../../drawing/text.ts';
import type { Piece } from '../../joinery/piece.ts';
import { byId } from '../../materials/lookup.ts';
import { formatLength, formatReading } from '../../measure/format.ts';
import { inches, type Mm } from '../../measure/units.ts';
import type { Plan } from '../../plan/types.ts';
import { namesAtSaw } from '../../plan/words/pieces.ts';
import type { PdfPage } from '../pdf/pdf.ts';
import type { Packet } from './leaf.ts';
import { packetFor } from './packet.ts';
import { endsWords } from './pieceWords.ts';

/** A sheet of labels that stick, as it is sold by its size: common practice, figures from memory. */
interface LabelSheet {
  readonly width: Mm;
  readonly height: Mm;
  readonly columns: number;
  readonly rows: number;
  readonly label: { readonly w: Mm; readonly h: Mm };
  /** From one to the next, and from the sheet's left and upper edge to the first. */
  readonly pitch: { readonly x: Mm; readonly y: Mm };
  readonly from: { readonly x: Mm; readonly y: Mm };
}

/** For Letter 30 of 1 by 2 5/8 in, for A4 24 of 70 by 37 mm. */
const SHEETS: { readonly [P in 'Letter' | 'A4']: LabelSheet } = {
  Letter: {
    width: inches(8.5),
    height: inches(11),
    columns: 3,
    rows: 10,
    label: { w: inches(2.625), h: inches(1) },
    pitch: { x: inches(2.75), y: inches(1) },
    from: { x: inches(0.1875), y: inches(0.5) },
  },
  A4: {
    width: 210,
    height: 297,
    columns: 3,
    rows: 8,
    label: { w: 70, h: 37 },
    pitch: { x: 70, y: 37 },
    from: { x: 0, y: 0.5 },
  },
};

/** Clear of the label's edges: printers are off by a little. */
const INSET: Mm = 3.4;
/** Room of the piece's mark, left of what is written. */
const MARK: Mm = 17;
const LEAD: Mm = 3.7;

/** Every piece of wood with where it comes from, in the order in which it leaves the saw. */
function inOrder({ plan, terms }: Packet<Plan>): { piece: Piece; from: string }[] {
  const pieces = byId(plan.joinery.pieces);
  const { labels } = terms;
  const told = (ids: readonly string[], from: string) =>
    ids.flatMap((id) => {
      const piece = pieces.get(id);
      return piece ? [{ piece, from }] : [];
    });
  return [
    ...numbered(plan.cutting.sheets).flatMap(({ number, cut }) =>
      told(
        cut.placements.map(({ piece }) => piece),
        labels.sheet(number),
      ),
    ),
    ...numbered(plan.cutting.boards).flatMap(({ number, cut }) =>
      told(
        cut.cuts.map(({ piece }) => piece),
        labels.board(number),
      ),
    ),
  ];
}

/** What stands on a label, its lower left corner at the origin. */
function drawn(
  packet: Packet<Plan>,
  piece: Piece,
  name: string,
  from: string,
  { w, h }: LabelSheet['label'],
): DrawItem[] {
  const { say } = packet;
  // A label leaves the sheet that would tell its unit.
  const measure = { ...packet.measure, bare: false };
  const told = (mm: Mm) => formatReading(mm, measure);
  const room = w - 2 * INSET - MARK;
  const note = { size: TEXT.note };
  const top = h - INSET;
  const size = fittedSize(piece.label, { size: 8, bold: true }, MARK - 2);
  const length = `${formatLength(piece.shown.length, measure)} x ${told(piece.shown.width)} x ${told(piece.thickness)}`;
  const lines = Math.floor((h - 2 * INSET) / LEAD);
  const rows = [
    ...wrapped(name, { size: TEXT.note, bold: true }, room).slice(0, Math.max(1, lines - 4)),
    ...wrapped(length, note, room),
    ...wrapped(endsWords(packet, piece), note, room),
    ...wrapped(say.stock(piece.stock), note, room),
  ].slice(0, lines);
  const bold = rows[0];
  return [
    text({ x: INSET, y: top - size * 0.72 }, piece.label, { size, bold: true }),
    text({ x: INSET, y: INSET + 0.6 }, shortened(from, note, MARK - 1), { ...note, color: INK.soft }),
    ...rows.map((row, i) =>
      text({ x: INSET + MARK, y: top - TEXT.note * 0.75 - i * LEAD }, row, { ...note, bold: row === bold }),
    ),
  ];
}

/** Labels to stick on the pieces, one for each, in the order in which they leave the saw. */
export function labelPages(plan: Plan): PdfPage[] {
  const packet = packetFor(plan);
  const sheet = SHEETS[packet.sheet.paper === 'A4' ? 'A4' : 'Letter'];
  const { title } = packet.terms.labels;
  const { columns, rows, pitch, from, label } = sheet;
  const names = namesAtSaw(plan.joinery.pieces, packet.say);
  const all = inOrder(packet);
  const perPage = columns * rows;
  return Array.from({ length: Math.ceil(all.length / perPage) }, (_, page): PdfPage => {
    const items = all.slice(page * perPage, (page + 1) * perPage).map((one, i): DrawItem => {
      const x = from.x + (i % columns) * pitch.x;
      const y = sheet.height - from.y - (Math.floor(i / columns) + 1) * pitch.y;
      const name = names.get(one.piece.id) ?? one.piece.name;
      return { kind: 'group', move: { x, y }, items: drawn(packet, one.piece, name, one.from, label) };
    });
    const { width, height } = sheet;
    return {
      width_mm: width,
      height_mm: height,
      drawing: { width, height, title, items },
      begins: page === 0 ? [title] : [],
    };
  });
}
