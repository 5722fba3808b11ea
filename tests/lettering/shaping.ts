import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Form, formOf } from '../../src/lettering/font/form.ts';
import { type Font, readFont } from '../../src/lettering/font.ts';
import type { Cluster, LineToShape } from '../../src/lettering/shaping/shape.ts';
import { shaperOf } from '../../src/lettering/shaping/shaper.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const library = new WebAssembly.Module(readFileSync(`${root}/node_modules/harfbuzzjs/dist/harfbuzz.wasm`));

export const SHAPER = shaperOf((imports) => new WebAssembly.Instance(library, imports).exports);

/** Fonts of scripts that need shaping, under the SIL Open Font License. */
const FILES = {
  arabic: 'noto-sans-arabic/files/noto-sans-arabic-arabic-400-normal.woff',
  hebrew: 'noto-sans-hebrew/files/noto-sans-hebrew-hebrew-400-normal.woff',
  thai: 'noto-sans-thai/files/noto-sans-thai-thai-400-normal.woff',
  devanagari: 'mukta/files/mukta-devanagari-400-normal.woff',
} as const;
export type ScriptFont = keyof typeof FILES;

export const scriptBytes = (id: ScriptFont): Uint8Array =>
  new Uint8Array(readFileSync(`${root}/node_modules/@fontsource/${FILES[id]}`));

export function shapingFont(bytes: Uint8Array, name = 'x'): Font {
  const read = readFont(bytes, name, SHAPER);
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.font;
}

/** A text as a line of one size. */
export function shaped(font: Font, text: string, changes: Partial<LineToShape> = {}): readonly Cluster[] {
  if (!font.shape) throw new Error('no shaper');
  const characters = [...text];
  return font.shape({ characters, sizes: characters.map(() => -1), spaced: false, features: [], ...changes });
}

export function formIn(key: string): Form {
  const form = formOf(key);
  if (!form) throw new Error(`${key} is no form`);
  return form;
}
