import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { type Font, readFont } from '../../src/lettering/font.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

interface Entry {
  readonly id: string;
  readonly package: string;
  readonly file: string;
  readonly stencilReady: boolean;
}

/** The families that ship, from the table. */
export const SHIPPED: readonly Entry[] = JSON.parse(
  readFileSync(`${root}/assets/materials/fonts.json`, 'utf8'),
) as Entry[];

export function bytesOf(id: string): Uint8Array {
  const entry = SHIPPED.find((one) => one.id === id);
  if (!entry) throw new Error(`no font ${id} in the table`);
  return new Uint8Array(readFileSync(`${root}/node_modules/${entry.package}/${entry.file}`));
}

export function fontOf(id: string): Font {
  const read = readFont(bytesOf(id), id);
  if (!read.ok) throw new Error(`${id}: ${JSON.stringify(read.reason)}`);
  return read.font;
}

/** Letters, digits and punctuation of a sign. */
export const CHARACTERS = [
  ...'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789',
  ...'&.,!?\'"-–—()[]@$%#/:;+*=’“”·°ÄÖÜäöüßÉéÇçÑñÅåØø',
];
