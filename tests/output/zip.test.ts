import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { zipOf } from '../../src/output/zip.ts';
import { runs } from '../runs.ts';

/**
 * Reads a ZIP file from its end, as programs do: by the layout of APPNOTE.TXT 6.3 (PKWARE), sections 4.3.16, 4.3.12 and
 * 4.3.7, from memory. Checksums are those of Node's zlib.
 */
function unpack(zip: Uint8Array): { name: string; bytes: Uint8Array }[] {
  const view = new DataView(zip.buffer, zip.byteOffset, zip.byteLength);
  const end = zip.length - 22;
  expect(view.getUint32(end, true)).toBe(0x06054b50);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  expect(at + view.getUint32(end + 12, true)).toBe(end);
  return Array.from({ length: count }, () => {
    expect(view.getUint32(at, true)).toBe(0x02014b50);
    const [sum, size] = [view.getUint32(at + 16, true), view.getUint32(at + 24, true)];
    const long = view.getUint16(at + 28, true);
    const name = new TextDecoder().decode(zip.subarray(at + 46, at + 46 + long));
    const local = view.getUint32(at + 42, true);
    at += 46 + long + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
    expect(view.getUint32(local, true)).toBe(0x04034b50);
    expect(view.getUint16(local + 8, true)).toBe(0);
    const start = local + 30 + view.getUint16(local + 26, true) + view.getUint16(local + 28, true);
    const bytes = zip.subarray(start, start + size);
    expect(crc32(bytes)).toBe(sum);
    expect(view.getUint32(local + 14, true)).toBe(sum);
    return { name, bytes };
  });
}

it('gives back what was packed, whatever it is named', () => {
  const file = fc.record({ name: fc.string({ unit: 'grapheme', maxLength: 40 }), bytes: fc.uint8Array() });
  fc.assert(
    fc.property(fc.array(file, { maxLength: 8 }), (files) => {
      const found = unpack(zipOf(files));
      expect(found.map(({ name }) => name)).toEqual(files.map(({ name }) => name));
      expect(found.map(({ bytes }) => [...bytes])).toEqual(files.map(({ bytes }) => [...bytes]));
    }),
    { numRuns: runs(200) },
  );
});
