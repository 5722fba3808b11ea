import { describe, expect, it } from 'vitest';
import { ASSEMBLIES, type AssemblyName } from '../../../src/design/assembly/table.ts';
import { inches } from '../../../src/measure/units.ts';
import { chanceOf } from '../../chance.ts';
import { hasOf, madeOn, SKINNED } from './made.ts';

interface Size {
  readonly w: number;
  readonly h: number;
}

interface Proportion {
  readonly kind: AssemblyName;
  /** The question whose answer by rule it is. */
  readonly of: string;
  readonly wanted: (size: Size) => number;
  /** No frame takes more of a small space than this. Common practice, no source. */
  readonly most: (size: Size) => number;
  readonly source: string;
}

const POCKETBOOK = 'Building Trades Pocketbook, Doors';
const RADFORD =
  'Radford’s Cyclopedia, vol. 1: sash of 2 in, lower rail of 2 1/2 to 3; small windows: common practice';
const FENN =
  'Fenn, Design and Tradition, Doric: architrave, frieze and cornice 1/2, 3/4 and 3/4 of a diameter';
const WARE = 'Ware, American Vignola, Doric: base and capital 1/2 of a diameter';

const leaf = ({ w, h }: Size): Size => ({ w: w / 2, h });

/** Check values 2, section 18. */
const PROPORTIONS: readonly Proportion[] = [
  { kind: 'panel-door', of: 'stile', wanted: ({ w }) => w / 7, most: ({ w }) => w / 4, source: POCKETBOOK },
  {
    ...{ kind: 'panel-door', of: 'bottom', source: POCKETBOOK },
    wanted: ({ w, h }) => Math.max(h / 10, w / 7),
    most: ({ h }) => h / 4,
  },
  {
    ...{ kind: 'panel-door', of: 'cross', source: POCKETBOOK },
    wanted: ({ w }) => w / 7 - inches(1 / 2),
    most: ({ w }) => w / 4,
  },
  {
    ...{ kind: 'door-pair', of: 'stile', source: POCKETBOOK },
    wanted: (size) => leaf(size).w / 7,
    most: (size) => leaf(size).w / 4,
  },
  {
    ...{ kind: 'window', of: 'casing', source: RADFORD },
    wanted: ({ w }) => Math.min(inches(2), w / 9),
    most: ({ w }) => w / 5,
  },
  {
    ...{ kind: 'window', of: 'sill', source: RADFORD },
    wanted: ({ h }) => Math.min(inches(2.75), h / 9),
    most: ({ h }) => h / 5,
  },
  { kind: 'cornice', of: 'architrave', wanted: ({ h }) => h / 4, most: ({ h }) => h / 3, source: FENN },
  { kind: 'pilaster', of: 'base', wanted: ({ w }) => w / 2, most: ({ h }) => h / 5, source: WARE },
  { kind: 'pilaster', of: 'capital', wanted: ({ w }) => w / 2, most: ({ h }) => h / 5, source: WARE },
];

/** Faces of the boards that frames are made of: all as thick as a new strip and of its wood. */
const WIDTHS: readonly number[] = (() => {
  const all = [...hasOf(SKINNED).stocks.values()].filter((stock) => stock.form === 'flat');
  const usual = all.find(({ id }) => id === 'pine-1x3');
  return all
    .filter(({ material, thickness }) => material === usual?.material && thickness === usual?.thickness)
    .map(({ width }) => width);
})();

describe.each(PROPORTIONS)('$kind: $of ($source)', ({ kind, of, wanted, most }) => {
  it('is met as nearly as boards allow in 200 spaces', () => {
    const has = hasOf(SKINNED);
    const { usual, first } = ASSEMBLIES[kind];
    const chance = chanceOf(kind.length);
    for (let n = 0; n < 200; n++) {
      const size = { w: usual.w * (0.6 + 1.2 * chance()), h: usual.h * (0.6 + 1.2 * chance()) };
      const stock = has.stocks.get(String(first(size, has)[of]));
      const width = stock?.form === 'flat' ? stock.width : Number.NaN;
      const limit = Math.max(most(size), Math.min(...WIDTHS));
      expect(width).toBeLessThanOrEqual(limit + 1e-9);
      const better = WIDTHS.filter(
        (other) => other <= limit && Math.abs(other - wanted(size)) < Math.abs(width - wanted(size)) - 0.001,
      );
      expect(better, JSON.stringify(size)).toEqual([]);
    }
  });
});

/** Ware, American Vignola, Doric: a dentil is D/12 wide and D/8 high, D/24 from the next one. */
describe('dentils of a cornice', () => {
  it('are half as high again as wide, and at most half as far apart, in any width', () => {
    for (let seed = 0; seed < 5; seed++) {
      const w = 300 + 500 * chanceOf(seed)();
      const { group, shown } = madeOn(SKINNED, 'cornice', { x: 60, y: 900, w, h: 200 });
      const row = group.assembly?.parts.dentils;
      const dentils = shown.layout.parts.filter(({ part }) => part === row).sort((a, b) => a.box.x - b.box.x);
      expect(dentils.length).toBeGreaterThan(5);
      dentils.forEach(({ box }, i) => {
        expect(box.h).toBeCloseTo(1.5 * box.w, 6);
        const before = dentils[i - 1];
        if (!before) return;
        const gap = box.x - before.box.x - before.box.w;
        expect(gap).toBeLessThanOrEqual(box.w / 2 + 1e-6);
        // One fewer would stand farther apart than that.
        expect(gap).toBeGreaterThan(box.w / 2 - (1.5 * box.w) / dentils.length);
      });
    }
  });
});
