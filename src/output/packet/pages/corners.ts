import { cornersToMark, openingsToMark } from '../../../joinery/lengths.ts';
import type { Piece } from '../../../joinery/piece.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, tableOf } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/**
 * The corners that edges and angles do not place, one row a corner: of ends with two cuts, of panels that
 * are no rectangles, and of openings.
 *
 * @param pieces one of each label, in the order of the labels
 */
export function cornerBlocks(packet: Packet, pieces: readonly Piece[], width: Mm): Block[] {
  const { told } = packet;
  const terms = packet.terms.corners;
  const corners = pieces.flatMap((piece) => {
    const openings = openingsToMark(piece);
    return [cornersToMark(piece), ...openings].flatMap((corners, ring) =>
      corners.map(({ x, y }, i) => ({
        label: ring === 0 ? piece.label : terms.opening(piece.label, ring, openings.length),
        overall: ring === 0 && i === 0 ? told(piece.overall) : '',
        x,
        y,
      })),
    );
  });
  if (corners.length === 0) return [];
  const rows = tableOf(
    [
      [terms.label, 1.6, ({ label }) => label],
      [terms.overall, 2, ({ overall }) => overall, 'figure'],
      [terms.along, 2, ({ x }) => told(x), 'figure'],
      [terms.across, 2, ({ y }) => told(y), 'figure'],
    ],
    corners,
    width * 0.6,
  );
  return [heading(terms.title), ...led(paragraph(terms.note, width), rows), space(3)];
}
