import type { Notch, Piece } from '../../../joinery/piece.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, table } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/**
 * Where half-laps are sawn out of the pieces, one row a notch, with the rule which of two keeps its face; then grooves.
 *
 * @param pieces one of each mark, in the order of the marks
 */
export function notchBlocks(packet: Packet, pieces: readonly Piece[], width: Mm): Block[] {
  const { notches, grooves } = packet.terms;
  return [
    ...blocksOf(packet, pieces, width, ({ side }) => side !== 'groove', notches),
    ...blocksOf(packet, pieces, width, ({ side }) => side === 'groove', grooves),
  ];
}

function blocksOf(
  packet: Packet,
  pieces: readonly Piece[],
  width: Mm,
  own: (notch: Notch) => boolean,
  { title, note }: { readonly title: string; readonly note: string },
): Block[] {
  const terms = packet.terms.notches;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = pieces.flatMap((piece) =>
    piece.notches.filter(own).map((notch) => ({
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
  if (rows.length === 0) return [];
  const columns = [
    { title: terms.label, share: 1 },
    { title: terms.on, share: 1.6 },
    { title: terms.from, share: 2, figure: true },
    { title: terms.to, share: 2, figure: true },
    { title: terms.depth, share: 2, figure: true },
    { title: terms.miter, share: 1.4, figure: true },
  ];
  return [heading(title), ...led(paragraph(note, width), table(columns, rows, width * 0.75)), space(3)];
}
