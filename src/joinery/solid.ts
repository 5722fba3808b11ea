import { union } from '../geometry/clip.ts';
import type { Region } from '../geometry/shape.ts';
import type { LaidPart } from '../layout/laid.ts';
import type { Solid } from './piece.ts';

/**
 * A laid part as a prism over what its joints leave of it.
 *
 * @param seen what is left of a strip or run; other kinds keep their footprint
 */
export function solidOf(laid: LaidPart, seen: Region): Solid {
  const { id, kind, z0, stock, finish, on } = laid;
  const sawn = kind === 'strip' || kind === 'run';
  return {
    part: id,
    kind,
    region: sawn ? joined(seen) : laid.region,
    z0,
    z1: kind === 'painted' ? z0 : laid.z1,
    stock,
    finish,
    on,
  };
}

/** Lengths that abut are one area, so that the seam between them is no edge. */
const joined = (seen: Region): Region => (seen.length < 2 ? seen : union([seen]));
