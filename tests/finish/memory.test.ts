import { describe, expect, it } from 'vitest';
import type { FinishInput, Surface } from '../../src/finish/input.ts';
import { knownSurfaces } from '../../src/finish/memory.ts';
import { planFinish } from '../../src/finish/planFinish.ts';
import { surfacesOf } from '../../src/finish/surface.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { KeptResults } from '../../src/layout/kept.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';
import { box, finish, input, solid } from './build.ts';

/** One board of a crowd, or a painted shape, on the face or on others. */
function board(part: string, chance: Chance): Solid {
  const whole = (low: number, high: number) => low + Math.floor(chance() * (high - low + 1));
  const z0 = pick([0, 0, 12, 18], chance);
  const painted = chance() < 0.3;
  const region = box(whole(0, 500), whole(0, 700), whole(40, 400), whole(40, 400));
  const more = { finish: pick(['red', 'blue', null], chance), kind: painted ? 'painted' : 'panel' } as const;
  return solid(part, region, z0, painted ? z0 : z0 + pick([6, 12, 18], chance), more);
}

const FINISHES = [finish('red'), finish('blue', { coats: 1 })];

function inputOf(solids: readonly Solid[], glued: ReadonlySet<string>, backPriming: boolean) {
  const paint = { waste: 0.1, containers: 'metric', backPriming } as const;
  const joined = new Map([...glued].map((part) => [part, glued]));
  return input(solids, { finishes: FINISHES, glued, joined, paint });
}

/** Paints one input after the other, each from what the last came to. */
function painter() {
  const results = new KeptResults();
  let surfaces: readonly Surface[] = [];
  return (now: FinishInput) => {
    surfaces = knownSurfaces(surfaces, surfacesOf(now));
    return planFinish(now, surfaces, results);
  };
}

describe('painting again', () => {
  it('comes out as from nothing after boards of a crowd were moved, painted, glued, added or taken away', () => {
    for (let seed = 0; seed < runs(4); seed++) {
      const chance = chanceOf(seed);
      const paint = painter();
      let all = Array.from({ length: 12 }, (_, i) => board(`p${i}`, chance));
      let glued = new Set<string>();
      let backs = false;
      for (let edit = 0; edit < 8; edit++) {
        const i = Math.floor(chance() * all.length);
        const way = pick(['other', 'paint', 'glue', 'swap', 'remove', 'add', 'backs'] as const, chance);
        if (way === 'other') all = all.map((one, k) => (k === i ? board(one.part, chance) : one));
        if (way === 'paint')
          all = all.map((one, k) => (k === i ? { ...one, finish: pick(['red', 'blue'], chance) } : one));
        if (way === 'glue') glued = new Set(all.flatMap(({ part }) => (chance() < 0.5 ? [part] : [])));
        if (way === 'swap') all = [...all.slice(i), ...all.slice(0, i)];
        if (way === 'remove') all = all.filter((_, k) => k !== i);
        if (way === 'add') all = [...all, board(`q${edit}`, chance)];
        if (way === 'backs') backs = !backs;
        const now = inputOf(all, glued, backs);
        expect(paint(now)).toEqual(planFinish(now));
      }
    }
  });

  it('takes what is seen of a board again where something over it changed, and nowhere else', () => {
    const paint = painter();
    const pair = (i: number, by: number) => [
      solid(`low${i}`, box(0, 200 * i, 400, 150), 0, 12),
      solid(`high${i}`, box(50 + by, 200 * i + 20, 100, 100), 12, 24),
    ];
    const shownWith = (by: number) => {
      const solids = [0, 1, 2, 3, 4].flatMap((i) => pair(i, i === 2 ? by : 0));
      const { shown } = paint(inputOf(solids, new Set(), false));
      return new Map(shown.map((one) => [one.part, one.region]));
    };
    const before = shownWith(0);
    const changed = [...shownWith(10)].filter(([part, region]) => before.get(part) !== region);
    expect(changed.map(([part]) => part).sort()).toEqual(['high2', 'low2', 'skin']);
  });
});
