import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import { regionOfBox } from '../../src/geometry/region.ts';
import { layOut } from '../../src/layout/layout.ts';
import { layingAgain, plainFace, STOCKS } from '../layout/sample.ts';
import type { BenchRow } from './row.ts';

const COLUMNS = 25;
const ROWS = 20;

/**
 * 500 parts in 20 rows of 25 and 1,000 rules: each part stands off its left neighbor and off the part below
 * it. `joined`: one component on each axis that follows its first part; else each row and column alone.
 */
function grid(joined: boolean): Design {
  const parts: Part[] = [];
  const rules: Rule[] = [];
  const id = (c: number, r: number) => `p${String(r).padStart(2, '0')}-${String(c).padStart(2, '0')}`;
  for (let r = 0; r < ROWS; r++) {
    for (let c = 0; c < COLUMNS; c++) {
      const strip = newPart('strip', {
        id: id(c, r),
        name: '',
        box: { x: 10 + 50 * c, y: 10 + 90 * r, w: 40, h: 80 },
        stock: 'lath',
      });
      parts.push({ ...strip, lie: 'up' });
      const left = c > 0 ? id(c - 1, r) : joined && r > 0 ? id(0, r - 1) : 'face';
      const below = r > 0 ? id(c, r - 1) : joined && c > 0 ? id(c - 1, 0) : 'face';
      const own = { of: id(c, r), side: 'low' } as const;
      const first = c === 0 && r === 0 && joined;
      const at = (of: string, side: 'low' | 'high') => ({ of: first ? id(1, 1) : of, side }) as const;
      rules.push({
        id: `x${own.of}`,
        kind: 'set',
        axis: 'x',
        edge: first ? { of: id(1, 1), side: 'high' } : own,
        from: at(left, c > 0 ? 'high' : 'low'),
        distance: first ? 40 : c > 0 ? 10 : left === 'face' ? 10 : 0,
      });
      rules.push({
        id: `y${own.of}`,
        kind: 'set',
        axis: 'y',
        edge: first ? { of: id(1, 1), side: 'high' } : own,
        from: at(below, r > 0 ? 'high' : 'low'),
        distance: first ? 80 : r > 0 ? 10 : below === 'face' ? 10 : 0,
      });
    }
  }
  return { ...newDesign(), parts, rules };
}

const median = (times: readonly number[]): number =>
  [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;

/** Medians of several jobs run in turn, so that whatever else the machine does falls on all of them alike. */
function timed(runs: number, jobs: readonly ((i: number) => void)[]): number[] {
  const times: number[][] = jobs.map(() => []);
  for (let i = 0; i < runs + 5; i++) {
    jobs.forEach((job, j) => {
      const start = performance.now();
      job(i);
      if (i >= 5) times[j]?.push(performance.now() - start);
    });
  }
  return times.map(median);
}

const moved = (design: Design, index: number, by: number): Design => ({
  ...design,
  parts: design.parts.map((part, i) =>
    i === index ? { ...part, box: { ...part.box, x: part.box.x + by, y: part.box.y + by } } : part,
  ),
});

/** Plain objects of as many nodes: what any redraw has to make at least. */
function nodes(design: Design): unknown[] {
  return design.parts.map((part) => ({
    id: part.id,
    name: part.name,
    box: { ...part.box },
    region: regionOfBox(part.box),
    fill: '#aabbcc',
    visible: true,
  }));
}

export async function bench(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  let kept: unknown = null;
  for (const joined of [false, true]) {
    const design = grid(joined);
    const face = plainFace(1400, 2000);
    const input = { face, keepClears: [], stocks: STOCKS };
    const held = new Set([design.parts[0]?.id ?? '']);
    const again = layingAgain();
    const [full = 0, step = 0, plain = 0] = timed(40, [
      (i) => {
        kept = layOut({ ...input, design: moved(design, 0, i / 7), held });
      },
      (i) => {
        kept = again({ ...input, design: moved(design, 0, i / 7), held });
      },
      () => {
        kept = nodes(design);
      },
    ]);
    const what = joined ? 'drag step that moves all 500 parts' : 'drag step held by rules, 500 parts';
    const note = `${design.rules.length} rules; step ${step.toFixed(2)} ms, full ${full.toFixed(2)} ms, plain ${plain.toFixed(3)} ms`;
    rows.push({ name: what, size: design.parts.length, ratio: step / full, against: 'a full solve', note });
    rows.push({
      name: what,
      size: design.parts.length,
      ratio: step / plain,
      against: 'making 500 plain nodes',
      note,
    });
  }
  if (kept === null) throw new Error('nothing was laid out');
  return rows;
}
