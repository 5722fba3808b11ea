import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as fontkit from 'fontkit';
import { describe, expect, it } from 'vitest';
import decompress from 'woff2-encoder/decompress';
import { fontsIn } from '../../src/editor/pane/lettering/fontsIn.ts';
import { pinned } from '../../src/editor/pane/lettering/pinned.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import { assemble, tablesOf } from '../../src/lettering/font/tables.ts';
import { readFont } from '../../src/lettering/font.ts';
import { collectionOf } from '../lettering/collection.ts';
import { bytesOf } from '../lettering/fonts.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
/** As a plain file. */
const plainOf = (id: string): Uint8Array => {
  const { cff, tables } = tablesOf(bytesOf(id));
  return new Uint8Array(
    assemble(
      [...tables].map(([tag, { data }]) => [tag, data]),
      cff,
    ),
  );
};
const opened = (bytes: Uint8Array) => {
  const found = fontsIn(bytes);
  if (!found.ok) throw new Error(JSON.stringify(found.reason));
  return found.fonts;
};
const readOf = (file: Uint8Array) => {
  const read = readFont(file, 'x');
  if (!read.ok) throw new Error(JSON.stringify(read.reason));
  return read.font;
};
const TEXT = 'HAMBURGefonstiv 0689 &?';

/** Oracle: fontkit, a second font library. */
const widthsBy = (font: fontkit.Font) =>
  [...TEXT].map((c) => font.glyphForCodePoint(c.codePointAt(0) ?? 0).advanceWidth);

describe('collections', () => {
  it('give each of their fonts by its name, as a second library has it', () => {
    const ids = ['lato', 'rye', 'bebas-neue'];
    const files = ids.map(plainOf);
    const bytes = collectionOf(files);
    const { fonts } = fontkit.create(Buffer.from(bytes)) as unknown as { fonts: fontkit.Font[] };
    const found = opened(bytes);
    expect(found.map(({ name }) => name)).toEqual(fonts.map((font) => font.fullName));
    expect(found.map(({ file }) => [...TEXT].map(readOf(file).advance))).toEqual(fonts.map(widthsBy));
    for (const [i, { file }] of found.entries()) {
      const alone = readOf(bytesOf(ids[i] ?? ''));
      for (const c of TEXT) expect(readOf(file).outline(c)).toEqual(alone.outline(c));
    }
  });

  it('give what can be read where one of their fonts is damaged, and say why where none is', () => {
    const file = plainOf('lato');
    const broken = file.slice();
    broken.fill(0xff, 12, 12 + 16 * 3);
    const sound = opened(collectionOf([file, file]));
    expect(sound).toHaveLength(2);
    const none = fontsIn(collectionOf([]));
    expect(none).toMatchObject({ ok: false, reason: { code: 'damaged' } });
    expect(fontsIn(collectionOf([broken]))).toMatchObject({ ok: false });
    const text = new TextEncoder().encode('This is a letter, not a font.'.repeat(20));
    expect(fontsIn(text)).toEqual({ ok: false, reason: { code: 'not-a-font' } });
    const endless = collectionOf([file]);
    new DataView(endless.buffer).setUint32(8, 4_000_000_000);
    expect(fontsIn(endless)).toMatchObject({ ok: false, reason: { code: 'damaged' } });
  });
});

describe('variable fonts', () => {
  const packed = readFileSync(
    `${root}/node_modules/@fontsource-variable/domine/files/domine-latin-wght-normal.woff2`,
  );
  const module = readFileSync(`${root}/node_modules/harfbuzzjs/dist/harfbuzz-subset.wasm`);

  it('are offered as what they name, and become plain fonts of that place by a second library', async () => {
    const bytes = await decompress(packed);
    const found = opened(bytes);
    const oracle = fontkit.create(Buffer.from(bytes)) as fontkit.Font & {
      readonly namedVariations: Readonly<Record<string, Record<string, number>>>;
    };
    const named = Object.entries(oracle.namedVariations);
    expect(found.map(({ name }) => name)).toEqual(named.map(([style]) => `${oracle.familyName} ${style}`));
    for (const [i, { file, at }] of found.entries()) {
      const [style, places] = named[i] ?? ['', {}];
      expect(Object.fromEntries((at ?? []).map(({ axis, value }) => [axis, value]))).toEqual(places);
      const made = await pinned(file, at ?? [], module);
      const font = readOf(made ?? new Uint8Array());
      const varied = oracle.getVariation(style);
      [...TEXT].forEach((c, k) => {
        const glyph = varied.glyphForCodePoint(c.codePointAt(0) ?? 0);
        // Points and widths of an instance are rounded to whole units, the oracle's are not; 1000 units are an em.
        expect(Math.abs(font.advance(c) - glyph.advanceWidth), `${style} ${c}`).toBeLessThanOrEqual(1);
        const own = font.outline(c);
        if (own.length === 0) return;
        const { x, y, w, h } = boxOfPath(own);
        const { minX, minY, maxX, maxY } = glyph.path.bbox;
        for (const [value, truth] of [
          [x, minX],
          [y, minY],
          [x + w, maxX],
          [y + h, maxY],
        ] as const) {
          expect(Math.abs(value - truth), `${style} ${c} ${k}`).toBeLessThanOrEqual(1);
        }
      });
    }
    const [regular, bold] = await Promise.all(found.map(({ file, at }) => pinned(file, at ?? [], module)));
    expect(readOf(bold ?? packed).advance('n')).toBeGreaterThan(readOf(regular ?? packed).advance('n'));
  });

  it('that are damaged are refused or become some font, and end', async () => {
    const [first] = opened(await decompress(packed));
    for (let i = 1; i <= 12; i += 1) {
      const file = (first?.file ?? new Uint8Array()).slice();
      for (let k = 0; k < 8; k += 1) file[(i * 104_729 + k * 7919) % file.length] = (i * 37 + k * 11) % 256;
      const made = await pinned(file, first?.at ?? [], module).catch(() => null);
      if (made) expect(typeof readFont(made, 'x').ok).toBe('boolean');
    }
  });
});
