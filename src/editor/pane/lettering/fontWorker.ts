import { expose } from 'comlink';
import subsetter from 'harfbuzzjs/dist/harfbuzz-subset.wasm?url';
import type { Face } from '../../../lettering/font/faces.ts';
import { type FontReason, readFont } from '../../../lettering/font.ts';
import { formsOf, type LetterForm } from '../../../lettering/forms.ts';
import { fontProportions } from '../../../lettering/legibility.ts';
import { shaperAtHand } from '../../shipped/shaper.ts';
import type { FontFacts } from './fontFacts.ts';
import { fontsIn } from './fontsIn.ts';
import { pinned } from './pinned.ts';

export type FontLook =
  | ({ readonly ok: true } & FontFacts)
  | { readonly ok: false; readonly reason: FontReason };

/** Reads a font apart from everything else: whatever is in the file, the page and the plan go on. */
const work = {
  look(bytes: Uint8Array, name: string): FontLook {
    const read = readFont(bytes, name);
    if (!read.ok) return read;
    return { ok: true, proportions: fontProportions(read.font), features: read.font.features() };
  },
  fontsIn,
  async forms(bytes: Uint8Array, letter: string): Promise<readonly LetterForm[]> {
    const read = readFont(bytes, '', await shaperAtHand());
    return read.ok ? formsOf(read.font, letter) : [];
  },
  /** A font as a file of its own that can be set in; null where none can be made of it. */
  async plain({ file, at, name }: Face): Promise<Uint8Array | null> {
    if (!at) return file;
    const made = await pinned(file, at, await (await fetch(subsetter)).arrayBuffer());
    return made && readFont(made, name).ok ? made : null;
  },
};

export type FontWork = typeof work;

expose(work);
