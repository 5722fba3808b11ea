import type { Point } from '../../../geometry/shape.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { type Curve, profileOf } from '../../../joinery/profile.ts';
import { formatReading } from '../../../measure/format.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, table, withNote } from '../flow.ts';
import type { Packet } from '../leaf.ts';

/**
 * The arcs of pieces that are sawn to an outline, one row each: where it begins and ends, how far it rises, and
 * where compass or trammel are set.
 *
 * @param pieces one of each label, in the order of the labels
 */
export function curveBlocks(packet: Packet, pieces: readonly Piece[], width: Mm): Block[] {
  const terms = packet.terms.curves;
  const profiles = pieces
    .filter(({ form }) => form === 'sheet')
    .map((piece) => ({ label: piece.label, ...profileOf(piece) }));
  const rows = profiles.flatMap(({ label, curves }) =>
    curves.map((curve) => ({ cells: [label, ...cellsOf(packet, curve)] })),
  );
  const free = profiles.filter((profile) => profile.free).map(({ label }) => label);
  if (rows.length + free.length === 0) return [];
  const columns = [
    { title: terms.label, share: 1 },
    { title: terms.from, share: 3 },
    { title: terms.to, share: 3 },
    { title: terms.rise, share: 2, figure: true },
    { title: terms.radius, share: 2, figure: true },
    { title: terms.center, share: 4 },
  ];
  const printed = packet.plan.design.pages.also.includes('parts');
  return [
    heading(terms.title),
    ...withNote(
      rows.length > 0 ? led(paragraph(terms.note, width), table(columns, rows, width)) : [],
      free.length > 0 ? paragraph((printed ? terms.free : terms.freeUnprinted)(free.join(', ')), width) : [],
    ),
    space(3),
  ];
}

function cellsOf(packet: Packet, { from, to, rise, radius, center, hollow }: Curve): string[] {
  const terms = packet.terms.curves;
  const told = (mm: Mm) => formatReading(mm, packet.measure);
  const placed = ({ x, y }: Point) =>
    [
      x < 0 ? terms.leftOf(told(-x)) : terms.along(told(x)),
      y < 0 ? terms.below(told(-y)) : terms.up(told(y)),
    ].join(', ');
  const whole = from.x === to.x && from.y === to.y;
  return [
    whole ? terms.circle : placed(from),
    whole ? '' : placed(to),
    whole ? '' : hollow ? terms.hollow(told(rise)) : told(rise),
    told(radius),
    placed(center),
  ];
}
