import type { Notch, Piece } from '../../../joinery/piece.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, tableOf } from '../flow.ts';
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
  const { told, say } = packet;
  const terms = packet.terms.notches;
  const rows = tableOf(
    [
      [terms.label, 1, ({ label }) => label],
      [terms.on, 1.6, ({ side }) => terms.side[side]],
      [terms.from, 2, ({ from }) => told(from), 'figure'],
      [terms.to, 2, ({ to }) => told(to), 'figure'],
      [terms.depth, 2, ({ depth }) => told(depth), 'figure'],
      [terms.miter, 1.4, ({ miter }) => say.angle(Math.abs(miter)), 'figure'],
    ],
    pieces.flatMap(({ label, notches }) => notches.filter(own).map((notch) => ({ label, ...notch }))),
    width * 0.75,
  );
  return rows.length === 0 ? [] : [heading(title), ...led(paragraph(note, width), rows), space(3)];
}
