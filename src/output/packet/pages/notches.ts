import type { Piece } from '../../../joinery/piece.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, paragraph, space, table } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/**
 * Where half-laps are sawn out of the pieces, one row a notch, with the rule which of two keeps its face.
 *
 * @param pieces one of each mark, in the order of the marks
 */
export function notchBlocks(packet: Packet, pieces: readonly Piece[], width: Mm): Block[] {
  const notched = pieces.filter((piece) => piece.notches.length > 0);
  if (notched.length === 0) return [];
  const terms = packet.terms.notches;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = notched.flatMap((piece) =>
    piece.notches.map((notch) => ({
      cells: [
        piece.label,
        terms.side[notch.side],
        told(notch.from),
        told(notch.to),
        told(notch.depth),
        packet.say.angle(Math.abs(notch.miter)),
      ],
    })),
  );
  const columns = [
    { title: terms.label, share: 1 },
    { title: terms.on, share: 1.6 },
    { title: terms.from, share: 2, figure: true },
    { title: terms.to, share: 2, figure: true },
    { title: terms.depth, share: 2, figure: true },
    { title: terms.miter, share: 1.4, figure: true },
  ];
  return [
    heading(terms.title),
    ...paragraph(terms.note, width),
    space(1.5),
    ...table(columns, rows, width * 0.75),
    space(3),
  ];
}
