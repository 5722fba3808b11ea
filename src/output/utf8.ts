/** Node and browsers alike have it; the types of the core name neither. */
declare const TextEncoder: new () => { encode(text: string): Uint8Array };

const encoder = new TextEncoder();

/** The bytes of a text. */
export const utf8 = (text: string): Uint8Array => encoder.encode(text);
