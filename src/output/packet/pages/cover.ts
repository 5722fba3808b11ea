import type { DrawItem } from '../../../drawing/drawing.ts';
import { rectangle, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { fittedSize, shortened, textWidth, wrapped } from '../../../drawing/text.ts';
import type { Box } from '../../../geometry/shape.ts';
import { formatMoney, formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { coloredFace } from '../faceView.ts';
import type { Contents, Leaf, Packet } from '../leaf.ts';
import { viewOf } from '../view.ts';

function figures(packet: Packet): [string, string][] {
  const terms = packet.terms.cover;
  const { plan, say, measure } = packet;
  const { cutting, face } = plan;
  const length = (mm: number) => formatReading(mm, measure);
  const bought = cutting.boards.filter((b) => b.owned === null).length;
  const pages = plan.patterns.reduce((sum, set) => sum + set.pages.length, 0);
  const paints = plan.finish.uses.filter((u) => u.volume > 0).map((u) => say.finish(u.finish));
  return [
    [terms.face, terms.faceSize(length(face.width), length(face.height))],
    [terms.parts, terms.partCount(plan.layout.parts.length, plan.joinery.pieces.length)],
    [terms.boards, terms.boardCount(bought, cutting.boards.length - bought)],
    [terms.sheets, String(cutting.sheets.length)],
    [terms.paint, paints.join(', ') || packet.terms.paint.nothing],
    [terms.weight, say.mass(plan.load.added)],
    [terms.lift, terms.liftAt(say.force(plan.load.liftAdded))],
    [terms.floorSpace, terms.floorSpaceOf(length(plan.fold.floorSpace))],
    [terms.patterns, String(pages)],
    [terms.cost, formatMoney(plan.total, plan.design.measure.currency, packet.measure.notation)],
  ];
}

function state(packet: Packet): string[] {
  const terms = packet.terms.cover;
  const count = (severity: string) => packet.plan.checks.filter((c) => c.severity === severity).length;
  const [errors, warnings] = [count('error'), count('warning')];
  return [...(errors > 0 ? [terms.errors(errors)] : []), ...(warnings > 0 ? [terms.warnings(warnings)] : [])];
}

function column(packet: Packet, room: Box, contents: readonly Contents[]): DrawItem[] {
  const terms = packet.terms.cover;
  const { design } = packet.plan;
  const items: DrawItem[] = [];
  const size = TEXT.small;
  let y = room.y + room.h;
  const heading = (words: string) => {
    y -= 6;
    items.push(text({ x: room.x, y }, words, { size: TEXT.large, bold: true }));
    y -= 2.4;
  };
  for (const row of wrapped(design.name, { size: TEXT.title, bold: true }, room.w).slice(0, 3)) {
    const fit = fittedSize(row, { size: TEXT.title, bold: true }, room.w);
    y -= TEXT.title;
    items.push(text({ x: room.x, y }, row, { size: fit, bold: true }));
  }
  y -= 2;
  for (const row of wrapped(terms.subtitle, { size }, room.w)) {
    y -= 3.6;
    items.push(text({ x: room.x, y }, row, { size, color: INK.soft }));
  }
  /** Rows in a frame, not to be read over. */
  const framed = (rows: readonly string[], pitch: Mm, look: { size: Mm; bold?: boolean }) => {
    const h = rows.length * pitch + 3;
    y -= 4;
    items.push(rectangle({ x: room.x, y: y - h, w: room.w, h }, { stroke: INK.line, width: WEIGHT.bold }));
    rows.forEach((row, i) => {
      items.push(text({ x: room.x + 2, y: y - pitch - 0.2 - i * pitch }, row, look));
    });
    y -= h;
  };
  framed(wrapped(terms.caution, { size: TEXT.note }, room.w - 4), 3.1, { size: TEXT.note });
  y -= 2;
  heading(terms.figures);
  for (const [term, words] of figures(packet)) {
    const rows = wrapped(words, { size }, room.w - 24).slice(0, 3);
    items.push(text({ x: room.x, y: y - 3.4 }, term, { size, color: INK.soft }));
    rows.forEach((row, i) => {
      items.push(text({ x: room.x + 24, y: y - 3.4 - i * 3.5 }, row, { size }));
    });
    y -= rows.length * 3.5 + 1;
  }
  const told = state(packet);
  if (told.length > 0) framed(told, 4, { size, bold: true });
  y -= 2;
  heading(terms.contents);
  // Where names are long the table closes up, so that its last line still stands on the page.
  const pitch = Math.min(4, (y - room.y) / contents.length);
  for (const { title, page } of contents) {
    const words = shortened(title, { size }, room.w - 10);
    items.push(text({ x: room.x, y: y - 3.4 }, words, { size }));
    const number = String(page);
    items.push(text({ x: room.x + room.w - textWidth(number, { size }), y: y - 3.4 }, number, { size }));
    y -= pitch;
  }
  if (design.note !== '') {
    y -= 4;
    heading(terms.note);
    const most = Math.max(0, Math.floor((y - room.y - 8) / 3.5));
    for (const row of wrapped(design.note, { size }, room.w).slice(0, most)) {
      items.push(text({ x: room.x, y: y - 3.4 }, row, { size }));
      y -= 3.5;
    }
  }
  return items;
}

/** The face in color beside its key figures and the table of contents. */
export function cover(packet: Packet): Leaf[] {
  const { face } = packet.plan;
  const landscape = face.width > face.height;
  const draw = (body: Box, contents: readonly Contents[]): DrawItem[] => {
    const side = landscape ? body.w * 0.3 : body.w * 0.36;
    const picture = { x: body.x, y: body.y, w: body.w - side - 8, h: body.h - 2 };
    const text = { x: body.x + body.w - side, y: body.y, w: side, h: body.h };
    const view = viewOf(face.box, picture);
    return [...coloredFace(packet.plan, view), ...column(packet, text, contents)];
  };
  return [{ title: packet.terms.titles.cover, landscape, scale: null, draw }];
}
