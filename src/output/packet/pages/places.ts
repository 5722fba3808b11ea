import { boxOf } from '../../../geometry/region.ts';
import { paragraph, space, table } from '../flow.ts';
import type { Content, Packet } from '../leaf.ts';

/** Every part by its place from the datum. */
export function places(packet: Packet): Content[] {
  const terms = packet.terms.places;
  const { body, told } = packet;
  const levelNames: Readonly<Record<string, string>> = packet.terms.level;
  const rows = packet.plan.joinery.solids.flatMap((solid) => {
    const box = boxOf(solid.region);
    if (!box) return [];
    const on = solid.on === 'face' ? terms.face : (levelNames[solid.on] ?? packet.say.name(solid.on));
    const figures = [box.x, box.y, box.w, box.h, solid.z0, solid.z1].map(told);
    return [{ cells: [packet.say.name(solid.part), packet.terms.kind[solid.kind], ...figures, on] }];
  });
  const figure = (title: string) => ({ title, share: 2.3, figure: true });
  const columns = [
    { title: terms.part, share: 5 },
    { title: terms.kind, share: 1.8 },
    ...[terms.left, terms.bottom, terms.width, terms.height, terms.from, terms.to].map(figure),
    { title: terms.on, share: 3.2 },
  ];
  const blocks = [...paragraph(terms.lead, body.w), space(3), ...table(columns, rows, body.w)];
  return [{ title: packet.terms.titles.places, blocks }];
}
