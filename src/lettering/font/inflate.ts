import { Inflate, inflateSync } from 'fflate';

/** Packed bytes given to the decoder at once: what they can unfold into is bounded (a thousand times as much). */
const STEP = 16384;

/**
 * The `size` bytes that raw deflate data (RFC 1951) stands for, for the tables of a WOFF file. Throws when the data
 * is damaged or stands for another number of bytes, and stops soon after there are too many.
 */
export function inflate(data: Uint8Array, size: number): Uint8Array {
  // Most tables are one step: the decoder of steps makes room for each of them anew, whatever its size.
  const out = data.length <= STEP ? unfolded(data, size) : inSteps(data, size);
  if (out.length !== size) throw new RangeError(out.length > size ? 'too long' : 'too short');
  return out;
}

/** A byte more than there are to be tells that there are too many. */
const unfolded = (data: Uint8Array, size: number): Uint8Array =>
  inflateSync(data, { out: new Uint8Array(size + 1) });

function inSteps(data: Uint8Array, size: number): Uint8Array {
  const out = new Uint8Array(size);
  const length = eachStep(data, size, (part, at) => out.set(part, at));
  return out.subarray(0, length);
}

/** How many bytes raw deflate data stands for, of which none is kept. Throws when it is damaged or they are over `most`. */
export const unfoldedLength = (data: Uint8Array, most: number): number => eachStep(data, most, () => {});

function eachStep(data: Uint8Array, most: number, take: (part: Uint8Array, at: number) => void): number {
  let at = 0;
  const decoder = new Inflate((part) => {
    if (at + part.length > most) throw new RangeError('too long');
    take(part, at);
    at += part.length;
  });
  for (let from = 0; from < data.length; from += STEP) {
    decoder.push(data.subarray(from, from + STEP), from + STEP >= data.length);
  }
  return at;
}
