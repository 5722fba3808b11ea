import { boxOf } from '../../../geometry/region.ts';
import { formatReading } from '../../../measure/format.ts';
import { fillPages, paragraph, space, table } from '../flow.ts';
import type { Leaf, Packet } from '../leaf.ts';
import { bodyOf } from '../sheet.ts';
import { WORDS } from '../words.ts';

const W = WORDS.places;

/** Every part by its place from the datum. */
export function places(packet: Packet): Leaf[] {
  const body = bodyOf(packet.sheet);
  const told = (mm: number) => formatReading(mm, packet.measure);
  const levelNames: Readonly<Record<string, string>> = WORDS.level;
  const rows = packet.plan.joinery.solids.flatMap((solid) => {
    const box = boxOf(solid.region);
    if (!box) return [];
    const on = solid.on === 'face' ? W.face : (levelNames[solid.on] ?? packet.say.name(solid.on));
    const figures = [box.x, box.y, box.w, box.h, solid.z0, solid.z1].map(told);
    return [{ cells: [packet.say.name(solid.part), WORDS.kind[solid.kind], ...figures, on] }];
  });
  const figure = (title: string) => ({ title, share: 2.3, figure: true });
  const columns = [
    { title: W.part, share: 5 },
    { title: W.kind, share: 1.8 },
    ...[W.left, W.bottom, W.width, W.height, W.from, W.to].map(figure),
    { title: W.on, share: 3.2 },
  ];
  const blocks = [...paragraph(W.lead, body.w), space(3), ...table(columns, rows, body.w)];
  return fillPages(blocks, body).map((draw) => ({
    title: WORDS.titles.places,
    landscape: false,
    scale: null,
    draw,
  }));
}
