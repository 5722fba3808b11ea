import type { Bytes } from '../../../lettering/font/bytes.ts';

const SINGLE = 1;

/**
 * What a feature of a font puts in place of single glyphs (OpenType specification, GSUB lookup type 1, by a difference or
 * a list); all other glyphs stay. The feature is taken whatever the script, since figures
 * serve all of them.
 */
export function singleSubstitutes(gsub: Bytes, tag: string): (glyph: number) => number {
  const instead = new Map<number, number>();
  const lookups = gsub.u16(8);
  for (const index of lookupsOf(gsub, tag)) {
    const lookup = lookups + gsub.u16(lookups + 2 + 2 * index);
    if (gsub.u16(lookup) !== SINGLE) continue;
    for (let i = 0; i < gsub.u16(lookup + 4); i++) {
      const at = lookup + gsub.u16(lookup + 6 + 2 * i);
      const listed = gsub.u16(at) === 2;
      coveredBy(gsub, at + gsub.u16(at + 2)).forEach((glyph, k) => {
        instead.set(glyph, listed ? gsub.u16(at + 6 + 2 * k) : (glyph + gsub.i16(at + 4)) & 0xffff);
      });
    }
  }
  return (glyph) => instead.get(glyph) ?? glyph;
}

/** Lookups of the first feature of this name. */
function lookupsOf(gsub: Bytes, tag: string): number[] {
  const features = gsub.u16(6);
  for (let i = 0; i < gsub.u16(features); i++) {
    const record = features + 2 + 6 * i;
    if (gsub.tag(record) !== tag) continue;
    const feature = features + gsub.u16(record + 4);
    return Array.from({ length: gsub.u16(feature + 2) }, (_, k) => gsub.u16(feature + 4 + 2 * k));
  }
  return [];
}

/** Glyphs of a coverage table in its order. */
function coveredBy(gsub: Bytes, at: number): number[] {
  const count = gsub.u16(at + 2);
  if (gsub.u16(at) === 1) return Array.from({ length: count }, (_, i) => gsub.u16(at + 4 + 2 * i));
  return Array.from({ length: count }, (_, i) => at + 4 + 6 * i).flatMap((range) => {
    const [from, to] = [gsub.u16(range), gsub.u16(range + 2)];
    return Array.from({ length: to - from + 1 }, (_, k) => from + k);
  });
}
