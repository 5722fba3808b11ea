import { isLettered } from '../../design/made.ts';
import { openData } from '../../design/open.ts';
import type { Design } from '../../design/schema.ts';
import { bytesOf, digitsOf } from './digits.ts';
import { withMade, withoutMade } from './madeParts.ts';
import { shorthand } from './shorthand.ts';

/** What the largest QR code holds besides an address. */
export const MOST_BYTES = 2850;
/** A link's design once unpacked; stops a small link that unpacks to gigabytes. */
const MOST_UNPACKED = 2_000_000;

/** What a link has no room for: the bench cuts and marks, and shows no photo. */
const withoutPhotos = ({ photos: _, ...design }: Design): Design => ({
  ...design,
  parts: design.parts.map((part) =>
    isLettered(part) && part.lettering.photos
      ? { ...part, lettering: { ...part.lettering, photos: undefined } }
      : part,
  ),
});

/** A design packed for a link: without photos and what its assemblies make of it, shorthand, deflated, as digits. */
export async function packDesign(design: Design): Promise<{ digits: string; bytes: number }> {
  const text = shorthand().shorten(JSON.stringify(withoutMade(withoutPhotos(design))));
  const packed = await pipe(new TextEncoder().encode(text), new CompressionStream('deflate-raw'), Infinity);
  if (!packed) throw new Error('Packing has no limit.');
  return { digits: digitsOf(packed), bytes: packed.length };
}

/** The design of a link; null when it is damaged, too large, or no design that this version opens. */
export async function unpackDesign(digits: string): Promise<Design | null> {
  const packed = bytesOf(digits);
  if (!packed || packed.length === 0) return null;
  try {
    const bytes = await pipe(packed, new DecompressionStream('deflate-raw'), MOST_UNPACKED);
    if (!bytes) return null;
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    // A link may hold anything: what is no design is refused by the door, or throws before it.
    const opened = openData(withMade(JSON.parse(shorthand().spell(text))));
    return opened.ok ? opened.design : null;
  } catch {
    return null;
  }
}

/** Null when more than `most` bytes come out. */
async function pipe(
  bytes: Uint8Array<ArrayBuffer>,
  through: CompressionStream | DecompressionStream,
  most: number,
): Promise<Uint8Array | null> {
  const reader = new Blob([bytes]).stream().pipeThrough(through).getReader();
  const parts: Uint8Array[] = [];
  let size = 0;
  for (;;) {
    const { done, value } = await reader.read();
    if (done) break;
    size += value.length;
    if (size > most) {
      await reader.cancel();
      return null;
    }
    parts.push(value);
  }
  const whole = new Uint8Array(size);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
