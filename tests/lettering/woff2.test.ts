import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import { compress, decompress } from 'woff2-encoder';
import { Bytes } from '../../src/lettering/font/bytes.ts';
import { facesIn } from '../../src/lettering/font/faces.ts';
import { assemble, plainTables, tablesOf } from '../../src/lettering/font/tables.ts';
import { woff2Fonts } from '../../src/lettering/font/woff2.ts';
import { runs } from '../runs.ts';
import { collectionOf } from './collection.ts';
import { bytesOf } from './fonts.ts';

const packages = fileURLToPath(new URL('../../node_modules/@fontsource', import.meta.url));

/** Every WOFF 2 file among the fonts of the packages, a few thousand of 14 designs and a dozen scripts. */
const FILES = readdirSync(packages)
  .flatMap((name) =>
    readdirSync(`${packages}/${name}/files`).map((file) => `${packages}/${name}/files/${file}`),
  )
  .filter((file) => file.endsWith('.woff2'))
  .sort();
/** Some of them, spread over all. */
const some = (count: number) => {
  const step = Math.max(1, Math.floor(FILES.length / count));
  return FILES.filter((_, i) => i % step === 0);
};

const tablesIn = (file: Uint8Array) => plainTables(new Bytes(file, 'directory'));

/** What a file of ours and one of another unpacker hold, by a third library: every glyph, and every other table's bytes. */
function same(own: Uint8Array, other: Uint8Array, name: string): void {
  const [a, b] = [own, other].map((file) => fontkit.create(Buffer.from(file)) as fontkit.Font);
  if (!a || !b) throw new Error('no font');
  expect(a.numGlyphs, name).toBe(b.numGlyphs);
  for (let i = 0; i < a.numGlyphs; i++) {
    const [p, q] = [a.getGlyph(i), b.getGlyph(i)];
    expect(p.path.commands, `${name} ${i}`).toEqual(q.path.commands);
    expect(p.advanceWidth, `${name} ${i}`).toBe(q.advanceWidth);
  }
  const [mine, theirs] = [tablesIn(own), tablesIn(other)];
  expect([...mine.keys()].sort(), name).toEqual([...theirs.keys()].sort());
  // Glyphs may be told in other bytes; places of glyphs follow, and the head says how those are told.
  for (const [tag, { data }] of theirs) {
    if (['glyf', 'loca', 'head'].includes(tag)) continue;
    expect(Buffer.from(data).equals(mine.get(tag)?.data ?? new Uint8Array()), `${name} ${tag}`).toBe(true);
  }
}

/** A font of the tool as a plain file. */
const plainOf = (id: string): Uint8Array => {
  const { cff, tables } = tablesOf(bytesOf(id));
  const parts = [...tables].map(([tag, { data }]) => [tag, data] as const);
  return new Uint8Array(assemble(parts, cff));
};

describe('a WOFF 2 file', () => {
  // Oracle: woff2-encoder, the reference implementation of the format (C++ in WebAssembly); read by fontkit.
  it('holds the font that the reference implementation unpacks, glyph by glyph and table by table', async () => {
    const files = some(runs(24));
    expect(files.length).toBeGreaterThanOrEqual(24);
    for (const file of files) {
      const packed = new Uint8Array(readFileSync(file));
      const [own, ...more] = woff2Fonts(packed);
      if (!own || more.length > 0) throw new Error('not one font');
      same(own, await decompress(packed), file.slice(packages.length));
    }
  });

  it('is packed and unpacked again as it was, one font or a collection of several', async () => {
    const ids = ['lato', 'rye', 'bebas-neue'];
    const plain = ids.map(plainOf);
    for (const [i, file] of plain.entries()) {
      const [own] = woff2Fonts(await compress(file));
      if (!own) throw new Error('no font');
      same(own, file, ids[i] ?? '');
    }
    const fonts = woff2Fonts(await compress(collectionOf(plain)));
    expect(fonts).toHaveLength(3);
    for (const [i, own] of fonts.entries()) same(own, plain[i] ?? new Uint8Array(), `${ids[i]} of three`);
    const found = facesIn(await compress(collectionOf(plain)));
    expect(found.ok && found.faces.map(({ name }) => name)).toEqual(
      plain.map((file) => (fontkit.create(Buffer.from(file)) as fontkit.Font).fullName),
    );
  });

  it('that is cut off, or in which a bit is turned, is refused or read, and never throws', () => {
    const [file] = FILES.filter((name) => name.includes('rye-latin-400'));
    const packed = new Uint8Array(readFileSync(file ?? ''));
    let refused = 0;
    for (let end = 0; end < packed.length; end += 97) {
      const found = facesIn(packed.subarray(0, end));
      if (end >= 48) expect(found.ok, `${end}`).toBe(false);
    }
    for (let at = 0; at < packed.length; at += 211) {
      const turned = Uint8Array.from(packed);
      turned[at] = (turned[at] ?? 0) ^ (1 << (at % 8));
      if (!facesIn(turned).ok) refused += 1;
    }
    expect(refused).toBeGreaterThan(10);
  });

  it('that says to unfold without end is refused before it does', () => {
    const [file] = FILES.filter((name) => name.includes('rye-latin-400'));
    const packed = new Uint8Array(readFileSync(file ?? ''));
    // The first entry of its directory: a flag, then how long its table is, here the longest number that there is.
    const head = packed.subarray(0, 48);
    const endless = Uint8Array.from([...head, 0x00, 0x8f, 0xff, 0xff, 0xff, 0x7f, ...packed.subarray(50)]);
    expect(facesIn(endless)).toMatchObject({ ok: false });
    const many = Uint8Array.from(packed);
    many[12] = 0xff;
    expect(facesIn(many)).toEqual({ ok: false, reason: { code: 'damaged', table: 'directory' } });
  });
});
