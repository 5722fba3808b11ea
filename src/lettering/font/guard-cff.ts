import { Bytes } from './bytes.ts';
import type { Safe } from './guard-truetype.ts';

/** A list of byte strings (Adobe Technical Note 5176, INDEX data). */
interface Index {
  readonly count: number;
  readonly end: number;
  readonly item: (i: number) => Bytes;
}

/** Operators of dictionaries; two-byte ones as 1200 + the second byte. */
const CHAR_STRINGS = 17;
const PRIVATE = 18;
const SUBROUTINES = 19;
const FONT_DICTS = 1236;
const FONT_SELECT = 1237;
/** Real fonts have at most some dozen; each one's subroutines are read anew. */
const MOST_FONT_DICTS = 64;
/** Instructions of one glyph, through all its subroutines. */
const MOST_STEPS = 200_000;
/** Type 2 charstrings may hold 48 numbers at a time (Technical Note 5177). */
const MOST_HELD = 192;
const MOST_DEPTH = 10;

/**
 * Guard of CFF outlines. Checks the lists that the outline library copies without looking, then runs a
 * glyph's charstring only to count its steps: subroutines that call each other can stand for more steps
 * than there are atoms. Glyphs composed the old way, by `endchar` with four numbers, are not drawn.
 */
export function guardCff(cff: Bytes): Safe {
  const names = indexAt(cff, cff.u8(2));
  const tops = indexAt(cff, names.end);
  const strings = indexAt(cff, tops.end);
  const shared = indexAt(cff, strings.end);
  const top = dictOf(tops.item(0));
  const glyphs = indexAt(cff, top.get(CHAR_STRINGS)?.[0] ?? cff.damaged());
  const fontDicts = fontDictsOf(cff, top);
  const locals = fontDicts.map((dict) => subroutinesOf(cff, dict));
  const select = top.get(FONT_SELECT)?.[0];
  const localOf = (glyph: number) =>
    locals[fontDicts.length > 1 && select !== undefined ? selected(cff, select, glyph) : 0] ?? null;
  return (glyph) => {
    if (glyph >= glyphs.count) return false;
    const budget = { steps: 0, held: [] as number[], stems: 0 };
    return runs(glyphs.item(glyph), shared, localOf(glyph), budget, 0) !== 'stop';
  };
}

function indexAt(cff: Bytes, at: number): Index {
  const count = cff.u16(at);
  if (count === 0) return { count, end: at + 2, item: () => cff.damaged() };
  const size = cff.u8(at + 2);
  if (size < 1 || size > 4) cff.damaged();
  const offset = (i: number): number => {
    let value = 0;
    for (let k = 0; k < size; k += 1) value = value * 256 + cff.u8(at + 3 + i * size + k);
    return value;
  };
  const base = at + 2 + (count + 1) * size;
  let last = 1;
  for (let i = 0; i <= count; i += 1) {
    const next = offset(i);
    if (next < last || base + next > cff.length) cff.damaged();
    last = next;
  }
  const item = (i: number) => new Bytes(cff.slice(base + offset(i), offset(i + 1) - offset(i)), cff.table);
  return { count, end: base + last, item };
}

function dictOf(bytes: Bytes): Map<number, number[]> {
  const entries = new Map<number, number[]>();
  let numbers: number[] = [];
  for (let at = 0; at < bytes.length; ) {
    const b = bytes.u8(at);
    if (b <= 21) {
      const long = b === 12;
      entries.set(long ? 1200 + bytes.u8(at + 1) : b, numbers);
      numbers = [];
      at += long ? 2 : 1;
    } else if (b === 30) {
      // A decimal number in half bytes, closed by a half byte of ones; none of those we read is one.
      at += 1;
      while ((bytes.u8(at) & 0x0f) !== 0x0f) at += 1;
      at += 1;
      numbers.push(0);
    } else {
      const [value, size] = b === 29 ? [bytes.u32(at + 1) | 0, 5] : numberAt(bytes, at, b);
      numbers.push(value);
      at += size;
    }
  }
  return entries;
}

