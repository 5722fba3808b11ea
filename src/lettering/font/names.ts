import { Bytes, FontProblem } from './bytes.ts';

/** Name records by what they say, and those of the platform that is read: its English is preferred. */
export const NAMED = { family: 1, whole: 4, typeface: 16 };
const UNICODE = 3;
const ENGLISH = 0x409;

/** What a font calls itself, in English where it says so; null where it says nothing that can be read. */
export function nameIn(tables: ReadonlyMap<string, Bytes>, what: number): string | null {
  const table = tables.get('name');
  if (!table) return null;
  try {
    let found: string | null = null;
    const [count, storage] = [table.u16(2), table.u16(4)];
    for (let at = 6; at < 6 + 12 * count; at += 12) {
      if (table.u16(at) !== UNICODE || table.u16(at + 6) !== what) continue;
      const english = table.u16(at + 4) === ENGLISH;
      if (found !== null && !english) continue;
      found = utf16(table.slice(storage + table.u16(at + 10), table.u16(at + 8)));
      if (english) break;
    }
    return found === '' ? null : found;
  } catch (error) {
    if (error instanceof FontProblem) return null;
    throw error;
  }
}

function utf16(data: Uint8Array): string {
  const text = new Bytes(data, 'name');
  return Array.from({ length: data.length >> 1 }, (_, i) => String.fromCharCode(text.u16(2 * i))).join('');
}
