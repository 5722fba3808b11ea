import opentype from 'opentype.js';
import { quadraticToCubic } from '../../geometry/curve.ts';
import type { Path, PathCommand, Point } from '../../geometry/shape.ts';
import type { Bytes } from './bytes.ts';
import { guardCff } from './guard-cff.ts';
import { guardTrueType } from './guard-truetype.ts';
import { assemble, need } from './tables.ts';

/** Outline of a glyph in font units, y up, every contour closed; null when it cannot be read. */
type OutlineOf = (glyph: number) => Path | null;

/** Points farther out than this many ems are damage, not design. */
const MOST_EMS = 100;

/**
 * Outlines by the outline library, which is handed a file of only the tables that outlines need: its
 * readers of the other tables (substitution, positions, names, variations) refuse some sound fonts and
 * have no bounds against hostile ones. Character map, names and glyph names are empty stand-ins.
 */
export function outlinesOf(
  tables: ReadonlyMap<string, Bytes>,
  cff: boolean,
  unitsPerEm: number,
  glyphs: number,
): OutlineOf {
  const kept = ['head', 'hhea', 'hmtx', 'maxp', ...(cff ? ['CFF '] : ['glyf', 'loca'])];
  const parts: [string, Uint8Array][] = kept.map((tag) => [tag, need(tables, tag).data]);
  const safe = cff
    ? guardCff(need(tables, 'CFF '))
    : guardTrueType(need(tables, 'head'), need(tables, 'loca'), need(tables, 'glyf'), glyphs);
  const font = opentype.parse(assemble([...parts, ...STAND_INS], cff));
  const most = MOST_EMS * unitsPerEm;
  return (glyph) => {
    try {
      if (!safe(glyph)) return null;
      return pathOf(font.glyphs.get(glyph).path.commands, most);
    } catch {
      return null;
    }
  };
}

const words = (...values: number[]): Uint8Array =>
  Uint8Array.from(values.flatMap((value) => [(value >> 8) & 0xff, value & 0xff]));

const STAND_INS: [string, Uint8Array][] = [
  // One format 4 subtable with only the closing segment.
  ['cmap', words(0, 1, 3, 1, 0, 12, 4, 24, 0, 2, 2, 0, 0, 0xffff, 0, 0xffff, 1, 0)],
  ['name', words(0, 0, 6)],
  // Version 3: no glyph names.
  ['post', words(3, 0, ...Array<number>(14).fill(0))],
];

/**
 * Commands of the library as ours: quadratics raised to cubics, every contour closed (it leaves the last
 * one of some CFF glyphs open), and nothing that is not a finite place near the letter.
 */
function pathOf(commands: readonly opentype.PathCommand[], most: number): Path | null {
  const path: PathCommand[] = [];
  let at: Point = { x: 0, y: 0 };
  let open = false;
  const sound = (...values: number[]) => values.every((value) => Math.abs(value) <= most);
  const close = () => {
    if (open) path.push({ op: 'Z' });
    open = false;
  };
  for (const command of commands) {
    if (command.type === 'Z') {
      close();
      continue;
    }
    const { x, y } = command;
    if (!sound(x, y)) return null;
    if (command.type === 'M') {
      close();
      path.push({ op: 'M', x, y });
      open = true;
    } else if (command.type === 'L') {
      if (x !== at.x || y !== at.y) path.push({ op: 'L', x, y });
    } else if (command.type === 'Q') {
      if (!sound(command.x1, command.y1)) return null;
      path.push(quadraticToCubic(at, { x: command.x1, y: command.y1 }, { x, y }));
    } else {
      const { x1, y1, x2, y2 } = command;
      if (!sound(x1, y1, x2, y2)) return null;
      path.push({ op: 'C', x1, y1, x2, y2, x, y });
    }
    at = { x, y };
  }
  close();
  return path;
}
