import { describe, expect, it } from 'vitest';
import type { Lettering } from '../../src/design/schema.ts';
import { gridded, subtract } from '../../src/geometry/clip.ts';
import { boxOf, regionOfBox } from '../../src/geometry/region.ts';
import type { Box, Region } from '../../src/geometry/shape.ts';
import { type ShapeMemory, shapeMemory } from '../../src/geometry/shapeMemory.ts';
import { letter } from '../../src/lettering/letter.ts';
import { placed } from '../../src/lettering/shapes.ts';
import { stencilSet } from '../../src/lettering/stencil/layers.ts';
import { sheetAround } from '../../src/lettering/stencil/sheet.ts';
import { stencil } from '../../src/lettering/stencil/stencil.ts';
import { chanceOf, pick } from '../chance.ts';
import { fontOf } from './fonts.ts';
import { faultsOf, piecesOnGrid } from './held.ts';
import { lettering, stencilOptions } from './lettering.ts';

/** Runs of the properties; more by hand. */
const RUNS = Number(process.env.SHOWFACE_RUNS ?? 5);
const SIGN = { id: 's', w: 900, h: 400 };

function work(text: string, font: string, changes: Partial<Lettering>, memory?: ShapeMemory) {
  const written = lettering(text.split('\n'), { font, capHeight: 80, ...changes });
  const { lettered, checks } = letter({ lettering: written, font: fontOf(font), sign: SIGN, memory });
  return {
    lettered,
    laid: checks,
    ...stencilSet(lettered, written.stencil, regionOfBox({ ...SIGN, x: 0, y: 0 }), memory),
  };
}

describe('letters worked by their shape', () => {
  it('come out the same whatever was worked before (twin: each text from nothing)', () => {
    const chance = chanceOf(21);
    // So small that it forgets between the texts, as well as it remembers.
    const memory = shapeMemory(8);
    for (let run = 0; run < RUNS; run += 1) {
      const text = Array.from({ length: 3 }, () => pick([...'ABO8&R'], chance)).join('');
      const placed = chance() < 0.5 ? [] : [{ island: Math.floor(3 * chance()), angles: [360 * chance()] }];
      const changes = {
        tracking: pick([-0.15, 0, 0.1], chance),
        arcRise: pick([0, 0, 40], chance),
        shift: { x: 10 * chance(), y: 3 * chance() },
        outline: chance() < 0.3 ? { width: 3, finish: 'black' } : null,
        stencil: stencilOptions({ bridges: pick([1, 2, 3], chance), placed }),
      };
      const font = pick(['bebas-neue', 'lato'], chance);
      expect(work(text, font, changes, memory)).toEqual(work(text, font, changes));
    }
  });

  it('are worked once for each kind, however many stand there', () => {
    const counted = (text: string) => {
      let count = 0;
      const memory = shapeMemory();
      work(text, 'lato', { tracking: 0.1 }, (key, make) =>
        memory(key, () => {
          count += 1;
          return make();
        }),
      );
      return count;
    };
    expect(counted(Array(6).fill('ABDO8\n8ODBA').join('\n'))).toBe(counted('ABDO8'));
  });

  it('are equal wherever they stand: outlines, bridges and all', () => {
    const some = shapesOf('BO8', { tracking: 0.1 });
    const many = shapesOf('BOB8OB', { tracking: 0.1, shift: { x: 0.123, y: 4.56789 } });
    expect(many.length).toBeGreaterThan(some.length);
    expect(new Set(many)).toEqual(new Set(some));
  });

  it('hold together as one sheet, near and far apart (twin: flooded on a grid)', () => {
    const chance = chanceOf(4);
    for (let run = 0; run < RUNS; run += 1) {
      const text = Array.from({ length: 3 }, () => pick([...'ABO8Q'], chance)).join('');
      const options = stencilOptions({ bridgeWidth: pick([2, 5], chance) });
      const { lettered, set } = work(text, 'bebas-neue', {
        tracking: pick([-0.2, -0.06, -0.03, 0, 0.2], chance),
        stencil: options,
      });
      const made = set.layers[0]?.stencil;
      if (!made) throw new Error('a stencil expected');
      expect(faultsOf(made, set.sheet, lettered.layers[0]?.whole ?? [], options.bridgeWidth)).toEqual([]);
      expect(piecesOnGrid(made.cut, set.sheet, 0.5)).toBe(1);
    }
  });
});

/** What a stencil opens, each opening told from its own corner. */
function shapesOf(text: string, changes: Partial<Lettering>): string[] {
  const { set } = work(text, 'bebas-neue', changes);
  return (set.layers[0]?.stencil.cut ?? []).map((polygon) => {
    const box = boxOf([polygon]) as Box;
    return JSON.stringify(placed([polygon], { x: -gridded(box.x), y: -gridded(box.y) }));
  });
}

describe('letters apart whose bars would meet', () => {
  const box = (x: number, y: number, w: number, h: number): Region => regionOfBox({ x, y, w, h });
  /** A frame of 3 mm around a slot of 4 by 54. */
  const frame = (x: number) => subtract(box(x, 0, 10, 60), box(x + 3, 3, 4, 54));

  it('are worked together: no two bars stand in one another, where each alone would have them so', () => {
    const options = stencilOptions({ bridgeWidth: 6, direction: 'up' });
    const barsOf = (letters: Region) => {
      const sheet = sheetAround(boxOf(letters) as Box, options);
      return stencil({ sign: 's', letters, sheet, options }).stencil.bridges;
    };
    const alone = barsOf(frame(0));
    const far = barsOf([...frame(0), ...frame(40)]);
    expect(far.map(({ at }) => at.x)).toEqual(
      [...alone, ...alone].map(({ at }, i) => at.x + (i < 2 ? 0 : 40)),
    );
    // Across the gap of 3 mm, bars as wide as 6 would touch one and a half widths of each other.
    const near = barsOf([...frame(0), ...frame(13)]);
    for (const a of near.filter(({ island }) => island === 0)) {
      for (const b of near.filter(({ island }) => island === 1)) {
        expect(Math.hypot(a.at.x - b.at.x, a.at.y - b.at.y)).toBeGreaterThan(6);
      }
    }
  });
});
