import { scaleFor } from '../../drawing/scaleBar.ts';
import { INK, TEXT } from '../../drawing/style.ts';
import { wrapped } from '../../drawing/text.ts';
import type { Box } from '../../geometry/shape.ts';
import type { Plan } from '../../plan/types.ts';
import type { PdfPage } from '../pdf/pdf.ts';
import { Column } from './column.ts';
import { framed, packetFor } from './packet.ts';
import { pictureIn } from './pages/cover.ts';
import { roomOn } from './sheet.ts';
import { faceFigures } from './sideBySide.ts';
import { viewAt } from './view.ts';

/** The face on one page, to be shown before anything is bought: its picture, its size, and what it takes and costs. */
export function onePage(plan: Plan): PdfPage {
  const packet = packetFor(plan);
  const { cover, onePage: terms, sideBySide } = packet.terms;
  const { face, design } = plan;
  const landscape = face.width > face.height;
  const { rows, paints, notes } = faceFigures(plan);
  const sheet = roomOn(packet.sheet, landscape);
  const side = sheet.w * (landscape ? 0.3 : 0.36);
  const room = { w: sheet.w - side - 8, h: sheet.h - 2 };
  const scale = scaleFor(face.box, room, packet.unit);
  const draw = (body: Box) => {
    const h = face.height / scale;
    const picture = { ...room, x: body.x, y: body.y + room.h - h, h };
    const down = new Column({ x: body.x + body.w - side, y: body.y, w: side, h: body.h });
    down.title(design.name);
    down.heading(cover.figures);
    for (const { term, words } of rows) down.figure(term, words);
    if (paints.length > 0) down.heading(sideBySide.paints);
    for (const { color, words, price } of paints) down.swatch(color, `${words}, ${price}`);
    if (notes.length > 0) down.lines(notes.join(' '), { size: TEXT.small, color: INK.soft });
    down.framed(wrapped(terms.caution, { size: TEXT.note }, side - 4), 3.8, { size: TEXT.note });
    down.note(cover.note, design.note);
    return [pictureIn(plan, viewAt(face.box, picture, scale)), ...down.items];
  };
  return framed(packet, { title: terms.title, landscape, scale, draw }, { page: 1, of: 1 }, []);
}
