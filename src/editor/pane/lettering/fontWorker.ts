import { expose } from 'comlink';
import { type FontReason, readFont } from '../../../lettering/font.ts';
import { fontProportions, type Proportion } from '../../../lettering/legibility.ts';

export type FontLook =
  | { readonly ok: true; readonly proportions: readonly Proportion[] }
  | { readonly ok: false; readonly reason: FontReason };

/** Reads a font apart from everything else: whatever is in the file, the page and the plan go on. */
const work = {
  look(bytes: Uint8Array, name: string): FontLook {
    const read = readFont(bytes, name);
    if (!read.ok) return read;
    return { ok: true, proportions: fontProportions(read.font) };
  },
};

export type FontWork = typeof work;

expose(work);
