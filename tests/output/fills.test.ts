import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Fill } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { areaOf } from '../../src/geometry/region.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { plan } from '../../src/plan/plan.ts';
import { SUPPLIES } from '../plan/starters.ts';

const fill = (id: string, x: number, more: Partial<Fill>): Fill => ({
  ...newPart('fill', { id, name: id, box: { x, y: 300, w: 380, h: 500 }, stock: 'lath-quarter' }),
  finish: 'trim',
  ...more,
});

const made = (() => {
  const design = newDesign();
  const parts = [
    fill('herringbone', 60, { pattern: { form: 'herringbone', length: 150 }, angle: 45 }),
    fill('boards', 520, {
      pattern: { form: 'battened', stock: 'square-half' },
      stock: 'pine-1x4',
      angle: 90,
      gap: 6,
      overrides: { '1,0': { omit: true }, '2,0': { finish: 'ground' } },
    }),
  ];
  return plan(
    { ...design, bed: { ...design.bed, skin: { thickness: 18, material: 'plywood' } }, parts },
    SUPPLIES,
    { effort: { nodes: 50 } },
  );
})();

describe('a plan with fills', () => {
  it('lays, paints and leaves out piece by piece, battens over the boards', () => {
    const boards = made.layout.parts.filter(({ part }) => part === 'boards');
    expect(boards.some(({ id }) => id === 'boards[1,0]')).toBe(false);
    expect(boards.find(({ id }) => id === 'boards[2,0]')?.finish).toBe('ground');
    const [low, high] = [0, 1].map((row) => boards.filter(({ member }) => member?.row === row));
    const first = low?.[0];
    expect(high?.length).toBeGreaterThan(1);
    expect(high?.every((batten) => batten.z0 === first?.z1)).toBe(true);
    const step = (id?: string) =>
      made.marks.steps.find((one) => one.act === 'fix' && one.parts.includes(id ?? ''));
    expect(step(high?.[0]?.id)?.number).toBeGreaterThan(step(first?.id)?.number ?? Number.POSITIVE_INFINITY);
  });

  it('weighs and cuts what it lays', () => {
    const pine = made.tables.materials.find(({ id }) => id === 'pine')?.density ?? 0;
    const mass = made.layout.parts.reduce((sum, { region, z0, z1 }) => sum + areaOf(region) * (z1 - z0), 0);
    const painted = made.load.added - (mass * pine) / 1e9;
    // The rest is dry paint.
    expect(painted).toBeGreaterThan(0);
    expect(painted).toBeLessThan(0.3);
    const cut = new Set(made.cutting.boards.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)));
    for (const { id } of made.joinery.pieces) expect(cut.has(id), id).toBe(true);
  });

  it('tells of a fill once what holds for many of its pieces', () => {
    const said = made.checks.map(({ code, parts }) => `${code} ${parts[0]?.replace(/\[.*/, '')}`);
    expect(new Set(said).size).toBe(said.length);
    expect(said.length).toBeGreaterThan(0);
  });

  it('marks the outside of a herringbone, and every edge of upright boards across', () => {
    const of = (id: string, axis: string) =>
      made.marks.marks.filter((mark) => mark.axis === axis && mark.part.startsWith(id));
    expect(of('herringbone', 'x').map(({ part, at }) => [part, Math.round(at)])).toEqual([
      ['herringbone', 60],
      ['herringbone', 440],
    ]);
    const boards = made.layout.parts.filter(({ part }) => part === 'boards');
    expect(of('boards', 'x')).toHaveLength(2 * boards.length + 2);
    expect(of('boards', 'y')).toHaveLength(2);
  });

  it('has a map of each fill with the labels of its pieces', () => {
    const pages = packetPages(made).filter(({ drawing }) => drawing.title === 'Where each board goes');
    const told = pages.map(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item.text));
    for (const id of ['herringbone', 'boards']) {
      // In parts where labels have no room on one page.
      const words = told.filter((of) => of.some((word) => word.startsWith(id))).flat();
      // Pieces too small for a label have none.
      const pieces = made.joinery.pieces.filter(({ part }) => part.startsWith(id));
      const large = pieces.filter(({ placed, length }) => areaOf(placed) > 3000 && length > 60);
      for (const label of new Set(large.map((piece) => piece.label))) expect(words).toContain(label);
    }
  });
});
