/**
 * What the library for PDF files takes for its packer in the made command (`start.mjs`): the engine's own, which is
 * ready at once, where the one in script runs cold for each of some seventy streams and makes room anew for each.
 * Other streams for the same content, so that PDFs of the command and of the browser differ in their bytes alone.
 */

export { deflateSync as zlibSync } from 'node:zlib';
export * from 'fflate';
