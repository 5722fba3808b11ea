import { describe, expect, it } from 'vitest';
import { connectedParts, offset, subtract, union } from '../../src/geometry/clip.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { perimeter } from '../../src/geometry/ring.ts';
import type { Region } from '../../src/geometry/shape.ts';
import { letter } from '../../src/lettering/letter.ts';
import { isRoomy } from '../../src/lettering/stencil/roomy.ts';
import { chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { fontOf } from './fonts.ts';
import { lettering } from './lettering.ts';

const roomy = (letters: Region, reach: number) => isRoomy(letters, offset(letters, reach, 'round'), reach);
const box = (x: number, y: number, w: number, h: number) => regionOfBox({ x, y, w, h });

describe('a letter with room in its sheet', () => {
  it('has neither a neck nor a long finger in it, by closing its polygons (twin)', () => {
    const fonts = ['lobster', 'bebas-neue', 'rye', 'abril-fatface', 'alfa-slab-one'].map(fontOf);
    let found = 0;
    for (let seed = 0; seed < runs(12); seed += 1) {
      const chance = chanceOf(seed);
      const reach = 0.2 + 2 * chance();
      const { lettered } = letter({
        lettering: lettering(pick([...'ABDHMOQRVW4689aegmw&@%#'], chance), { capHeight: 12 + 90 * chance() }),
        font: pick(fonts, chance),
        sign: { id: 's', w: 800, h: 300 },
      });
      const letters = lettered.layers[0]?.whole ?? [];
      if (!roomy(letters, reach)) continue;
      found += 1;
      const closed = offset(offset(letters, reach, 'round'), -reach, 'round');
      const holes = (region: Region) => region.flatMap((polygon) => polygon.holes).length;
      expect(holes(closed)).toBeLessThanOrEqual(holes(letters));
      for (const [gap] of connectedParts(offset(subtract(closed, letters), -0.05, 'miter'))) {
        // Eight times as long as it may be thin, which is two reaches.
        expect(gap ? perimeter(gap.outer) / 2 : 0).toBeLessThan(16 * reach);
      }
    }
    expect(found).toBeGreaterThan(runs(12) / 3);
  });

  it('is none with a slit, a bay behind a neck, or an island of two halves on a neck', () => {
    const block = box(0, 0, 60, 60);
    expect(roomy(block, 1)).toBe(true);
    expect(roomy(subtract(block, box(29, 20, 4, 40)), 1)).toBe(true);
    expect(roomy(subtract(block, box(29, 20, 1.8, 40)), 1)).toBe(false);
    expect(roomy(subtract(block, union([box(20, 20, 20, 20), box(29, 30, 1.8, 30)])), 1)).toBe(false);
    expect(roomy(subtract(block, box(10, 20, 40, 20)), 1)).toBe(true);
    const halves = union([box(10, 20, 15, 20), box(35, 20, 15, 20), box(20, 29, 20, 1.8)]);
    expect(roomy(subtract(block, halves), 1)).toBe(false);
  });

  it('is not told of several letters at once', () => {
    expect(roomy([...box(0, 0, 20, 20), ...box(30, 0, 20, 20)], 1)).toBe(false);
  });
});
