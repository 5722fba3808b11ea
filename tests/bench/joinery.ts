import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Part } from '../../src/design/schema.ts';
import { union } from '../../src/geometry/clip.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { type JoineryInput, planJoinery } from '../../src/joinery/joinery.ts';
import { layOut } from '../../src/layout/layout.ts';
import { plainFace, STOCKS } from '../layout/sample.ts';
import type { BenchRow } from './row.ts';

const SIZES = [50, 200, 800] as const;
const COLUMNS = 20;
const [WIDE, HIGH] = [120, 160];

/** Ladders of stiles and rails with a brace in every bay: butts, mitered ends and pieces cut to fit between. */
function braced(count: number): Part[] {
  const place = (i: number) => ({ x: WIDE * (((i / 3) % COLUMNS) | 0), y: HIGH * ((i / 3 / COLUMNS) | 0) });
  return Array.from({ length: count }, (_, i): Part => {
    const { x, y } = place(i);
    const bar = (box: Part['box'], lie: 'up' | 'across' | 'rising'): Part => ({
      ...newPart('strip', { id: `p${i}`, name: '', box, stock: 'lath' }),
      lie,
    });
    if (i % 3 === 0) return bar({ x, y, w: 40, h: HIGH }, 'up');
    if (i % 3 === 1) return bar({ x: x + 40, y, w: WIDE - 40, h: 40 }, 'across');
    return bar({ x: x + 40, y: y + 40, w: WIDE - 40, h: HIGH - 40 }, 'rising');
  });
}

/** Frames side by side, four mitered corners each. */
function frames(count: number): Part[] {
  return Array.from({ length: Math.ceil(count / 4) }, (_, i): Part => {
    const box = { x: 130 * (i % COLUMNS), y: 170 * Math.floor(i / COLUMNS), w: 120, h: 160 };
    return newPart('run', { id: `f${i}`, name: '', box, stock: 'lath' });
  });
}

/** Middles of nine runs of each job in turn, in milliseconds of processor time, after four to warm up. */
function medians(...jobs: readonly (() => number)[]): number[] {
  const times: number[][] = jobs.map(() => []);
  let consumed = 0;
  for (let i = 0; i < 13; i++) {
    jobs.forEach((job, j) => {
      const start = process.cpuUsage();
      consumed += job();
      const { user, system } = process.cpuUsage(start);
      if (i >= 4) times[j]?.push((user + system) / 1000);
    });
  }
  if (!Number.isFinite(consumed)) throw new Error('a bench gave no number');
  return times.map((list) => list.sort((a, b) => a - b)[4] ?? 0);
}

function inputOf(parts: Part[]): JoineryInput {
  const design = { ...newDesign(), parts };
  const face = plainFace(WIDE * COLUMNS + 400, 9000);
  const layout = layOut({ design, face, keepClears: [], stocks: STOCKS });
  const { shop, measure } = design;
  return { parts: layout.parts, joints: [], stocks: STOCKS, shop, measure };
}

/** From parts in place to pieces, against the polygon library's bare union of the same outlines, and growth. */
export async function bench(): Promise<BenchRow[]> {
  const cases = [
    { name: 'pieces of braced ladders', make: braced },
    { name: 'pieces of mitered frames', make: frames },
  ];
  return cases.flatMap(({ name, make }) => {
    let first = 0;
    return SIZES.flatMap((size): BenchRow[] => {
      const input = inputOf(make(size));
      const [plan = 0, bare = 0] = medians(
        () => planJoinery(input).pieces.length,
        () => areaOf(union(input.parts.map((part) => part.region))),
      );
      first ||= plan;
      const note = `${planJoinery(input).pieces.length} pieces, ${plan.toFixed(0)} ms`;
      return [
        { name, size, ratio: plan / bare, against: 'bare union of the same outlines', note },
        { name: `${name}, growth`, size, ratio: plan / first, against: `size ${SIZES[0]}` },
      ];
    });
  });
}
