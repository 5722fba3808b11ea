import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { bodyOf } from '../../src/fold/body.ts';
import { massesOf } from '../../src/load/mass.ts';
import { patternRequests } from '../../src/plan/patternRequests.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { PLAN_WORDS } from '../../src/plan/words/tables.ts';
import { SUPPLIES } from './starters.ts';

/**
 * An arched frame, 600 wide with a rise of 150: R = 600² / (8 · 150) + 150 / 2 = 375 (any handbook), its middle at
 * (500, 775). Boards 38.1 wide, the head of 1/2 in MDF.
 */
const CENTER = { x: 500, y: 775 };
const arch = {
  ...newPart('run', { id: 'arch', name: 'Arch', box: { x: 200, y: 250, w: 600, h: 900 }, stock: 'pine-1x2' }),
  path: { form: 'arched', rise: 150, segments: 6, band: { stock: 'mdf-half', pieces: 3 } },
  side: 'inside',
} as const;
const batten = newPart('strip', {
  id: 'batten',
  name: 'Batten',
  box: { x: 480, y: 700, w: 38.1, h: 500 },
  stock: 'pine-1x2',
});
const design = (...parts: Design['parts']): Design => ({ ...newDesign(), parts });
const fromCenter = ({ x, y }: { x: number; y: number }) => Math.hypot(x - CENTER.x, y - CENTER.y);

describe('a head that is sawn from sheet, through the plan', () => {
  const plan = createPlanner()(design(arch), SUPPLIES);
  const head = plan.joinery.pieces.filter(({ form }) => form === 'sheet');

  it('is cut from sheets in rectangles that do not overlap, each piece once', () => {
    const placed = plan.cutting.sheets.flatMap(({ placements }) => placements);
    expect(placed.map(({ piece }) => piece).sort()).toEqual(head.map(({ id }) => id).sort());
    for (const [i, a] of placed.entries())
      for (const b of placed.slice(i + 1)) {
        const apart = Math.max(a.x - b.x - b.w, b.x - a.x - a.w, a.y - b.y - b.h, b.y - a.y - a.h);
        expect(apart).toBeGreaterThan(-1e-6);
      }
    expect(plan.cutting.sheets.every(({ stock }) => stock === 'mdf-half')).toBe(true);
  });

  it('has brads in every piece of it, between both edges, and a pattern of each kind of piece', () => {
    const at = plan.fastening.parts.find(({ part }) => part === 'arch')?.at ?? [];
    const inHead = at.filter((p) => p.y > 1000 && fromCenter(p) > 330);
    expect(inHead.length).toBeGreaterThanOrEqual(2 * head.length);
    for (const p of inHead) {
      expect(fromCenter(p)).toBeLessThan(375);
      expect(fromCenter(p)).toBeGreaterThan(375 - 38.1);
    }
    const requests = patternRequests({
      ...{ design: plan.design, face: plan.face, parts: plan.layout.parts, pieces: plan.joinery.pieces },
      ...{ signs: [], seams: new Map(), sticks: [], measure: { unit: 'mm', fraction: '16' } },
      ...{ fastened: [], tables: plan.tables, words: PLAN_WORDS.en.patterns },
      nameOf: (id) => id,
      finishOf: (id) => id,
    });
    const patterns = requests.filter((one) => one.kind === 'part');
    expect(patterns).toHaveLength(new Set(head.map(({ label }) => label)).size);
  });

  it('weighs what its wood does, by the density of each', () => {
    const densityOf = (stock: string): number => {
      const material = plan.stocks.get(stock)?.material;
      return SUPPLIES.tables.materials.find(({ id }) => id === material)?.density ?? 0;
    };
    // Outlines by the shoelace sum, times thickness and density; chords stray from arcs by less than a thousandth of it.
    const wood = plan.joinery.pieces.reduce((sum, { outline, thickness, stock }) => {
      const area = outline.reduce((own, p, i) => {
        const q = outline[(i + 1) % outline.length] ?? p;
        return own + (p.x * q.y - q.x * p.y) / 2;
      }, 0);
      return sum + (Math.abs(area) * thickness * densityOf(stock)) / 1e9;
    }, 0);
    const weighed = massesOf({
      solids: plan.joinery.solids,
      parts: plan.layout.parts,
      stocks: [...plan.stocks.values()],
      materials: SUPPLIES.tables.materials,
      coatings: [],
    });
    const mass = weighed.masses.reduce((sum, one) => sum + one.mass, 0);
    expect(Math.abs(mass - wood) / wood).toBeLessThan(1e-3);
  });

  it('is told where its face is not flush, and swings as far out as the thicker of both', () => {
    // A 3/4 in head on 1/4 in lath stands out by half an inch; a quarter inch less than pine of 3/4 in is behind it.
    const made = (stock: string, sheet: string) => {
      const path = { ...arch.path, band: { stock: sheet, pieces: 3 } };
      const { checks, joinery } = createPlanner()(design({ ...arch, stock, path }), SUPPLIES, {
        effort: { nodes: 1 },
      });
      const body = joinery.solids.map(bodyOf)[0];
      const told = checks.find(({ code }) => code === 'run.head-not-flush');
      return { out: body ? (body.z1 - body.z0) / 25.4 : 0, told: told?.figures };
    };
    const thick = made('lath-quarter', 'mdf-three-quarter');
    expect(thick.out).toBeCloseTo(0.75, 9);
    expect(thick.told).toEqual({ head_mm: 19.05, stock_mm: 6.35 });
    const thin = made('pine-1x2', 'mdf-half');
    expect(thin.out).toBeCloseTo(0.75, 9);
    expect(thin.told).toEqual({ head_mm: 12.7, stock_mm: 19.05 });
    expect(made('pine-1x2', 'mdf-three-quarter').told).toBeUndefined();
  });

  it('is in the way of a batten that runs into it, which may end at it instead', () => {
    const overlaps = (one: Design) =>
      createPlanner()(one, SUPPLIES, { effort: { nodes: 1 } }).checks.filter(
        ({ code }) => code === 'part.overlap',
      );
    const up = { ...batten, lie: 'up' } as const;
    expect(overlaps(design(arch, up)).map(({ parts }) => parts)).toEqual([['arch', 'batten']]);
    const ends = { start: { cut: 'square' }, end: { cut: 'stop', at: 'arch' } } as const;
    expect(overlaps(design(arch, { ...up, ends }))).toEqual([]);
  });
});
