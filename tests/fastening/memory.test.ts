import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import type { FasteningInput } from '../../src/fastening/input.ts';
import type { PartsFastened } from '../../src/fastening/memory.ts';
import { fastenParts, planFastening } from '../../src/fastening/planFastening.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import type { LaidPart } from '../../src/layout/laid.ts';
import type { Brad, Screw } from '../../src/materials/types.ts';
import { sampleBed } from '../bed/sample.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { panelOf, stripOf } from './laidAs.ts';

const bed = sampleBed();
const { face } = faceOf(bed);
const BRAD: Brad = {
  ...{ id: 'b', name: 'b', diameter: 1.2, lengths: [12, 16, 20, 25, 32, 38, 45], price: 0, count: 1000 },
  source: 'made up',
};
const SCREW: Screw = {
  ...{
    id: 's',
    name: 's',
    thread: 'wood',
    diameter: 4,
    lengths: [16, 20, 25, 30, 40, 50],
    price: 0,
    count: 100,
  },
  source: 'made up',
};

interface Laid {
  readonly solid: Solid;
  readonly part: LaidPart;
}

/** One board of a crowd: on the rim or on the boards there, brads or screws, close to others or over them. */
function board(id: string, chance: Chance): Laid {
  const whole = (low: number, high: number) => low + Math.floor(chance() * (high - low + 1));
  const strip = chance() < 0.6;
  const box = { x: whole(0, 400), y: whole(0, 250), w: whole(60, 400), h: strip ? 35 : whole(60, 300) };
  const z0 = pick([0, 0, 12], chance);
  const solid: Solid = {
    ...{ part: id, kind: strip ? 'strip' : 'panel', region: regionOfBox(box), z0, z1: z0 + 12 },
    ...{ stock: null, finish: null, on: 'rim' },
  };
  const fixing = { how: pick(['brads', 'brads', 'screws'] as const, chance), glue: false };
  return { solid, part: strip ? stripOf(solid, fixing) : panelOf(solid, fixing) };
}

const heldOtherwise = ({ solid, part }: Laid): Laid => {
  const how = part.fixing.how === 'brads' ? 'screws' : 'brads';
  return { solid, part: { ...part, fixing: { ...part.fixing, how } } };
};

const NO_CLEARS: FasteningInput['keepClears'] = [];
const NO_SCREWS: FasteningInput['screws'] = [];

/** The very same for the same spacing, as they are in a design that is edited elsewhere. */
const settingsOf = (() => {
  const made = new Map<number, FasteningInput['settings']>();
  return (spacing: number): FasteningInput['settings'] => {
    const known = made.get(spacing);
    if (known) return known;
    const settings = {
      ...{ brad: 'b', lengths: [], spacing, fromEdge: 15, shortOfFar: 3, bite: 6 },
      ...{ screw: 's', screwOver_kg: 100 },
    };
    made.set(spacing, settings);
    return settings;
  };
})();

const inputOf = (
  all: readonly Laid[],
  spacing: number,
  masses: ReadonlyMap<string, number> = new Map(),
): FasteningInput => ({
  ...{ bed, face, keepClears: NO_CLEARS, pieces: [], stocks: [], glue: null, screws: NO_SCREWS },
  masses: [...masses].map(([part, mass]) => ({ part, mass })),
  parts: all.map(({ part }) => part),
  solids: all.map(({ solid }) => solid),
  settings: settingsOf(spacing),
  brad: BRAD,
  screw: SCREW,
});

describe('fastening again', () => {
  it('comes out as from nothing after boards of a crowd were moved, added, taken away or put in another order', () => {
    for (let seed = 0; seed < runs(3); seed++) {
      const chance = chanceOf(seed);
      let last: PartsFastened | undefined;
      let all = Array.from({ length: 10 }, (_, i) => board(`p${i}`, chance));
      let spacing = 150;
      const masses = new Map<string, number>();
      for (let edit = 0; edit < 6; edit++) {
        const i = Math.floor(chance() * all.length);
        const way = pick(
          ['other', 'hold', 'hold', 'swap', 'remove', 'add', 'spacing', 'weigh'] as const,
          chance,
        );
        if (way === 'other') all = all.map((one, k) => (k === i ? board(one.part.id, chance) : one));
        // The wood stays as it is: only what is driven in changes, and so what others find there.
        if (way === 'hold') all = all.map((one, k) => (k === i ? heldOtherwise(one) : one));
        if (way === 'swap') all = [...all.slice(i), ...all.slice(0, i)];
        if (way === 'remove') all = all.filter((_, k) => k !== i);
        if (way === 'add') all = [...all, board(`q${seed}-${edit}`, chance)];
        if (way === 'spacing') spacing = pick([60, 100, 150], chance);
        // Light parts may weigh what they like; those over a hundred kilograms are screwed, and told with their mass.
        if (way === 'weigh') masses.set(`p${i}`, pick([1, 1.2, 150, 151], chance));
        const input = inputOf(all, spacing, masses);
        last = fastenParts(input, last);
        expect(planFastening(last)).toEqual(planFastening(fastenParts(input)));
      }
    }
  });

  it('finds other places where only what is driven in beneath has gone', () => {
    let last: PartsFastened | undefined;
    const at = (id: string, z0: number, how: 'brads' | 'none'): Laid => {
      const region = regionOfBox({ x: 0, y: 10, w: 300, h: 35 });
      const solid: Solid = {
        ...{ part: id, kind: 'strip', region, z0, z1: z0 + 12, stock: null, finish: null, on: 'rim' },
      };
      return { solid, part: stripOf(solid, { how, glue: false }) };
    };
    const [lower, upper] = [at('p0', 0, 'brads'), at('p1', 12, 'brads')];
    const loose = { ...lower, part: at('p0', 0, 'none').part };
    const placesOf = (all: readonly Laid[]) => {
      last = fastenParts(inputOf(all, 100), last);
      return planFastening(last).parts.find(({ part }) => part === 'p1')?.at;
    };
    const crowded = placesOf([lower, upper]);
    const free = placesOf([loose, upper]);
    expect(free).not.toEqual(crowded);
    expect(free).toEqual(planFastening(fastenParts(inputOf([loose, upper], 100))).parts[1]?.at);
    expect(placesOf([lower, upper])).toEqual(crowded);
  });

  it('works again on what lies where something changed, and on nothing else', () => {
    const at = (id: string, x: number, y: number): Laid => {
      const region = regionOfBox({ x, y, w: 200, h: 35 });
      const solid: Solid = {
        ...{ part: id, kind: 'strip', region, z0: 0, z1: 12, stock: null, finish: null, on: 'rim' },
      };
      return { solid, part: stripOf(solid, { how: 'brads', glue: false }) };
    };
    const row = Array.from({ length: 12 }, (_, i) => at(`p${i}`, 0, 10 + 100 * i));
    const before = fastenParts(inputOf(row, 100));
    const moved = row.map((one, i) => (i === 5 ? at('p5', 3, 512) : one));
    const now = fastenParts(inputOf(moved, 100), before);
    const anew = [...now.byPart].filter(([id, kept]) => before.byPart.get(id) !== kept).map(([id]) => id);
    expect(anew).toEqual(['p5']);
  });
});
