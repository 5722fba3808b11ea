import type { Drawing } from '../drawing/drawing.ts';
import { flatten } from '../drawing/walk.ts';
import type { Box } from '../geometry/shape.ts';
import { at } from '../list/at.ts';
import { formatReading } from '../measure/format.ts';
import { isInch } from '../measure/style.ts';
import type { Mm } from '../measure/units.ts';
import { bestGrid, coarseOf, coverOf, type Parting } from './grid.ts';
import { inkOf } from './ink.ts';
import type { Pattern } from './kind/pattern.ts';
import { findOnce } from './once.ts';
import { boxedItems, pagesOf } from './page.ts';
import { type PageSetup, type Sheet, sheetsOf } from './paper.ts';
import type { PatternSet } from './result.ts';
import { fitsOn, splitLetters, wholeLetters } from './whole.ts';

export interface TileOptions extends Omit<Pattern, 'drawing' | 'letters'> {
  readonly setup: PageSetup;
  /** Boxes to keep on one page each, where the setup asks for it. */
  readonly letters?: readonly Box[] | undefined;
}

/** Fewer letters split, then fewer pages, then all of the pattern in sight, then upright paper, then less paper. */
function rank(parting: Parting, whole: Box, letters: readonly Box[]): number[] {
  const { sheet, box } = parting;
  return [
    splitLetters(parting, letters),
    parting.cells.length,
    box.w < whole.w || box.h < whole.h ? 1 : 0,
    parting.rows * parting.columns,
    sheet.turned ? 1 : 0,
    sheet.width * sheet.height,
  ];
}

/** What no other paper comes before: all of the pattern on one upright page. */
const LEAST = [0, 1, 0, 1, 0];

function before(a: readonly number[], b: readonly number[]): boolean {
  for (let i = 0; i < a.length; i++) {
    if (a[i] !== b[i]) return at(a, i) < at(b, i);
  }
  return false;
}

/**
 * Tiles a drawing of any size on paper, in true size: as few pages as turning the paper and shifting the
 * grid can make, pages without ink left out. Null when the paper's margins and overlap leave no room.
 */
export function tile(drawing: Drawing, options: TileOptions): PatternSet | null {
  const { setup } = options;
  const flat = flatten(drawing.items);
  const ink = inkOf(drawing, options.besides, flat);
  const { box, main } = ink;
  const sheets = sheetsOf(setup, box ?? { w: 0, h: 0 });
  const asked = [...(options.keep ?? []), ...(setup.pages.wholeLetters ? (options.letters ?? []) : [])];
  const letters = asked.filter((letter) => sheets.some((sheet) => fitsOn(sheet, letter)));
  const [sheet, ...others] = sheets;
  if (!sheet) return null;
  const base = {
    for: options.for,
    title: options.title,
    note: options.note,
    paper: setup.paper.id,
    width: drawing.width,
    height: drawing.height,
  };
  if (!box || !main) return { ...base, rows: 0, columns: 0, turned: false, pages: [] };
  const coarse = findOnce(
    ({ x, y, w, h }: Box) => [x, y, w, h],
    (on) => coarseOf(ink, on),
  );
  const partingsOn = (sheet: Sheet): Parting[] => {
    const cover = coverOf({ main, box }, sheet);
    // As many pages in a row, but they may be shifted over what they are made for.
    const covers = cover.w < box.w || cover.h < box.h ? [cover, main] : [cover];
    return covers.flatMap((on) => {
      const grid = bestGrid(ink, on, sheet, () => coarse(on));
      return letters.length > 0 ? [grid, wholeLetters(ink, on, letters, sheet)] : [grid];
    });
  };
  const better = (best: Parting, next: Parting) =>
    before(rank(next, box, letters), rank(best, box, letters)) ? next : best;
  const first = partingsOn(sheet).reduce(better);
  const isLeast = rank(first, box, letters).slice(0, LEAST.length).join() === LEAST.join();
  const parting = isLeast ? first : others.flatMap(partingsOn).reduce(better, first);
  const told = (mm: Mm) => formatReading(mm, setup.measure);
  const pages = pagesOf(
    parting,
    { box, ink, boxed: boxedItems(flat) },
    {
      title: options.title,
      numbered: options.numbered,
      note: options.note ?? '',
      design: setup.design,
      unit: isInch(setup.measure.unit) ? 'in' : 'mm',
      terms: setup.words,
      place: (x, y) => setup.words.at(told(x), told(y)),
    },
  );
  const { rows, columns } = parting;
  return { ...base, rows, columns, turned: parting.sheet.turned, pages };
}
