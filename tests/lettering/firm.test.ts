import { expect, it } from 'vitest';
import { connectedParts, intersect, offset, subtract } from '../../src/geometry/clip.ts';
import { midpoint } from '../../src/geometry/point.ts';
import {
  areaOf,
  boxOf,
  containsPointInRegion,
  regionOfBox,
  regionOfRing,
} from '../../src/geometry/region.ts';
import { reverseRing } from '../../src/geometry/ring.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';
import { shapeMemory } from '../../src/geometry/shapeMemory.ts';
import { letter } from '../../src/lettering/letter.ts';
import { barRing, type Crossing } from '../../src/lettering/stencil/crossing.ts';
import { firmReach } from '../../src/lettering/stencil/firm.ts';
import { FRAME, type Island } from '../../src/lettering/stencil/solid.ts';
import { unitOf } from '../../src/lettering/stencil/unit.ts';
import { chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { fontOf } from './fonts.ts';
import { lettering, stencilOptions } from './lettering.ts';

/** Less is rounding, in square millimeters. */
const LEAST = 0.01;

/** The pieces that a bar ties, by the polygons of the whole letter: what is firm once it stands, and was before. */
function tiedOnPolygons(
  letters: Region,
  islands: readonly Island[],
  bar: Crossing,
  width: number,
  reach: number,
) {
  const { x, y, w, h } = boxOf(letters) as Box;
  const sheet = regionOfBox({ x: x - 30, y: y - 30, w: w + 60, h: h + 60 });
  const firmBeside = (ink: Region) => subtract(sheet, offset(ink, reach, 'round'));
  const standing = connectedParts(firmBeside(subtract(letters, regionOfRing(barRing(bar, width)))));
  const held = standing.find((part) => containsPointInRegion(part, midpoint(bar.leaves, bar.reaches)));
  const both = held ? intersect(held, firmBeside(letters)) : [];
  const holes = islands.map(({ index, ring }) => ({ index, hole: regionOfRing(reverseRing(ring)) }));
  const tied = holes.filter(({ hole }) => areaOf(intersect(both, hole)) > LEAST).map(({ index }) => index);
  const inIslands = holes.reduce((sum, { hole }) => sum + areaOf(intersect(both, hole)), 0);
  return areaOf(both) - inIslands > LEAST ? [FRAME, ...tied] : tied;
}

it('bars tie the firm sheet that the polygons tie once they stand (twin)', () => {
  const fonts = ['lobster', 'bebas-neue', 'rye', 'abril-fatface', 'alfa-slab-one'].map(fontOf);
  let firm = 0;
  for (let seed = 0; seed < runs(3); seed++) {
    const chance = chanceOf(seed);
    const options = stencilOptions({ bridgeWidth: 2 + 5 * chance(), tongue: 0.5 + 2.5 * chance() });
    const { lettered } = letter({
      lettering: lettering(pick([...'ABDOPQR4689aegobd&@%'], chance), { capHeight: 30 + 60 * chance() }),
      font: pick(fonts, chance),
      sign: { id: 's', w: 800, h: 300 },
    });
    const letters = lettered.layers[0]?.whole ?? [];
    const { prepared, stands } = unitOf(letters, options, shapeMemory());
    const { solid, firm: sheet, choices } = prepared;
    // Where thin necks were filled the islands are no holes of the letters, and the twin has no names for them.
    if (solid.islands.some(({ kind }) => kind === 'tongue')) continue;
    const reach = firmReach(options.tongue, options.bridgeWidth);
    for (const { candidates } of choices) {
      for (let i = 0; i < 3 && candidates.length > 0; i++) {
        const { crossing } = pick(candidates, chance);
        if (!sheet.isFirm(crossing)) continue;
        firm += 1;
        const tied = tiedOnPolygons(stands.shape(), solid.islands, crossing, options.bridgeWidth, reach);
        expect([...sheet.tiedBy(crossing)].sort()).toEqual(tied.sort());
      }
    }
  }
  expect(firm).toBeGreaterThan(0);
});
