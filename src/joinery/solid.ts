import { isBars, isLettersAlone, isPaint } from '../design/made.ts';
import { union } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import { arcsOf, type LaidPart, reliefOf } from '../layout/laid.ts';
import type { MoldedLength, Solid } from './piece.ts';
import type { SawnBar } from './saw.ts';
import { scribedOff } from './scribe.ts';

/**
 * A laid part as a prism over what its joints leave of it.
 *
 * @param lengths what is sawn for a strip or run; other kinds keep their footprint
 */
export function solidOf(laid: LaidPart, lengths: readonly SawnBar[]): Solid {
  const { id, kind, z0, stock, finish, on } = laid;
  const rest = lengths.flatMap(footprintOf);
  const relief = reliefOf(laid);
  const from = 'sawn' in laid ? laid.sawn : undefined;
  const sawn = from && { stock: from.stock, region: arcsOf(laid), rest, z1: z0 + from.thickness };
  return {
    part: id,
    kind,
    // Letters alone cover nothing but what is reckoned with their colors.
    region: isBars(laid)
      ? joined([...rest, ...(sawn?.region ?? [])])
      : isLettersAlone(laid)
        ? []
        : laid.region,
    z0,
    z1: isPaint(laid) ? z0 : laid.z1,
    stock,
    finish,
    on,
    ...(relief ? { relief } : {}),
    ...(sawn ? { sawn } : {}),
    ...(lengths.some(isMolding) ? { lengths: lengths.filter(isMolding).map(moldedLength) } : {}),
  };
}

const isMolding = ({ bar }: SawnBar): boolean => bar.stock?.form === 'shaped';

const moldedLength = (length: SawnBar): MoldedLength => ({
  start: length.bar.start,
  along: length.bar.along,
  right: length.bar.width / 2,
  onEdge: length.bar.laid.spec.onEdge === true,
  region: footprintOf(length),
});

const footprintOf = ({ bar, seen, returns }: SawnBar): Region => [
  ...scribedOff(bar, seen),
  ...[returns.start, returns.end].filter((polygon) => polygon !== null),
];

/** Lengths that abut are one area, so that the seam between them is no edge. */
const joined = (seen: Region): Region => (seen.length < 2 ? seen : union([seen]));
