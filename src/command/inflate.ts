import { inflateRawSync } from 'node:zlib';

/**
 * What the tables of WOFF files are unpacked by in the made command (`start.mjs`), as `lettering/font/inflate.ts` does it
 * elsewhere: the engine's own is ready at once, where the one in script runs cold.
 */
export function inflate(data: Uint8Array, size: number): Uint8Array {
  // In one piece, and no byte more than there are to be.
  const room = Math.max(64, size);
  const out = inflateRawSync(data, { chunkSize: room, maxOutputLength: room });
  if (out.length !== size) throw new RangeError(out.length > size ? 'too long' : 'too short');
  return new Uint8Array(out.buffer, out.byteOffset, size);
}
