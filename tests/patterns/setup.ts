import type { Drawing } from '../../src/drawing/drawing.ts';
import { rectangle } from '../../src/drawing/items.ts';
import { INK, WEIGHT } from '../../src/drawing/style.ts';
import type { Paper } from '../../src/materials/types.ts';
import { inches } from '../../src/measure/units.ts';
import type { PageSetup } from '../../src/patterns/paper.ts';
import { patterns } from '../../src/plan/words/en/patterns.ts';

/** Sizes of check-values section 3 (ISO 216; ANSI/ASME Y14.1). */
export const PAPERS = {
  letter: { id: 'letter', name: 'Letter', width: inches(8.5), height: inches(11), source: 'ANSI/ASME Y14.1' },
  legal: { id: 'legal', name: 'Legal', width: inches(8.5), height: inches(14), source: 'ANSI/ASME Y14.1' },
  tabloid: {
    id: 'tabloid',
    name: 'Tabloid',
    width: inches(11),
    height: inches(17),
    source: 'ANSI/ASME Y14.1',
  },
  a4: { id: 'a4', name: 'A4', width: 210, height: 297, source: 'ISO 216' },
  a3: { id: 'a3', name: 'A3', width: 297, height: 420, source: 'ISO 216' },
  a2: { id: 'a2', name: 'A2', width: 420, height: 594, source: 'ISO 216' },
  roll: { id: 'roll', name: 'Roll', width: 610, source: 'test' },
} as const satisfies Record<string, Paper>;

export function setupOf(change: {
  paper?: Paper;
  margin?: number;
  join?: 'overlap' | 'butt';
  overlap?: number;
  wholeLetters?: boolean;
  correction?: { x: number; y: number };
  unit?: 'in' | 'mm';
  rollWidth?: number;
}): PageSetup {
  const m = change.margin ?? inches(0.5);
  return {
    paper: change.paper ?? PAPERS.letter,
    pages: {
      margin: { left: m, right: m, top: m, bottom: m },
      join: change.join ?? 'overlap',
      overlap: change.overlap ?? inches(0.5),
      wholeLetters: change.wholeLetters ?? false,
      ...(change.rollWidth === undefined ? {} : { rollWidth: change.rollWidth }),
    },
    correction: change.correction ?? { x: 1, y: 1 },
    measure: { unit: change.unit ?? 'mm', fraction: '16' },
    words: patterns,
    design: 'A design, a date',
  };
}

/** A drawing that is ink all over: no page of it is blank. */
export function fullOfInk(width: number, height: number): Drawing {
  const look = { fill: INK.tint, stroke: INK.line, width: WEIGHT.fine };
  return { width, height, title: 'full', items: [rectangle({ x: 0, y: 0, w: width, h: height }, look)] };
}
