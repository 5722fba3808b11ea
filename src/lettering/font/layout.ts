import { stylisticSet } from '../../design/features.ts';
import type { LayoutRules } from '../shaping/shape.ts';
import { type Bytes, FontProblem } from './bytes.ts';
import type { KernOf } from './kerning.ts';
import { nameIn } from './names.ts';
import { assemble, type FontTables } from './tables.ts';

/** Tables that shaping goes by, in the order that a file has to have; outlines are not among them. */
const SHAPING = ['GDEF', 'GPOS', 'GSUB', 'OS/2', 'cmap', 'head', 'hhea', 'hmtx', 'maxp'];

/** A font as a plain file of what shaping goes by. */
export function fileToShape({ cff, tables }: FontTables): Uint8Array {
  const parts = SHAPING.flatMap((tag) => {
    const table = tables.get(tag);
    return table ? [[tag, table.data] as const] : [];
  });
  return new Uint8Array(assemble(parts, cff));
}

/** What the tables of a font for substitution and positions have rules for (OpenType 1.9, "Layout common tables"). */
export function rulesOf(
  tables: ReadonlyMap<string, Bytes>,
  glyphOf: (code: number) => number,
  kernOf: KernOf,
): LayoutRules {
  const both = ['GSUB', 'GPOS'].flatMap((tag) => tables.get(tag) ?? []);
  const features = new Set(both.flatMap((table) => recordsOf(table, FEATURE_LIST).map(({ tag }) => tag)));
  return {
    scripts: new Set(recordsOf(tables.get('GSUB'), SCRIPT_LIST).map(({ tag }) => tag)),
    features,
    glyphOf,
    // The shaping library does without the older table.
    tabled: features.has('kern') ? null : kernOf,
  };
}

/** A feature of a font, by its tag, and what the font calls it where it says so. */
export interface FontFeature {
  readonly tag: string;
  readonly name: string | null;
}

/** The features by which a font draws letters in other forms, each once. */
export function featuresIn(tables: ReadonlyMap<string, Bytes>): FontFeature[] {
  const gsub = tables.get('GSUB');
  const found = new Map(recordsOf(gsub, FEATURE_LIST).map((record) => [record.tag, record]));
  return [...found.values()].map(({ tag, at }) => ({
    tag,
    name: gsub && stylisticSet(tag) !== null ? nameOfSet(gsub, at, tables) : null,
  }));
}

/** What a font calls a stylistic set ("ss01 to ss20" of the feature registry: version, then a name's number). */
function nameOfSet(gsub: Bytes, at: number, tables: ReadonlyMap<string, Bytes>): string | null {
  try {
    const told = gsub.u16(at);
    return told === 0 ? null : nameIn(tables, gsub.u16(at + told + 2));
  } catch (error) {
    if (error instanceof FontProblem) return null;
    throw error;
  }
}

/** Where the header of both tables tells where their lists stand. */
const SCRIPT_LIST = 4;
const FEATURE_LIST = 6;
/** Real fonts have some hundred. */
const MOST_RECORDS = 4000;

interface LayoutRecord {
  readonly tag: string;
  /** Where what it tells of stands in its table. */
  readonly at: number;
}

/** Records of a list of scripts or features; as many as can be read. */
function recordsOf(table: Bytes | undefined, list: number): LayoutRecord[] {
  const records: LayoutRecord[] = [];
  if (!table) return records;
  try {
    const start = table.u16(list);
    const count = Math.min(table.u16(start), MOST_RECORDS);
    for (let i = 0; i < count; i += 1) {
      const record = start + 2 + 6 * i;
      records.push({ tag: table.tag(record), at: start + table.u16(record + 4) });
    }
  } catch (error) {
    if (!(error instanceof FontProblem)) throw error;
  }
  return records;
}
