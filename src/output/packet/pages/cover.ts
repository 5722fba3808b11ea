import type { DrawItem } from '../../../drawing/drawing.ts';
import { text } from '../../../drawing/items.ts';
import { INK, TEXT } from '../../../drawing/style.ts';
import { shortened, textWidth, wrapped } from '../../../drawing/text.ts';
import type { Box } from '../../../geometry/shape.ts';
import type { Mm } from '../../../measure/units.ts';
import type { Plan } from '../../../plan/types.ts';
import { litFace } from '../../picture/litFace.ts';
import { Column } from '../column.ts';
import type { Contents, Leaf, Packet } from '../leaf.ts';
import { type PageView, viewOf } from '../view.ts';

/** Key figures of a face, each under the name of its term. */
export function keyFigures(packet: Packet<Plan>) {
  const terms = packet.terms.cover;
  const { plan, say, told, money } = packet;
  const { cutting, face } = plan;
  const bought = cutting.boards.filter((b) => b.owned === null).length;
  const pages = plan.patterns.reduce((sum, set) => sum + set.pages.length, 0);
  const paints = plan.finish.uses.filter((u) => u.volume > 0).map((u) => say.finish(u.finish));
  return [
    ['face', terms.faceSize(told(face.width), told(face.height))],
    ['parts', terms.partCount(plan.layout.parts.length, plan.joinery.pieces.length)],
    ['boards', terms.boardCount(bought, cutting.boards.length - bought)],
    ['sheets', String(cutting.sheets.length)],
    ['paint', paints.join(', ') || packet.terms.paint.nothing],
    ['weight', say.mass(plan.load.added)],
    ['lift', terms.liftAt(say.force(plan.load.liftAdded))],
    ['floorSpace', terms.floorSpaceOf(told(plan.fold.floorSpace))],
    ['patterns', String(pages)],
    ['cost', money(plan.total)],
  ] as const;
}

/** What its checks found. */
export function stateOf(packet: Packet<Plan>): string[] {
  const terms = packet.terms.cover;
  const count = (severity: string) => packet.plan.checks.filter((c) => c.severity === severity).length;
  const [errors, warnings] = [count('error'), count('warning')];
  return [...(errors > 0 ? [terms.errors(errors)] : []), ...(warnings > 0 ? [terms.warnings(warnings)] : [])];
}

/** From one line of the contents to the next, where there is room, and at least: lines of small text never meet. */
const PITCH = { usual: 4.5, least: 3.9 } as const;
const CONTENTS_HEAD: Mm = 8.4;
/** From one line to the next of what is left out. */
const NOTE_LEAD: Mm = 3.8;

/** The table of contents from the top of the room, in columns read downward; `foot` is where it ends. */
function listOfContents(
  packet: Packet<Plan>,
  room: Box,
  contents: readonly Contents[],
  columns: number,
): { readonly items: DrawItem[]; readonly foot: Mm } {
  const size = TEXT.small;
  const there = contents.filter(({ page }) => page !== null);
  const rows = Math.ceil(there.length / columns);
  const top = room.y + room.h - CONTENTS_HEAD;
  const note = { size: TEXT.note, color: INK.soft };
  const left = leftOut(packet, contents, room.w);
  const pitch = Math.max(PITCH.least, Math.min(PITCH.usual, (top - left.length * NOTE_LEAD - room.y) / rows));
  const w = (room.w + 8) / columns - 8;
  const items = there.flatMap(({ title, page }, i) => {
    const x = room.x + Math.floor(i / rows) * (w + 8);
    const y = top - 3.4 - (i % rows) * pitch;
    const number = String(page);
    return [
      text({ x, y }, shortened(title, { size }, w - 10), { size, leadsTo: title }),
      text({ x: x + w - textWidth(number, { size }), y }, number, { size }),
    ];
  });
  const head = { x: room.x, y: room.y + room.h - 6 };
  const foot = top - rows * pitch;
  return {
    items: [
      text(head, packet.terms.cover.contents, { size: TEXT.large, bold: true }),
      ...items,
      ...left.map((row, i) => text({ x: room.x, y: foot - (i + 1) * NOTE_LEAD }, row, note)),
    ],
    foot: foot - left.length * NOTE_LEAD,
  };
}

/** Lines that tell what the packet leaves out. */
function leftOut({ terms }: Packet<Plan>, contents: readonly Contents[], width: Mm): string[] {
  const titles = contents.filter(({ page }) => page === null).map(({ title }) => title);
  return titles.length === 0
    ? []
    : wrapped(terms.cover.leftOut(titles.join(', ')), { size: TEXT.note }, width);
}

/** Beside the picture; the contents too where they are `listed` here. */
function column(packet: Packet<Plan>, room: Box, contents: readonly Contents[], listed: boolean): DrawItem[] {
  const terms = packet.terms.cover;
  const { design } = packet.plan;
  const down = new Column(room);
  down.title(design.name);
  down.lines(terms.subtitle, { size: TEXT.small, color: INK.soft });
  down.framed(wrapped(terms.caution, { size: TEXT.note }, room.w - 4), 3.8, { size: TEXT.note });
  down.gap(2);
  down.heading(terms.figures);
  for (const [term, words] of keyFigures(packet)) down.figure(terms[term], words);
  const told = stateOf(packet);
  if (told.length > 0) down.framed(told, 4.4, { size: TEXT.small, bold: true });
  if (listed) {
    const list = listOfContents(packet, { ...room, h: down.y - 2 - room.y }, contents, 1);
    down.put(list.items, list.foot);
  }
  down.note(terms.note, design.note);
  return down.items;
}

/** The face as it will look. */
export const pictureIn = (plan: Plan, view: PageView): DrawItem => ({
  kind: 'group',
  scale: { x: 1 / view.scale, y: 1 / view.scale },
  move: view.to({ x: 0, y: 0 }),
  items: litFace(plan),
});

/** The face in color beside its key figures and the table of contents. */
export function cover(packet: Packet<Plan>): Leaf[] {
  const { face } = packet.plan;
  const landscape = face.width > face.height;
  const draw = (body: Box, contents: readonly Contents[]): DrawItem[] => {
    const side = landscape ? body.w * 0.3 : body.w * 0.36;
    const wide = body.w - side - 8;
    // Beside a wide face there is little height: the contents stand below it.
    const lines = leftOut(packet, contents, wide).length * NOTE_LEAD;
    const there = contents.filter(({ page }) => page !== null).length;
    const below = landscape ? CONTENTS_HEAD + Math.ceil(there / 3) * PITCH.usual + lines + 2 : 0;
    const picture = { x: body.x, y: body.y + below, w: wide, h: body.h - 2 - below };
    const text = { x: body.x + body.w - side, y: body.y, w: side, h: body.h };
    const view = viewOf(face.box, picture, packet.unit);
    const foot = { x: body.x, y: body.y, w: wide, h: below - 2 };
    return [
      pictureIn(packet.plan, view),
      ...column(packet, text, contents, !landscape),
      ...(landscape ? listOfContents(packet, foot, contents, 3).items : []),
    ];
  };
  return [{ title: packet.terms.titles.cover, landscape, scale: null, draw }];
}
