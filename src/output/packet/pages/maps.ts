import { isBoards } from '../../../design/made.ts';
import type { Fill } from '../../../design/schema.ts';
import type { DrawItem } from '../../../drawing/drawing.ts';
import { shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { boxAround, grownBox } from '../../../geometry/box.ts';
import { intersect } from '../../../geometry/clip.ts';
import { pathOfBox, pathOfRegion } from '../../../geometry/path.ts';
import { boxesMeet, boxOf, regionOfBox } from '../../../geometry/region.ts';
import type { Box, Region } from '../../../geometry/shape.ts';
import type { Solid } from '../../../joinery/piece.ts';
import { groovesOf } from '../../../layout/laid.ts';
import { designPart } from '../../../layout/reference.ts';
import { pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import { solidsInOrder } from '../faceView.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { nameOn } from '../nameOn.ts';
import { bodyOf, turned } from '../sheet.ts';
import { type PageView, viewOf } from '../view.ts';

/** Room at the top for the name of the fill and what its labels mean. */
const AROUND = { left: 0, right: 0, top: 14, bottom: 2 } as const;

/** Parts that a map is drawn in at most, so that its labels have room. */
const MOST_PARTS = 6;

/** A map of every fill for the wall: each piece where it goes, by the label on its wood. */
export function maps(packet: Packet): Leaf[] {
  const { plan } = packet;
  const shown = grouped(plan.finish.shown, ({ part }) => part);
  const pieces = grouped(plan.joinery.pieces, ({ part }) => part);
  const boards = grouped(solidsInOrder(plan), ({ part }) => designPart(part));
  return plan.design.parts.flatMap((part): Leaf[] => {
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
    return best.leaves;
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
  const landscape = w > h;
  const sheet = landscape ? turned(packet.sheet) : packet.sheet;
  const areas = Array.from({ length: count }, (_, i) => {
    // The upper part first.
    const [x, y] = wide ? [whole.x + i * w, whole.y] : [whole.x, whole.y + (count - 1 - i) * h];
    const area = { x, y, w, h };
    return { area, view: viewOf(area, bodyOf(sheet), packet.unit, AROUND) };
  });
  const told = new Set(areas.flatMap(({ area, view }) => namesOn(own, area, view).map(({ id }) => id)));
  const leaves = areas.map(
    ({ area, view }, i): Leaf => ({
      title: packet.terms.titles.maps,
      landscape,
      scale: view.scale,
      draw: (body) => {
        const name = count === 1 ? part.name : `${part.name}, ${packet.terms.block.pageOf(i + 1, count)}`;
        return mapOf(packet, name, own, { area, body });
      },
    }),
  );
  return { told: told.size, leaves };
}

/** A label where it stands on a piece. */
interface Named {
  readonly id: string;
  readonly item: DrawItem;
}

/** Labels of the pieces that have room for theirs within an area. */
function namesOn(own: readonly Board[], area: Box, view: PageView): Named[] {
  const within = regionOfBox(area);
  return own.flatMap(({ solid: { part: id, region }, seen: all, labels }) => {
    if (!isIn(region, area)) return [];
    const seen = view.region(intersect(all, within));
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

function mapOf(
  packet: Packet,
  name: string,
  own: readonly Board[],
  { area, body }: { readonly area: Box; readonly body: Box },
) {
  const { terms, unit } = packet;
  const view = viewOf(area, body, unit, AROUND);
  const top = body.y + body.h;
  const outlines = own
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
  return [
    text({ x: body.x, y: top - 5 }, name, { size: TEXT.heading, bold: true }),
    text({ x: body.x, y: top - 10 }, terms.maps.note, { size: TEXT.note }),
    { kind: 'group' as const, clip: pathOfBox(grownBox(view.box, WEIGHT.bold)), items: outlines },
    ...namesOn(own, area, view).map(({ item }) => item),
  ];
}
