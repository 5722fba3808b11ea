import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Run } from '../../src/design/schema.ts';
import { createPlanner } from '../../src/plan/plan.ts';
import { SUPPLIES } from './starters.ts';

/**
 * An eyebrow of lath, 6.35 by 38.1, flat or on its edge: 800 long with a rise of 100, R = 800² / (8 · 100) + 100 / 2 = 850
 * (any handbook), 56.14 degrees. Its path is the outer edge, its middle at (500, 350).
 */
const CENTER = { x: 500, y: 350 };
const ANGLE = 4 * Math.atan(200 / 800);
const eyebrow = (more: Partial<Run>): Run => ({
  ...newPart('run', {
    id: 'brow',
    name: 'Brow',
    box: { x: 100, y: 1100, w: 800, h: 100 },
    stock: 'lath-quarter',
  }),
  path: {
    form: 'points',
    points: [
      { u: 1, v: 0, side: { as: 'rise', rise: 100 } },
      { u: 0, v: 0 },
    ],
    closed: false,
    band: { stock: null, pieces: 1 },
  },
  ...more,
});
const planned = (more: Partial<Run> = {}) =>
  createPlanner()({ ...newDesign(), parts: [eyebrow(more)] }, SUPPLIES);

describe('stock that is bent, through the plan', () => {
  const onEdge = planned({ onEdge: true });
  const middle = (850 - 6.35 / 2) * ANGLE;

  it('is bought, cut and weighed as the straight piece that it is bent of', () => {
    const [piece] = onEdge.joinery.pieces;
    expect(piece?.length).toBeCloseTo(middle, 6);
    const cuts = onEdge.cutting.boards.flatMap(({ stock, cuts: own }) =>
      own.map((cut) => ({ ...cut, stock })),
    );
    expect(cuts).toMatchObject([{ stock: 'lath-quarter', piece: piece?.id }]);
    expect((cuts[0]?.to ?? 0) - (cuts[0]?.from ?? 0)).toBeCloseTo(piece?.shown.length ?? 0, 0);
    expect(onEdge.cutting.sheets).toEqual([]);
    // Pine weighs 448 kg/m3 (the table's own source).
    const mass = onEdge.load.byPart.find(({ part }) => part === 'brow')?.mass ?? 0;
    expect(mass).toBeCloseTo((middle * 6.35 * 38.1 * 448) / 1e9, 6);
  });

  it('has its brads along its middle line, twice as close as along a straight piece', () => {
    const flat = planned();
    const at = flat.fastening.parts.find(({ part }) => part === 'brow')?.at ?? [];
    const { spacing } = flat.design.fastening;
    const turns = at.map(({ x, y }) => Math.atan2(y - CENTER.y, x - CENTER.x)).sort((a, b) => a - b);
    for (const { x, y } of at)
      expect(Math.abs(Math.hypot(x - CENTER.x, y - CENTER.y) - (850 - 38.1 / 2))).toBeLessThan(0.2);
    const gaps = turns.slice(1).map((turn, i) => (turn - (turns[i] ?? 0)) * (850 - 38.1 / 2));
    expect(gaps.length).toBeGreaterThan(3);
    expect(Math.max(...gaps)).toBeLessThan(spacing / 2 + 0.1);
  });

  it('is fastened in a step of its own, on from one end', () => {
    const acts = onEdge.marks.steps.filter(({ parts }) => parts.includes('brow')).map(({ act }) => act);
    expect(acts).toContain('bend');
    expect(acts).not.toContain('fix');
  });
});
