import { isBoards } from '../../../design/made.ts';
import type { Fill } from '../../../design/schema.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { wrapped } from '../../../drawing/text.ts';
import { boxAround, grownBox } from '../../../geometry/box.ts';
import { cropped } from '../../../geometry/clip.ts';
import { pathOfBox, pathOfRegion } from '../../../geometry/path.ts';
import { boxesMeet, boxOf } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import type { Solid } from '../../../joinery/piece.ts';
import { groovesOf } from '../../../layout/laid.ts';
import { designPart } from '../../../layout/reference.ts';
import { pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import type { Mm } from '../../../measure/units.ts';
import { solidsInOrder } from '../faceView.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { nameOn } from '../nameOn.ts';
import { roomOn } from '../sheet.ts';
import { type Drawn, type Figure, NOTHING, type Stand, standOf, together } from '../together.ts';
import { type PageView, viewOf } from '../view.ts';

/** Lines of the name of a fill, and of what its labels mean. */
const NAME: Mm = 5;
const NOTE: Mm = 4;

/** Parts that a map is drawn in at most, so that its labels have room. */
const MOST_PARTS = 6;

/** A map of every fill for the wall, each piece where it goes, by the label on its wood; those of one shape together. */
export function maps(packet: Packet): Leaf[] {
  const { plan } = packet;
  const { maps: title } = packet.terms.titles;
  const shown = grouped(plan.finish.shown, ({ part }) => part);
  const pieces = grouped(plan.joinery.pieces, ({ part }) => part);
  const boards = grouped(solidsInOrder(plan), ({ part }) => designPart(part));
  const found = plan.design.parts.flatMap((part) => {
    if (!isBoards(part)) return [];
    const own = groupOf(boards, part.id).map(
      (solid): Board => ({
        solid,
        seen: shown.get(solid.part)?.flatMap(({ region }) => region) ?? solid.region,
        labels: groupOf(pieces, solid.part).map(({ label }) => label),
      }),
    );
    const whole = boxAround(own.flatMap(({ solid }) => boxOf(solid.region) ?? []));
    if (!whole) return [];
    let best = inParts(packet, part, own, whole, 1);
    for (let count = 2; count <= MOST_PARTS && best.told < own.length; count++) {
      const more = inParts(packet, part, own, whole, count);
      if (more.told > best.told) best = more;
    }
    return [best];
  });
  const alike = grouped(found, ({ area }) => `${area.w.toFixed(1)} ${area.h.toFixed(1)}`);
  return [...alike.values()].flatMap((all) => {
    const [{ area }] = all;
    const figures = all.flatMap((one) => one.figures);
    return together(packet, title, figures, { width: area.w, height: area.h });
  });
}

/** A board of a fill, what is seen of it, and the labels of its pieces. */
interface Board {
  readonly solid: Solid;
  readonly seen: Region;
  readonly labels: readonly string[];
}

/** A map in so many equal parts along its longer side, and how many of its labels have room. */
function inParts(packet: Packet, part: Fill, own: readonly Board[], whole: Box, count: number) {
  const wide = whole.w > whole.h;
  const { w, h } = wide ? { w: whole.w / count, h: whole.h } : { w: whole.w, h: whole.h / count };
  const page = roomOn(packet.sheet, w > h);
  const parts = Array.from({ length: count }, (_, i) => {
    // The upper part first.
    const [x, y] = wide ? [whole.x + i * w, whole.y] : [whole.x, whole.y + (count - 1 - i) * h];
    const area = { x, y, w, h };
    const name = count === 1 ? part.name : `${part.name}, ${packet.terms.block.pageOf(i + 1, count)}`;
    return { area, figure: mapOf(packet, name, own, area) };
  });
  const told = new Set(
    parts.flatMap(({ area, figure }) => namesOn(own, area, figure(page, NOTHING).view).map(({ id }) => id)),
  );
  return { told: told.size, area: { w, h }, figures: parts.map(({ figure }): Drawn => figure) };
}

/** A label where it stands on a piece. */
interface Named {
  readonly id: string;
  readonly item: DrawItem;
}

/** Labels of the pieces that have room for theirs within an area. */
function namesOn(own: readonly Board[], area: Box, view: PageView): Named[] {
  return own.flatMap(({ solid: { part: id, region }, seen: all, labels }) => {
    if (!isIn(region, area)) return [];
    const seen = view.region(cropped(all, area));
    const label = (of: Region, words: string): Named[] => {
      const placed = nameOn(of, words, []);
      return placed ? [{ id, item: placed.item }] : [];
    };
    // A board that the outline parts has a label for each of its pieces.
    return seen.length === labels.length
      ? seen.flatMap((polygon, i) => label([polygon], pick(labels, i)))
      : label(seen, labels.join(' '));
  });
}

const isIn = (region: Region, area: Box): boolean => {
  const box = boxOf(region);
  return box !== null && boxesMeet(box, area);
};

/** A part of a map in a room of a page, under its name. */
const mapOf =
  (packet: Packet, name: string, own: readonly Board[], area: Box) =>
  (body: Box, least: Stand): Figure & { readonly view: PageView } => {
    const heading = { size: TEXT.heading, bold: true };
    const small = { size: TEXT.note };
    const names = wrapped(name, heading, body.w);
    const notes = wrapped(packet.terms.maps.note, small, body.w);
    const stand = standOf({ top: names.length * NAME + notes.length * NOTE + 5, bottom: 2 }, least);
    const view = viewOf(area, body, packet.unit, { left: 0, right: 0, ...stand });
    const top = body.y + body.h;
    const draw = (): DrawItem[] => [
      ...names.map((row, i) => text({ x: body.x, y: top - (i + 1) * NAME }, row, heading)),
      ...notes.map((row, i) =>
        text({ x: body.x, y: top - names.length * NAME - 1 - (i + 1) * NOTE }, row, small),
      ),
      {
        kind: 'group',
        clip: pathOfBox(grownBox(view.box, WEIGHT.bold)),
        items: outlinesOf(own, area, view),
      },
      ...namesOn(own, area, view).map(({ item }) => item),
    ];
    return { scale: view.scale, stand, view, draw };
  };

const outlinesOf = (own: readonly Board[], area: Box, view: PageView): DrawItem[] =>
  own
    .filter(({ solid: { region } }) => isIn(region, area))
    .flatMap(({ solid: { region, relief } }) => [
      shape(pathOfRegion(view.region(region)), {
        stroke: INK.line,
        width: WEIGHT.thin,
        fill: INK.paper,
        fillRule: 'evenodd',
      }),
      ...groovesOf(relief).map((groove) =>
        shape(pathOfRegion(view.region([groove])), { stroke: INK.faint, width: WEIGHT.hair }),
      ),
    ]);
