import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, paragraph, space, table } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/** What the straight segments of arched runs are sawn by, and what they leave of the circle. */
export function archBlocks(packet: Packet, width: Mm): Block[] {
  const { arches } = packet.plan.joinery;
  if (arches.length === 0) return [];
  const terms = packet.terms.arches;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = arches.map((arch) => ({
    cells: [
      packet.say.name(arch.part),
      told(arch.radius),
      String(arch.segments),
      packet.say.angle(arch.miter),
      told(arch.chord),
      told(arch.sagitta),
    ],
  }));
  const columns = [
    { title: terms.part, share: 4, wraps: true },
    { title: terms.radius, share: 2.4, figure: true },
    { title: terms.segments, share: 1.8, figure: true },
    { title: terms.miter, share: 1.8, figure: true },
    { title: terms.chord, share: 2.4, figure: true },
    { title: terms.sagitta, share: 2.6, figure: true },
  ];
  return [
    heading(terms.title),
    ...table(columns, rows, width),
    space(1.5),
    ...paragraph(terms.note, width),
    space(3),
  ];
}
