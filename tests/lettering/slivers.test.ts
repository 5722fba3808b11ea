import { describe, expect, it } from 'vitest';
import { letter } from '../../src/lettering/letter.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { runs } from '../runs.ts';
import { CHARACTERS, fontOf, SHIPPED } from './fonts.ts';
import { lettering, stencilOptions } from './lettering.ts';
import { type Cells, cellsOf, type Grid, gridAround, grown, patchesOf, thinIn } from './openings.ts';

/**
 * What is left beside bars, looked for on a grid by a disk (`openings.ts`). How small is too small is common practice of
 * stencil cutting, no source: an opening less than a bar square is a crumb, a strip of it half a bar wide and longer than
 * a bar a sliver, and sheet thinner than was asked for over eight times that width a finger that flaps.
 */
const BAR = 3;
const THIN = 1.5;
const LONG = 8;
const STEP = 0.2;

/** Letters that have to do with bars come first; of some, each run looks at more than the last. */
const FIRST = [...'ABRQ8&4@agbe6$%'];

describe.each(SHIPPED)('beside the bars of $id', ({ id }) => {
  const font = fontOf(id);
  const others = CHARACTERS.filter((one) => !FIRST.includes(one));
  const looked = [...FIRST, ...others.filter((_, i) => i % 12 < runs(1))].filter((one) => font.has(one));

  it('no crumb, no sliver, and no finger that is not told', () => {
    expect(looked.flatMap((character) => foundIn(character, font))).toEqual([]);
  });
});

function foundIn(character: string, font: ReturnType<typeof fontOf>): string[] {
  const options = stencilOptions({ bridgeWidth: BAR, tongue: THIN, frame: 8 });
  const { lettered } = letter({
    lettering: lettering(character, { capHeight: 40, stencil: options }),
    font,
    sign: { id: 's', w: 1000, h: 1000 },
  });
  const letters = lettered.layers[0]?.whole ?? [];
  const sheet = sheetAround(lettered.box, options);
  const { stencil: made, checks } = stencil({ sign: 's', letters, sheet, options });
  const grid = gridAround(letters, STEP, BAR);
  const [whole, cut] = [cellsOf(letters, grid), cellsOf(made.cut, grid)];
  const told = checks.filter(({ code }) => code === 'stencil.thin-tongue').length;
  const fingers = fingersOf(cut, grid);
  return [
    ...crumbsOf(whole, cut, grid).map((area) => `${character}: a crumb of ${area.toFixed(1)} mm2`),
    ...sliversOf(whole, cut, grid).map((length) => `${character}: a sliver of ${length.toFixed(1)} mm`),
    ...fingers.slice(told).map((length) => `${character}: a finger of ${length.toFixed(0)} mm not told`),
  ];
}

/** Openings smaller than a bar square that the letter has not itself; a cell's width off for their borders. */
function crumbsOf(whole: Cells, cut: Cells, grid: Grid): number[] {
  const own = patchesOf(whole, grid);
  const least = (BAR - STEP) ** 2;
  return patchesOf(cut, grid)
    .filter(({ area }) => area < least)
    .filter(({ cells }) => !own.some((one) => one.cells.length === cells.length && one.cells[0] === cells[0]))
    .map(({ area }) => area);
}

/** Strips that a disk half a bar wide gets into in the letter and no more beside its bars; two cells off for their ends. */
function sliversOf(whole: Cells, cut: Cells, grid: Grid): number[] {
  const own = grown(thinIn(whole, grid, BAR / 4), grid, 2 * STEP);
  const fresh = thinIn(cut, grid, BAR / 4).map((thin, i) => (thin && !own[i] ? 1 : 0));
  return patchesOf(fresh, grid)
    .filter(({ length }) => length > BAR + 2 * STEP)
    .map(({ length }) => length);
}

/** Long strips of sheet thinner than was asked for, by a cell, that hang on thicker sheet in one place or none. */
function fingersOf(cut: Cells, grid: Grid): number[] {
  const sheet = cut.map((open) => 1 - open);
  const thin = thinIn(sheet, grid, (THIN - STEP) / 2);
  const thick = sheet.map((covered, i) => (covered && !thin[i] ? 1 : 0));
  return patchesOf(thin, grid)
    .filter(({ length }) => length > LONG * THIN)
    .filter(({ cells }) => {
      const finger = new Uint8Array(sheet.length);
      for (const cell of cells) finger[cell] = 1;
      const beside = grown(finger, grid, 1.5 * STEP).map((near, i) => (near && thick[i] ? 1 : 0));
      return patchesOf(beside, grid).length < 2;
    })
    .map(({ length }) => length);
}
