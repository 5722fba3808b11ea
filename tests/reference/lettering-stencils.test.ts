import { describe, expect, it } from 'vitest';
import { letter } from '../../src/lettering/letter.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { CHARACTERS, fontOf, SHIPPED } from '../lettering/fonts.ts';
import { faultsOf, piecesOnGrid } from '../lettering/held.ts';
import { lettering, stencilOptions } from '../lettering/lettering.ts';
import { runs } from '../runs.ts';

/**
 * Every letter, digit and mark of every family that ships, each at one of three heights (at all of them in the long
 * run, `SHOWFACE_RUNS=3`): the sheet in one piece, read off its polygons. Bridges and the tongue limit as a person would choose them for the height.
 */
const HEIGHTS = [
  { capHeight: 30, bridgeWidth: 2, tongue: 1 },
  { capHeight: 100, bridgeWidth: 4, tongue: 2 },
  { capHeight: 300, bridgeWidth: 8, tongue: 3 },
];

describe.each(SHIPPED)('stencils of $id', ({ id, stencilReady }) => {
  const font = fontOf(id);
  const present = CHARACTERS.filter((character) => font.has(character));

  it.each(HEIGHTS)('hold together at $capHeight mm', (height) => {
    const { capHeight, bridgeWidth, tongue } = height;
    const turn = HEIGHTS.indexOf(height);
    const looked = present.filter((_, i) => (i + turn) % 3 < runs(1));
    const options = stencilOptions({ bridgeWidth, tongue, frame: 15 });
    const faults: string[] = [];
    let bridges = 0;
    for (const character of looked) {
      const { lettered } = letter({
        lettering: lettering(character, { capHeight, stencil: options }),
        font,
        sign: { id: 's', w: 1000, h: 1000 },
      });
      const letters = lettered.layers[0]?.whole ?? [];
      const sheet = sheetAround(lettered.box, options);
      const made = stencil({ sign: 's', letters, sheet, options });
      bridges += made.stencil.bridges.length;
      const wrong = faultsOf(made.stencil, sheet, letters, bridgeWidth);
      if (capHeight === 100) {
        const counted = piecesOnGrid(made.stencil.cut, sheet, 0.5);
        if (counted !== 1) wrong.push(`${counted} pieces on a grid`);
      }
      faults.push(...wrong.map((fault) => `${character}: ${fault}`));
    }
    expect(faults).toEqual([]);
    // Letters A to R alone have eight counters, of two bridges each, where the family is not cut for stencils.
    if (!stencilReady) expect(bridges).toBeGreaterThan(12);
  });
});
