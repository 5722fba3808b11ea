import { describe, expect, it } from 'vitest';
import { faceOf } from '../../src/bed/faceOf.ts';
import { planFold } from '../../src/fold/planFold.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { KeptResults } from '../../src/layout/kept.ts';
import { sampleBed } from '../bed/sample.ts';
import { blockInInches } from '../bed/solids.ts';
import { type Chance, chanceOf, pick } from '../chance.ts';
import { runs } from '../runs.ts';

/** A block on or beyond the face, thin or thick enough to hit now and then. */
function block(part: string, chance: Chance): Solid {
  const within = (low: number, high: number) => low + chance() * (high - low);
  const z = within(-4, 1);
  const box = [within(-6, 30), within(-12, 75), within(1, 14), within(1, 14)] as const;
  return blockInInches(part, box, [z, z + within(0.2, 9)]);
}

describe('folding again', () => {
  it('comes out as from nothing after parts were changed, swapped, added and taken away, and the bed was', () => {
    let hits = 0;
    for (let seed = 0; seed < runs(20); seed++) {
      const chance = chanceOf(seed);
      const memory = new KeptResults();
      let solids = Array.from({ length: 8 }, (_, i) => block(`p${i}`, chance));
      let bed = sampleBed();
      for (let edit = 0; edit < 8; edit++) {
        const i = Math.floor(chance() * solids.length);
        const way = pick(['other', 'swap', 'remove', 'add', 'bed'] as const, chance);
        if (way === 'other') solids = solids.map((one, k) => (k === i ? block(one.part, chance) : one));
        if (way === 'swap') solids = [...solids.slice(i), ...solids.slice(0, i)];
        if (way === 'remove') solids = solids.filter((_, k) => k !== i);
        if (way === 'add') solids = [...solids, block(`q${edit}`, chance)];
        if (way === 'bed') {
          const wallBoard = { thickness: 25.4 * chance(), height: 200 * chance() };
          bed = sampleBed({ wallBoard, ceiling: 2000 + 600 * chance() });
        }
        const now = { bed, face: faceOf(bed).face, keepClears: [], solids };
        const fold = planFold(now, memory);
        expect(fold).toEqual(planFold(now));
        hits += fold.hits.length;
      }
    }
    expect(hits).toBeGreaterThan(0);
  });
});
