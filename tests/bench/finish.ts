import { planFinish } from '../../src/finish/planFinish.ts';
import { castShadows } from '../../src/finish/shadow.ts';
import { union } from '../../src/geometry/clip.ts';
import { rotate } from '../../src/geometry/point.ts';
import { areaOf, transformRegion } from '../../src/geometry/region.ts';
import type { Solid } from '../../src/joinery/piece.ts';
import { box, input, LEVEL, solid } from '../finish/build.ts';
import type { BenchRow } from './row.ts';

/** Repeatable numbers from 0 to 1 (a linear congruential generator). */
function numbers(seed: number): () => number {
  let state = seed;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Turned parts thrown on the face, each at a height of its own. */
function thrown(count: number): Solid[] {
  const next = numbers(7);
  return Array.from({ length: count }, (_, i) => {
    const w = 40 + 160 * next();
    const h = 40 + 260 * next();
    const x = 700 * next();
    const y = 1600 * next();
    const angle = 360 * next();
    const region = transformRegion(box(x, y, w, h), (p) => rotate(p, angle, { x: x + w / 2, y: y + h / 2 }));
    return solid(`p${i}`, region, 0, 5 + i / 10, { finish: i % 2 === 0 ? 'red' : 'blue' });
  });
}

/** Upright battens side by side with rails across: what a face is really made of. */
function battened(count: number): Solid[] {
  return Array.from({ length: count }, (_, i) => {
    const column = i % 50;
    const row = Math.floor(i / 50);
    return solid(`p${i}`, box(20 * column, 190 * row, 15, 185), 0, 6, {
      finish: i % 2 === 0 ? 'red' : 'blue',
    });
  });
}

/** Middle of five runs, in milliseconds, after one to warm up. */
function median(run: () => number): number {
  let consumed = run();
  const times: number[] = [];
  for (let i = 0; i < 5; i++) {
    const start = performance.now();
    consumed += run();
    times.push(performance.now() - start);
  }
  if (!Number.isFinite(consumed)) throw new Error('a bench gave no number');
  return times.sort((a, b) => a - b)[2] ?? 0;
}

/** The finish plan against the polygon library's bare union of the same outlines. */
export async function bench(): Promise<BenchRow[]> {
  const cases = [
    { name: 'finish plan, parts thrown over each other', solids: thrown(500) },
    { name: 'finish plan, battens side by side', solids: battened(500) },
  ];
  const against = 'bare union of the same outlines';
  const rows = cases.map(({ name, solids }): BenchRow => {
    const plan = median(() => planFinish(input(solids)).uses.reduce((sum, use) => sum + use.face, 0));
    const bare = median(() => areaOf(union(solids.map((s) => s.region))));
    return { name, size: solids.length, ratio: plan / bare, against };
  });
  const solids = battened(500);
  const { shown } = planFinish(input(solids));
  const light = { azimuth: 135, altitude: 50 };
  const shadows = median(() => castShadows(solids, [LEVEL], shown, light).length);
  const bare = median(() => areaOf(union(solids.map((s) => s.region))));
  return [...rows, { name: 'cast shadows, battens side by side', size: 500, ratio: shadows / bare, against }];
}
