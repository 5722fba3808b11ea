import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { fontsIn } from '../design/look.ts';
import { isLettered } from '../design/made.ts';
import type { Design } from '../design/schema.ts';
import { needsShaper } from '../lettering/script.ts';
import type { Shaper } from '../lettering/shaping/shape.ts';
import { shaperOf } from '../lettering/shaping/shaper.ts';
import type { Tables } from '../materials/types.ts';
import { TYPEFACE_FILES, typefaceOf } from '../output/pdf/font/face.ts';
import type { Letters } from '../output/pdf/letters.ts';
import { type CodeRanges, type ScriptPackage, scriptFiles, scriptsOf } from '../output/script/scripts.ts';
import type { Supplies } from '../plan/types.ts';
import type { Language } from '../plan/words/languages.ts';
import { tablesIn } from '../plan/words/tableNames.ts';

const ASSETS = new URL('../../assets/', import.meta.url);
const require = createRequire(import.meta.url);

function table<K extends keyof Tables>(name: K): Tables[K] {
  return JSON.parse(readFileSync(new URL(`materials/${name}.json`, ASSETS), 'utf8')) as Tables[K];
}

/** The tables that come with the tool. */
export function readTables(): Tables {
  return {
    materials: table('materials'),
    stocks: table('stocks'),
    brads: table('brads'),
    screws: table('screws'),
    containers: table('containers'),
    glues: table('glues'),
    tapes: table('tapes'),
    papers: table('papers'),
    mattresses: table('mattresses'),
    hardware: table('hardware'),
    fonts: table('fonts'),
  };
}

function packaged(owner: string, file: string): Uint8Array {
  const folder = dirname(require.resolve(`${owner}/package.json`));
  return new Uint8Array(readFileSync(join(folder, file)));
}

/** Bytes of the table's fonts that the design's signs name. */
export function readFonts(tables: Tables, design: Design): Map<string, Uint8Array> {
  const fonts = new Map<string, Uint8Array>();
  for (const part of design.parts) {
    if (!isLettered(part)) continue;
    for (const font of fontsIn(part.lettering)) {
      const entry = tables.fonts.find((f) => f.id === font);
      if (entry && !fonts.has(font)) fonts.set(font, packaged(entry.package, entry.file));
    }
  }
  return fonts;
}

/** What sets letters together, where letters of the design ask for it. */
export function readShaper({ parts }: Pick<Design, 'parts'>): Shaper | null {
  if (!needsShaper(parts.filter(isLettered).map(({ lettering }) => lettering))) return null;
  const library = new WebAssembly.Module(readFileSync(require.resolve('harfbuzzjs/dist/harfbuzz.wasm')));
  return shaperOf((imports) => new WebAssembly.Instance(library, imports).exports);
}

/** Bytes of the font files that the names of a design ask for, where they are in scripts that the typeface of the sheets has no letters for. */
export function readScripts(design: Design): Uint8Array[] {
  const ranges = (owner: ScriptPackage) => require(`@fontsource/${owner}/unicode.json`) as CodeRanges;
  return scriptFiles(JSON.stringify(design), ranges).map(({ owner, file }) =>
    packaged(`@fontsource/${owner}`, file),
  );
}

/** What the text of a design's PDFs is set with. */
export function readLetters(design: Design): Letters {
  const base = (weight: keyof typeof TYPEFACE_FILES) =>
    packaged('@fontsource/barlow', TYPEFACE_FILES[weight]);
  return {
    typeface: typefaceOf({ regular: base('regular'), bold: base('bold') }),
    scripts: scriptsOf(readScripts(design)),
  };
}

/** All that a plan needs besides the design. What is told of no printer is drawn true to size. */
export function readSupplies(
  design: Design,
  language: Language = 'en',
  correction: Supplies['correction'] = { x: 1, y: 1 },
): Supplies {
  const tables = readTables();
  return {
    tables: tablesIn(language, tables),
    fonts: readFonts(tables, design),
    shaper: readShaper(design),
    correction,
    language,
  };
}
