import { pick } from '../../list/at.ts';

/** Bytes as decimal digits, which a QR code holds almost without loss: 22 bytes are 53 digits. */
const BLOCK_BYTES = 22;
/** Digits that hold each number of bytes: the first power of ten beyond the power of 256. */
const DIGITS = Array.from({ length: BLOCK_BYTES + 1 }, (_, n) =>
  n === 0 ? 0 : String(256n ** BigInt(n)).length,
);

export function digitsOf(bytes: Uint8Array): string {
  let digits = '';
  for (let at = 0; at < bytes.length; at += BLOCK_BYTES) {
    const block = bytes.subarray(at, at + BLOCK_BYTES);
    let value = 0n;
    for (const byte of block) value = value * 256n + BigInt(byte);
    digits += String(value).padStart(pick(DIGITS, block.length), '0');
  }
  return digits;
}

/** Null when no bytes give these digits. */
export function bytesOf(digits: string): Uint8Array<ArrayBuffer> | null {
  if (!/^\d*$/.test(digits)) return null;
  const bytes: number[] = [];
  const step = pick(DIGITS, BLOCK_BYTES);
  for (let at = 0; at < digits.length; at += step) {
    const block = digits.slice(at, at + step);
    const size = DIGITS.indexOf(block.length);
    let value = BigInt(block);
    if (size < 1 || value >= 256n ** BigInt(size)) return null;
    const part: number[] = [];
    for (let n = 0; n < size; n++) {
      part.push(Number(value % 256n));
      value /= 256n;
    }
    bytes.push(...part.reverse());
  }
  return Uint8Array.from(bytes);
}
