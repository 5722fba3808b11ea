import { cornersToMark, openingsToMark } from '../../../joinery/lengths.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, table } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/**
 * The corners that edges and angles do not place, one row a corner: of ends with two cuts, of panels that
 * are no rectangles, and of openings.
 *
 * @param pieces one of each label, in the order of the labels
 */
export function cornerBlocks(packet: Packet, pieces: readonly Piece[], width: Mm): Block[] {
  const terms = packet.terms.corners;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const rows = pieces.flatMap((piece) => {
    const openings = openingsToMark(piece);
    return [cornersToMark(piece), ...openings].flatMap((corners, ring) =>
      corners.map(({ x, y }, i) => ({
        cells: [
          ring === 0 ? piece.label : terms.opening(piece.label, ring, openings.length),
          ring === 0 && i === 0 ? told(piece.overall) : '',
          told(x),
          told(y),
        ],
      })),
    );
  });
  if (rows.length === 0) return [];
  const columns = [
    { title: terms.label, share: 1.6 },
    { title: terms.overall, share: 2, figure: true },
    { title: terms.along, share: 2, figure: true },
    { title: terms.across, share: 2, figure: true },
  ];
  return [
    heading(terms.title),
    ...led(paragraph(terms.note, width), table(columns, rows, width * 0.6)),
    space(3),
  ];
}
