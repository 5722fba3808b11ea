import type { Point } from '../../../geometry/shape.ts';
import type { Piece } from '../../../joinery/piece.ts';
import { type Curve, profileOf } from '../../../joinery/profile.ts';
import type { Mm } from '../../../measure/units.ts';
import { type Block, heading, led, paragraph, space, tableOf, withNote } from '../flow.ts';
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
  const curves = profiles.flatMap(({ label, curves }) => curves.map((curve) => ({ label, ...curve })));
  const free = profiles.filter((profile) => profile.free).map(({ label }) => label);
  if (curves.length + free.length === 0) return [];
  const { told } = packet;
  const placed = ({ x, y }: Point) =>
    [
      x < 0 ? terms.leftOf(told(-x)) : terms.along(told(x)),
      y < 0 ? terms.below(told(-y)) : terms.up(told(y)),
    ].join(', ');
  const whole = ({ from, to }: Curve) => from.x === to.x && from.y === to.y;
  const rise = (curve: Curve) => (curve.hollow ? terms.hollow(told(curve.rise)) : told(curve.rise));
  const rows = tableOf(
    [
      [terms.label, 1, ({ label }) => label],
      [terms.from, 3, (curve) => (whole(curve) ? terms.circle : placed(curve.from))],
      [terms.to, 3, (curve) => (whole(curve) ? '' : placed(curve.to))],
      [terms.rise, 2, (curve) => (whole(curve) ? '' : rise(curve)), 'figure'],
      [terms.radius, 2, ({ radius }) => told(radius), 'figure'],
      [terms.center, 4, ({ center }) => placed(center)],
    ],
    curves,
    width,
  );
  const printed = packet.plan.design.pages.also.includes('parts');
  return [
    heading(terms.title),
    ...withNote(
      rows.length > 0 ? led(paragraph(terms.note, width), rows) : [],
      free.length > 0 ? paragraph((printed ? terms.free : terms.freeUnprinted)(free.join(', ')), width) : [],
    ),
    space(3),
  ];
}
