const ALPHABET = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';

/** Bytes of a base64 text (RFC 4648, section 4); characters outside the alphabet are passed over. */
export function bytesOfBase64(text: string): Uint8Array {
  const bytes = new Uint8Array(Math.floor((text.length * 3) / 4));
  let held = 0;
  let bits = 0;
  let at = 0;
  for (const character of text) {
    const value = ALPHABET.indexOf(character);
    if (value < 0) continue;
    held = ((held << 6) | value) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes.subarray(0, at);
}
