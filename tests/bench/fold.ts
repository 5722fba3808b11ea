import { faceOf } from '../../src/bed/faceOf.ts';
import { bodiesOf, cornersOf, type FoldInput } from '../../src/fold/body.ts';
import { planFold } from '../../src/fold/planFold.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { radians } from '../../src/measure/units.ts';
import { sampleBed } from '../bed/sample.ts';
import type { BenchRow } from './row.ts';

const PARTS = 500;
const ANGLES = 1000;

/** Repeatable numbers from 0 to 1 (a linear congruential generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Blocks over the whole face, all of which clear: what a face that is ready to be built is like. */
function design(): FoldInput {
  const bed = sampleBed({ wallBoard: { thickness: 15, height: 120 } });
  const { face } = faceOf(bed);
  const next = numbers(11);
  const solids = Array.from({ length: PARTS }, (_, i): Solid => {
    const box = { x: 900 * next(), y: 150 + 1600 * next(), w: 20 + 100 * next(), h: 20 + 150 * next() };
    const region = regionOfBox(box);
    const z1 = 6 + 40 * next();
    return { part: `p${i}`, kind: 'panel', region, z0: 0, z1, stock: null, finish: null, on: 'rim' };
  });
  return { bed, face, keepClears: [], solids };
}

/** Least clearances to floor, wall and ceiling by turning every corner through all angles. */
function sampled(input: FoldInput): number {
  const { pivot, ceiling } = input.bed;
  const arms = bodiesOf(input).flatMap((body) => [...cornersOf(input.bed, body)]);
  let floor = Infinity;
  let wall = Infinity;
  let above = Infinity;
  for (let i = 0; i < ANGLES; i++) {
    const angle = radians((90 * i) / (ANGLES - 1));
    const s = Math.sin(angle);
    const c = Math.cos(angle);
    for (const { up, out } of arms) {
      const y = pivot.height + up * c - out * s;
      floor = Math.min(floor, y);
      wall = Math.min(wall, pivot.fromWall + up * s + out * c);
      above = Math.min(above, ceiling - y);
    }
  }
  return floor + wall + above;
}

/** Middle of nine runs, in milliseconds, after two to warm up. */
function median(run: () => number): number {
  let consumed = run() + run();
  const times: number[] = [];
  for (let i = 0; i < 9; i++) {
    const start = performance.now();
    consumed += run();
    times.push(performance.now() - start);
  }
  if (!Number.isFinite(consumed)) throw new Error('a bench gave no number');
  return times.sort((a, b) => a - b)[4] ?? 0;
}

/** The whole fold plan, wall board and checks with it, against a plain sweep of three clearances. */
export async function bench(): Promise<BenchRow[]> {
  const input = design();
  if (planFold(input).hits.length > 0) throw new Error('the parts of this bench should clear');
  const exact = median(() => planFold(input).floorClear);
  const plain = median(() => sampled(input));
  return [
    {
      name: 'fold plan in closed form, all obstacles',
      size: PARTS,
      ratio: exact / plain,
      against: `sampled sweep of ${ANGLES} angles, three planes`,
    },
  ];
}
