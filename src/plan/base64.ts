/** Node and browsers alike have it; the types of the core name neither. */
declare const atob: (text: string) => string;

declare const btoa: (bytes: string) => string;

/** The base64 text of bytes, in stretches, since a call takes only so many arguments. */
export function base64Of(bytes: Uint8Array): string {
  const STRETCH = 0x8000;
  let text = '';
  for (let i = 0; i < bytes.length; i += STRETCH) {
    text += String.fromCharCode(...bytes.subarray(i, i + STRETCH));
  }
  return btoa(text);
}

/** Bytes of a base64 text (RFC 4648, section 4); characters outside the alphabet are passed over. */
export function bytesOfBase64(text: string): Uint8Array {
  const plain = text.replace(/[^A-Za-z0-9+/]/g, '');
  // A last character alone stands for less than a byte.
  const whole = plain.length % 4 === 1 ? plain.slice(0, -1) : plain;
  return Uint8Array.from(atob(whole), (c) => c.charCodeAt(0));
}
