import { readSupplies } from '../../src/command/supplies.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { plan } from '../../src/plan/plan.ts';
import { chanceOf } from '../chance.ts';
import type { BenchRow } from './row.ts';

/** The last size is the most parts that a design is made for. */
const SIZES = [125, 500, 2000] as const;
const BED = { ...DEFAULT_BED, mattress: { width: 3000, length: 4000, thickness: 127 }, ceiling: 6000 };

/** Strips of unlike lengths in rows; `mitered`: with unlike ends too. */
function strips(count: number, mitered: boolean): Design {
  const chance = chanceOf(3);
  const angle = () => Math.round(80 * chance() - 40);
  const parts = Array.from({ length: count }, (_, i): Part => {
    const box = { x: 10 + 140 * (i % 20), y: 10 + 39 * Math.floor(i / 20), w: 60 + 70 * chance(), h: 35 };
    const strip = newPart('strip', { id: `s${i}`, name: '', box, stock: 'lath-quarter', finish: 'trim' });
    if (!mitered) return strip;
    const end = () => ({ cut: 'miter', angle: angle() }) as const;
    return { ...strip, ends: { start: end(), end: end() } };
  });
  return { ...newDesign(BED), parts };
}

/** Panels of unlike sizes in rows. */
function panels(count: number): Design {
  const chance = chanceOf(4);
  const parts = Array.from({ length: count }, (_, i): Part => {
    const at = { x: 10 + 59 * (i % 50), y: 10 + 98 * Math.floor(i / 50) };
    const box = { ...at, w: 20 + 35 * chance(), h: 20 + 70 * chance() };
    return newPart('panel', { id: `p${i}`, name: '', box, finish: 'trim' });
  });
  return { ...newDesign(BED), parts };
}

/** Processor time of a plan from nothing, in milliseconds: other work on the machine counts less than by the clock. */
function costOf(design: Design): number {
  const supplies = readSupplies(design);
  const before = process.cpuUsage();
  plan(design, supplies);
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

/** The whole plan from nothing, up to the most parts that a design is made for. */
export async function bench(): Promise<BenchRow[]> {
  costOf(strips(20, false));
  const cases: readonly (readonly [string, (count: number) => Design])[] = [
    ['whole plan, strips of unlike lengths', (n) => strips(n, false)],
    ['whole plan, strips of unlike ends', (n) => strips(n, true)],
    ['whole plan, panels of unlike sizes', panels],
  ];
  return cases.flatMap(([name, make]) => {
    let first = 0;
    return SIZES.map((size): BenchRow => {
      const cost = costOf(make(size));
      first ||= cost;
      const note = `${(cost / 1000).toFixed(1)} s of processor time`;
      return { name, size, ratio: cost / first, against: `size ${SIZES[0]}`, note };
    });
  });
}
