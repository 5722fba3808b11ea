import { type Job, jobSchema } from '../../design/job/schema.ts';
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

interface Packed {
  readonly digits: string;
  readonly bytes: number;
}

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
export const packDesign = async (design: Design): Promise<Packed> => pack(withoutMade(withoutPhotos(design)));

/** What is done packed for links; in several where one would hold too much, for any part of it can be put together with the rest. */
export async function packJob(job: Job): Promise<readonly Packed[]> {
  const packed = await pack(job);
  const { facts } = job;
  if (packed.bytes <= MOST_BYTES || facts.length < 2) return [packed];
  const half = Math.ceil(facts.length / 2);
  const halves = [facts.slice(0, half), facts.slice(half)];
  return (await Promise.all(halves.map((some) => packJob({ facts: some })))).flat();
}

async function pack(data: unknown): Promise<Packed> {
  const text = shorthand().shorten(JSON.stringify(data));
  const packed = await pipe(new TextEncoder().encode(text), new CompressionStream('deflate-raw'), Infinity);
  if (!packed) throw new Error('Packing has no limit.');
  return { digits: digitsOf(packed), bytes: packed.length };
}

/** The design of a link; null when it is damaged, too large, or no design that this version opens. */
export async function unpackDesign(digits: string): Promise<Design | null> {
  const data = await unpack(digits);
  if (data === null) return null;
  try {
    // A link may hold anything: what is no design is refused by the door, or throws before it.
    const opened = openData(withMade(data as Parameters<typeof withMade>[0]));
    return opened.ok ? opened.design : null;
  } catch {
    return null;
  }
}

/** What a link tells is done; null when it is damaged, or no such thing. */
export async function unpackJob(digits: string): Promise<Job | null> {
  const opened = jobSchema.safeParse(await unpack(digits));
  return opened.success ? opened.data : null;
}

async function unpack(digits: string): Promise<unknown> {
  const packed = bytesOf(digits);
  if (!packed || packed.length === 0) return null;
  try {
    const bytes = await pipe(packed, new DecompressionStream('deflate-raw'), MOST_UNPACKED);
    if (!bytes) return null;
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
    return JSON.parse(shorthand().spell(text)) as unknown;
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
