import { TYPEFACE_FILES, typefaceOf } from '../../output/pdf/font/face.ts';
import type { Letters } from '../../output/pdf/letters.ts';
import {
  type CodeRanges,
  otherCharacters,
  type ScriptPackage,
  scriptFiles,
  scriptsOf,
} from '../../output/script/scripts.ts';

/** Which codes each file of a package holds, read when a name first asks. */
const ranges = import.meta.glob<CodeRanges>('../../../node_modules/@fontsource/noto-*/unicode.json', {
  import: 'default',
});

const urls = import.meta.glob<string>('../../../node_modules/@fontsource/noto-*/files/*-400-normal.woff', {
  eager: true,
  query: '?url',
  import: 'default',
});

const typefaceUrls = import.meta.glob<string>(
  '../../../node_modules/@fontsource/barlow/files/barlow-latin-[47]00-normal.woff',
  { eager: true, query: '?url', import: 'default' },
);

/**
 * What the text of PDFs is set with, for names of any script in `text`. Throws where the typeface of the sheets
 * cannot be had, which comes with the tool.
 */
export async function lettersFor(text: string): Promise<Letters> {
  const base = async (weight: keyof typeof TYPEFACE_FILES) => {
    const bytes = await bytesAt(typefaceUrls[pathOf('barlow', TYPEFACE_FILES[weight])]);
    if (!bytes) throw new Error(`${TYPEFACE_FILES[weight]} cannot be read`);
    return bytes;
  };
  const [regular, bold, scripts] = await Promise.all([base('regular'), base('bold'), scriptFonts(text)]);
  return { typeface: typefaceOf({ regular, bold }), scripts: scriptsOf(scripts) };
}

/**
 * Bytes of the font files for the characters of `text` that the typeface of the sheets lacks. A file that
 * cannot be had (the first use, and no network) is left out: its letters are then written as the nearest ones.
 */
async function scriptFonts(text: string): Promise<Uint8Array[]> {
  if (otherCharacters(text).length === 0) return [];
  const tables = await Promise.all(
    Object.entries(ranges).map(async ([path, load]) => [path.split('/').at(-2), await load()] as const),
  );
  const known = new Map(tables);
  const files = scriptFiles(text, (owner: ScriptPackage) => known.get(owner) ?? {});
  const read = await Promise.all(files.map(({ owner, file }) => bytesAt(urls[pathOf(owner, file)])));
  return read.flatMap((bytes) => bytes ?? []);
}

const pathOf = (owner: string, file: string): string => `../../../node_modules/@fontsource/${owner}/${file}`;

async function bytesAt(url: string | undefined): Promise<Uint8Array | null> {
  if (url === undefined) return null;
  try {
    const response = await fetch(new URL(url, self.location.href));
    return response.ok ? new Uint8Array(await response.arrayBuffer()) : null;
  } catch {
    return null;
  }
}
