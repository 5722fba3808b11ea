import { at } from '../list/at.ts';
import { joinedBytes } from './joinedBytes.ts';
/** A file to be packed: its name and what it holds. */
export interface Packed {
  readonly name: string;
  readonly bytes: Uint8Array;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
/** Version 2.0 of the format; names are UTF-8 (bit 11). */
const VERSION = 20;
const UTF8_NAMES = 1 << 11;
/** The first day that the format can tell, 1 January 1980: the same files make the same bytes. */
const DATE = (1 << 5) | 1;

/**
 * Packs files into one ZIP file, uncompressed: PDFs are compressed already, and the rest is small. By the layout of
 * APPNOTE.TXT 6.3 (PKWARE), sections 4.3.7, 4.3.12 and 4.3.16.
 */
export function zipOf(files: readonly Packed[]): Uint8Array {
  const pieces: Uint8Array[] = [];
  const directory: Uint8Array[] = [];
  let at = 0;
  for (const { name, bytes } of files) {
    const label = new TextEncoder().encode(name);
    const sum = crc32(bytes);
    // Version, flags, stored, time, date, checksum, both sizes, length of the name, nothing extra.
    const common = [
      ...[u16(VERSION), u16(UTF8_NAMES), u16(0), u16(0), u16(DATE)],
      ...[u32(sum), u32(bytes.length), u32(bytes.length), u16(label.length), u16(0)],
    ];
    const local = joinedBytes([u32(LOCAL), ...common, label]);
    directory.push(
      // No comment, first disk, no attributes, and where it begins.
      joinedBytes([u32(CENTRAL), u16(VERSION), ...common, u16(0), u16(0), u16(0), u32(0), u32(at), label]),
    );
    pieces.push(local, bytes);
    at += local.length + bytes.length;
  }
  const table = joinedBytes(directory);
  const count = u16(files.length);
  const end = [u32(END), u16(0), u16(0), count, count, u32(table.length), u32(at), u16(0)];
  return joinedBytes([...pieces, table, ...end]);
}

const u16 = (n: number): Uint8Array => Uint8Array.of(n & 255, (n >>> 8) & 255);
const u32 = (n: number): Uint8Array =>
  Uint8Array.of(n & 255, (n >>> 8) & 255, (n >>> 16) & 255, (n >>> 24) & 255);

/** Of each byte, by the polynomial of ISO 3309 in reverse. */
const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) sum = (sum >>> 8) ^ at(CRC_TABLE, (sum ^ byte) & 255);
  return (sum ^ 0xffffffff) >>> 0;
}
