import { union } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import type { LaidPart } from '../layout/laid.ts';
import type { MoldedLength, Solid } from './piece.ts';
import type { Length } from './saw.ts';

/**
 * A laid part as a prism over what its joints leave of it.
 *
 * @param lengths what is sawn for a strip or run; other kinds keep their footprint
 */
export function solidOf(laid: LaidPart, lengths: readonly Length[]): Solid {
  const { id, kind, z0, stock, finish, on } = laid;
  const sawn = kind === 'strip' || kind === 'run';
  return {
    part: id,
    kind,
    region: sawn ? joined(lengths.flatMap(footprintOf)) : laid.region,
    z0,
    z1: kind === 'painted' ? z0 : laid.z1,
    stock,
    finish,
    on,
    ...(lengths.some(isMolding) ? { lengths: lengths.filter(isMolding).map(moldedLength) } : {}),
  };
}

const isMolding = ({ bar }: Length): boolean => bar.stock?.form === 'shaped';

const moldedLength = (length: Length): MoldedLength => ({
  start: length.bar.start,
  along: length.bar.along,
  right: length.bar.width / 2,
  onEdge: length.bar.laid.kind === 'strip' && length.bar.laid.spec.onEdge,
  region: footprintOf(length),
});

const footprintOf = ({ seen, returns }: Length): Region => [
  ...seen,
  ...[returns.start, returns.end].filter((polygon) => polygon !== null),
];

/** Lengths that abut are one area, so that the seam between them is no edge. */
const joined = (seen: Region): Region => (seen.length < 2 ? seen : union([seen]));
