/** The library has no types of its own. */
declare module 'brotli/decompress.js' {
  /** Throws where the data is damaged, and where more comes out than `size`. */
  export default function decompress(data: Uint8Array, size: number): Uint8Array;
}