/** A number of a dictionary or charstring and how many bytes it takes. */
function numberAt(bytes: Bytes, at: number, b: number): [number, number] {
  if (b === 28) return [bytes.i16(at + 1), 3];
  if (b === 255) return [bytes.i16(at + 1), 5];
  if (b >= 251) return [-(b - 251) * 256 - bytes.u8(at + 1) - 108, 2];
  if (b >= 247) return [(b - 247) * 256 + bytes.u8(at + 1) + 108, 2];
  return b >= 32 ? [b - 139, 1] : [0, 1];
}

/** The font dictionaries of a CID font, or the top dictionary of a plain one. */
function fontDictsOf(cff: Bytes, top: Map<number, number[]>): Map<number, number[]>[] {
  const at = top.get(FONT_DICTS)?.[0];
  if (at === undefined) return [top];
  const dicts = indexAt(cff, at);
  if (dicts.count > MOST_FONT_DICTS) cff.damaged();
  return Array.from({ length: dicts.count }, (_, i) => dictOf(dicts.item(i)));
}

function subroutinesOf(cff: Bytes, dict: Map<number, number[]>): Index | null {
  const [size, at] = dict.get(PRIVATE) ?? [];
  if (size === undefined || at === undefined) return null;
  const offset = dictOf(new Bytes(cff.slice(at, size), cff.table)).get(SUBROUTINES)?.[0];
  return offset === undefined ? null : indexAt(cff, at + offset);
}

/** Font dictionary of a glyph, formats 0 and 3. */
function selected(cff: Bytes, at: number, glyph: number): number {
  if (cff.u8(at) === 0) return cff.u8(at + 1 + glyph);
  const ranges = cff.u16(at + 1);
  let dict = 0;
  for (let i = 0; i < ranges && cff.u16(at + 3 + 3 * i) <= glyph; i += 1) dict = cff.u8(at + 5 + 3 * i);
  return dict;
}

interface Budget {
  steps: number;
  held: number[];
  stems: number;
}

/** Operators of charstrings that matter for counting. */
const CALL_LOCAL = 10;
const RETURN = 11;
const ESCAPE = 12;
const END = 14;
const CALL_SHARED = 29;
const STEMS = [1, 3, 18, 23];
const MASKS = [19, 20];

/** Runs a charstring for its cost alone: `stop` when it is damaged or costs too much. */
function runs(
  code: Bytes,
  shared: Index,
  local: Index | null,
  budget: Budget,
  depth: number,
): 'on' | 'end' | 'stop' {
  if (depth > MOST_DEPTH) return 'stop';
  for (let at = 0; at < code.length; ) {
    budget.steps += 1;
    if (budget.steps > MOST_STEPS || budget.held.length > MOST_HELD) return 'stop';
    const b = code.u8(at);
    if (b >= 32 || b === 28) {
      const [value, size] = numberAt(code, at, b);
      budget.held.push(value);
      at += size;
      continue;
    }
    at += b === ESCAPE ? 2 : 1;
    if (b === RETURN) return 'on';
    if (b === CALL_LOCAL || b === CALL_SHARED) {
      const routine = called(b === CALL_LOCAL ? local : shared, budget.held.pop());
      const went = routine ? runs(routine, shared, local, budget, depth + 1) : 'on';
      if (went !== 'on') return went;
      continue;
    }
    if (b === END) return budget.held.length >= 4 ? 'stop' : 'end';
    if (STEMS.includes(b) || MASKS.includes(b)) budget.stems += budget.held.length >> 1;
    if (MASKS.includes(b)) at += (budget.stems + 7) >> 3;
    budget.held = [];
  }
  return 'on';
}

/** Subroutine numbers are counted from the middle of the list (Technical Note 5176, section 16). */
function called(routines: Index | null, number: number | undefined): Bytes | null {
  if (!routines || number === undefined) return null;
  const i = number + (routines.count < 1240 ? 107 : routines.count < 33900 ? 1131 : 32768);
  return i >= 0 && i < routines.count ? routines.item(i) : null;
}
