import opentype from 'opentype.js';
import { assemble, tablesOf } from '../../src/lettering/font/tables.ts';
import { bytesOf } from './fonts.ts';

/*
 * A font with features, written by hand after OpenType 1.9 ("GSUB", "Layout common tables", "name"), since the fonts that
 * ship have hardly any: Lato with a substitution table of its own, in which other letters play the part of alternates.
 */

const lato = opentype.parse(bytesOf('lato').slice().buffer);
const glyphOf = (character: string): number => lato.charToGlyphIndex(character);

const words = (...values: number[]): number[] => values.flatMap((value) => [(value >> 8) & 255, value & 255]);
const tag = (text: string): number[] => [...text].map((character) => character.charCodeAt(0));

/** Parts one behind the other, after a head that tells where each begins, counted from the head's own start. */
function offsets(
  head: number[],
  parts: readonly number[][],
  record: (i: number) => number[] = () => [],
): number[] {
  const size = head.length + parts.reduce((sum, _, i) => sum + record(i).length + 2, 0);
  let at = size;
  const told = parts.flatMap((part, i) => {
    const own = [...record(i), ...words(at)];
    at += part.length;
    return own;
  });
  return [...head, ...told, ...parts.flat()];
}

export interface WrittenFeature {
  readonly tag: string;
  /** Letter to letters: what stands in its place, in order of preference. */
  readonly forms: readonly (readonly [string, string])[];
  /** The number of its name. */
  readonly named?: number;
}

/** Lato with these features, and names by their numbers. */
export function featuredFont(
  features: readonly WrittenFeature[],
  names: readonly (readonly [number, string])[] = [],
): Uint8Array {
  const sorted = [...features].sort((a, b) => (a.tag < b.tag ? -1 : 1));
  const lookups = sorted.map(({ forms }) => {
    const own = [...forms].sort(([a], [b]) => glyphOf(a) - glyphOf(b));
    const sets = own.map(([, others]) => [
      ...words([...others].length),
      ...words(...[...others].map(glyphOf)),
    ]);
    const covered = words(1, own.length, ...own.map(([letter]) => glyphOf(letter)));
    // Alternate substitution, format 1: after the place of the coverage comes how many sets there are, then theirs.
    const size = 6 + 2 * sets.length;
    let at = size + covered.length;
    const places = sets.map((one) => {
      at += one.length;
      return at - one.length;
    });
    const subtable = [...words(1, size, sets.length, ...places), ...covered, ...sets.flat()];
    return offsets(words(3, 0, 1), [subtable]);
  });
  const featureList = offsets(
    words(sorted.length),
    sorted.map(({ named }, i) =>
      named === undefined ? words(0, 1, i) : [...words(6, 1, i), ...words(0, named)],
    ),
    (i) => tag(sorted[i]?.tag ?? ''),
  );
  const languages = words(4, 0, 0, 0xffff, sorted.length, ...sorted.map((_, i) => i));
  const scriptList = offsets(words(1), [languages], () => tag('DFLT'));
  const gsub = offsets(words(1, 0), [scriptList, featureList, offsets(words(lookups.length), lookups)]);
  const { cff, tables } = tablesOf(bytesOf('lato'));
  const parts = new Map([...tables].map(([name, { data }]) => [name, data]));
  parts.set('GSUB', Uint8Array.from(gsub));
  parts.set('name', Uint8Array.from(nameTable(names)));
  const inOrder = [...parts].sort(([a], [b]) => (a < b ? -1 : 1));
  return new Uint8Array(assemble(inOrder, cff));
}

function nameTable(names: readonly (readonly [number, string])[]): number[] {
  const texts = names.map(([, text]) => words(...[...text].map((character) => character.charCodeAt(0))));
  let at = 0;
  const records = names.flatMap(([number], i) => {
    const length = texts[i]?.length ?? 0;
    at += length;
    return words(3, 1, 0x409, number, length, at - length);
  });
  return [...words(0, names.length, 6 + records.length), ...records, ...texts.flat()];
}
