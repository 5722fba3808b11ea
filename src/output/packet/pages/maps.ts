import { isBoards } from '../../../design/made.ts';
import type { Fill } from '../../../design/schema.ts';
import { shape, text } from '../../../drawing/items.ts';
import { INK, TEXT, WEIGHT } from '../../../drawing/style.ts';
import { boxAround } from '../../../geometry/box.ts';
import { pathOfRegion } from '../../../geometry/path.ts';
import { boxOf } from '../../../geometry/region.ts';
import type { Box } from '../../../geometry/shape.ts';
import type { Solid } from '../../../joinery/piece.ts';
import { groovesOf } from '../../../layout/laid.ts';
import { designPart } from '../../../layout/reference.ts';
import { pick } from '../../../list/at.ts';
import { grouped, groupOf } from '../../../list/grouped.ts';
import { solidsInOrder } from '../faceView.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { nameOn } from '../nameOn.ts';
import { bodyOf, turned } from '../sheet.ts';
import { viewOf } from '../view.ts';

/** Room at the top for the name of the fill and what its labels mean. */
const AROUND = { left: 0, right: 0, top: 14, bottom: 2 } as const;

/** A map of every fill for the wall: each piece where it goes, by the label on its wood. */
export function maps(packet: Packet): Leaf[] {
  const { plan, terms } = packet;
  return plan.design.parts.flatMap((part): Leaf[] => {
    if (!isBoards(part)) return [];
    const own = solidsInOrder(plan).filter(({ part: id }) => designPart(id) === part.id);
    const whole = boxAround(own.flatMap(({ region }) => boxOf(region) ?? []));
    if (!whole) return [];
    const landscape = whole.w > whole.h;
    const sheet = landscape ? turned(packet.sheet) : packet.sheet;
    return [
      {
        title: terms.titles.maps,
        landscape,
        scale: viewOf(whole, bodyOf(sheet), packet.unit, AROUND).scale,
        draw: (body) => mapOf(packet, part, own, { whole, body }),
      },
    ];
  });
}

function mapOf(
  { plan, terms, unit }: Packet,
  part: Fill,
  own: readonly Solid[],
  { whole, body }: { readonly whole: Box; readonly body: Box },
) {
  const view = viewOf(whole, body, unit, AROUND);
  const top = body.y + body.h;
  const shown = grouped(plan.finish.shown, ({ part: id }) => id);
  const pieces = grouped(plan.joinery.pieces, ({ part: id }) => id);
  const outlines = own.flatMap(({ region, relief }) => [
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
  const names = own.flatMap(({ part: id, region }) => {
    const seen = view.region(shown.get(id)?.flatMap((one) => one.region) ?? region);
    const told = groupOf(pieces, id).map(({ label }) => label);
    // A board that the outline parts has a label for each of its pieces.
    return seen.length === told.length
      ? seen.flatMap((polygon, i) => nameOn([polygon], pick(told, i), [])?.item ?? [])
      : (nameOn(seen, told.join(' '), [])?.item ?? []);
  });
  return [
    text({ x: body.x, y: top - 5 }, part.name, { size: TEXT.heading, bold: true }),
    text({ x: body.x, y: top - 10 }, terms.maps.note, { size: TEXT.note }),
    ...outlines,
    ...names,
  ];
}
