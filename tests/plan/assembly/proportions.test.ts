import { describe, expect, it } from 'vitest';
import { answersOf } from '../../../src/design/assembly/make.ts';
import { ASSEMBLIES, type AssemblyName } from '../../../src/design/assembly/table.ts';
import { shownFrom } from '../../../src/editor/document/shown.ts';
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
    const { usual } = ASSEMBLIES[kind];
    const chance = chanceOf(kind.length);
    for (let n = 0; n < 200; n++) {
      const size = { w: usual.w * (0.6 + 1.2 * chance()), h: usual.h * (0.6 + 1.2 * chance()) };
      const stock = has.stocks.get(String(answersOf(ASSEMBLIES[kind], {}, size, has)[of]));
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

/**
 * Ware, American Vignola, Palladio's blocks: half a diameter from middle to middle, the space 1/24 of a diameter wider than
 * the block, so block 11/48 and space 13/48; Fenn, Doric: architrave half a diameter, by rule 1/4 of the whole.
 */
describe('brackets of a cornice', () => {
  it('are as wide as their block by rule, and at most as far apart, in any width, between architrave and crown', () => {
    for (let seed = 0; seed < 5; seed++) {
      const chance = chanceOf(seed);
      const box = { x: 60, y: 900, w: 300 + 500 * chance(), h: 140 + 160 * chance() };
      const diameter = box.h / 2;
      const { group, shown } = madeOn(SKINNED, 'cornice', box, { brackets: true, dentils: seed % 2 === 0 });
      const roles = group.assembly?.parts;
      const row = shown.layout.parts.filter(({ part }) => part === roles?.brackets);
      const brackets = row.sort((a, b) => a.box.x - b.box.x);
      const boxOf = (role: string) => shown.layout.boxes.get(roles?.[role] ?? '');
      const [foot, top] = [boxOf('architrave'), boxOf(seed % 2 === 0 ? 'dentils' : 'crown')];
      expect(brackets.length).toBeGreaterThan(3);
      brackets.forEach(({ box: own }, i) => {
        expect(own.w).toBeCloseTo((11 / 48) * diameter, 6);
        expect(own.y).toBeCloseTo((foot?.y ?? 0) + (foot?.h ?? 0), 6);
        expect(own.y + own.h).toBeCloseTo(top?.y ?? 0, 6);
        const before = brackets[i - 1];
        if (!before) return;
        const gap = own.x - before.box.x - before.box.w;
        expect(gap).toBeLessThanOrEqual((13 / 48) * diameter + 1e-6);
        // One fewer would stand farther apart than that.
        expect(gap).toBeGreaterThan((13 / 48) * diameter - diameter / 2 / brackets.length);
      });
    }
  });
});

/** Rudiments of Ancient Architecture, 1810: the fillet no broader than 1/3 of the fluting, nor narrower than 1/4. */
describe('flutes of a pilaster', () => {
  it('are three to four times as wide as the fillets at both sides of each, in any width, and after the bed changes', () => {
    for (let flutes = 1; flutes <= 7; flutes++) {
      const w = 80 + 200 * chanceOf(flutes)();
      const given = { fluting: 'painted', flutes };
      const { design, group } = madeOn(SKINNED, 'pilaster', { x: 60, y: 300, w, h: 900 }, given);
      const { mattress } = design.bed;
      const wide = {
        ...design,
        bed: { ...design.bed, mattress: { ...mattress, width: mattress.width + 77 } },
      };
      for (const { layout } of [shownFrom(design), shownFrom(wide)]) {
        const roles = Object.entries(group.assembly?.parts ?? {});
        const of = (kind: string) =>
          roles.flatMap(([role, id]) => (role.startsWith(kind) ? [layout.boxes.get(id)?.w ?? 0] : []));
        const [channels, fillets] = [of('flute-'), of('fillet-')];
        expect([channels.length, fillets.length]).toEqual([flutes, flutes + 1]);
        const shaft = layout.boxes.get(group.assembly?.parts.ground ?? '')?.w ?? 0;
        expect([...channels, ...fillets].reduce((sum, one) => sum + one, 0)).toBeCloseTo(shaft, 6);
        expect(Math.max(...fillets)).toBeLessThanOrEqual(Math.min(...channels) / 3 + 1e-6);
        expect(Math.min(...fillets)).toBeGreaterThanOrEqual(Math.max(...channels) / 4 - 1e-6);
      }
    }
  });
});
