import { union } from 'polyclip-ts';
import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Fill, Part, Run, Strip } from '../../src/design/schema.ts';
import type { Point, Region } from '../../src/geometry/shape.ts';
import { outlineOf } from '../../src/layout/place/outlines.ts';
import { faceOutlines } from '../../src/output/drawings.ts';
import { dxfOf } from '../../src/output/dxf/dxf.ts';
import { areaOf, type Multi, momentsOf, multiOf } from '../shoelace.ts';
import { planned, SUPPLIES } from './starters.ts';

/**
 * One of each kind of what is cut to what it meets, curved or fills a shape, through every stage, recomputed from the layout
 * alone: what one stage knows and the next forgets shows as a difference. No source: each figure follows from the others.
 */
const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
const BOX = box(150, 300, 500, 500);
const roundel: Part = {
  ...newPart('panel', { id: 'roundel', name: 'Roundel', box: box(300, 700, 240, 240), finish: 'ground' }),
  shape: { form: 'round' },
};
const run = (more: Partial<Run>, of = BOX): Run => ({
  ...newPart('run', { id: 'it', name: 'It', box: of, stock: 'pine-1x2', finish: 'trim' }),
  ...more,
});
const STOP = { cut: 'stop', at: 'roundel' } as const;
const fill = (more: Partial<Fill>): Fill => ({
  ...newPart('fill', { id: 'it', name: 'It', box: BOX, stock: 'pine-1x3', finish: 'trim' }),
  shape: outlineOf('arched').first(BOX),
  ...more,
});

const CASES: Readonly<Record<string, readonly Part[]>> = {
  'a curved band': [
    run({ path: { form: 'arched', rise: 250, band: { stock: 'mdf-three-quarter', pieces: 3 } } }),
  ],
  'a bent run': [
    run(
      {
        stock: 'lath-quarter',
        onEdge: true,
        path: {
          form: 'points',
          closed: false,
          points: [
            { u: 0, v: 0, side: { as: 'rise', rise: -50 } },
            { u: 1, v: 0 },
          ],
          band: { stock: null, pieces: 1 },
        },
      },
      box(150, 400, 700, 50),
    ),
  ],
  'a strip that stops at a circle': [
    {
      ...newPart('strip', {
        id: 'it',
        name: 'It',
        box: box(380, 300, 63.5, 450),
        stock: 'pine-1x3',
        finish: 'trim',
      }),
      lie: 'up',
      ends: { start: { cut: 'square' }, end: STOP },
    } satisfies Strip,
    roundel,
  ],
  'a frame cut open at a circle': [
    run({ path: { form: 'frame', only: { from: 2, count: 5 } }, ends: { start: STOP, end: STOP } }),
    roundel,
  ],
  'a lattice': [fill({ stock: 'lath-quarter', pattern: { form: 'lattice' }, gap: 40, angle: 45 })],
  'a lattice let into each other': [
    fill({ stock: 'lath-quarter', pattern: { form: 'lattice', halved: true }, gap: 60, angle: 45 }),
  ],
  shiplap: [fill({ pattern: { form: 'planks', edge: 'lapped', lap: 9.5 }, angle: 0 })],
  'a chevron': [fill({ pattern: { form: 'chevron', span: 200, slope: 45 } })],
};

const planOf = (parts: readonly Part[]) => {
  const base = newDesign();
  const design: Design = {
    ...base,
    bed: { ...base.bed, skin: { thickness: 18, material: 'plywood' } },
    parts: parts.map((part) => ({ ...part, fixing: { how: 'brads', glue: true } }) as Part),
  };
  return planned(design);
};

const areaOfAll = (regions: readonly Region[]): number => {
  const [first, ...more] = regions.filter((one) => one.length > 0).map(multiOf);
  return first ? momentsOf(union(first, ...more) as Multi, { x: 400, y: 550 })[0] : 0;
};

const within = (region: Region, p: Point): boolean =>
  region
    .flatMap(({ outer, holes }) => [outer, ...holes])
    .reduce((inside, ring) => {
      const crossings = ring.filter((a, i) => {
        const b = ring[(i + 1) % ring.length] as Point;
        return a.y > p.y !== b.y > p.y && p.x < a.x + ((b.x - a.x) * (p.y - a.y)) / (b.y - a.y);
      });
      return crossings.length % 2 === 1 ? !inside : inside;
    }, false);

describe.each(Object.entries(CASES))('%s', (_, parts) => {
  const plan = planOf(parts);
  const { layout, joinery, cutting, finish, fastening, load, marks, patterns } = plan;
  const own = layout.parts.filter(({ part }) => part === 'it');
  const ids = new Set(own.map(({ id }) => id));
  const pieces = joinery.pieces.filter(({ part }) => ids.has(part));

  it('has no fault, and pieces that cover what it covers', () => {
    expect(plan.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
    expect(pieces.length).toBeGreaterThan(0);
    const covered = areaOfAll(own.map(({ region }) => region));
    expect(areaOfAll(pieces.map(({ placed }) => placed)) / covered).toBeCloseTo(1, 4);
  });

  it('is cut, each piece once, from a board or a sheet, and stands at the saw', () => {
    const cut = [
      ...cutting.boards.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)),
      ...cutting.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece)),
    ];
    for (const { id } of pieces)
      expect(
        cut.filter((one) => one === id),
        id,
      ).toHaveLength(1);
    const steps = JSON.stringify(benchSteps(cutting, joinery.pieces));
    for (const { id } of pieces) expect(steps).toContain(JSON.stringify(id));
  });

  it('is painted as far as it is seen, and along its edges', () => {
    const [use] = finish.uses.filter((one) => one.finish === 'trim');
    const seen = areaOfAll(own.map(({ region }) => region)) / 1e6;
    expect((use?.face ?? 0) / seen).toBeCloseTo(1, 2);
    expect(use?.edge).toBeGreaterThan(0);
    expect(use?.painted.face).toBeGreaterThanOrEqual((use?.face ?? 0) * 0.999);
  });

  it('is held: brads in its own wood, or glue', () => {
    for (const { id, region } of own) {
      const held = fastening.parts.filter(({ part }) => part === id);
      expect(held.length, id).toBeGreaterThan(0);
      for (const { at } of held) for (const p of at) expect(within(region, p), id).toBe(true);
      const told = plan.checks.some(
        (check) => check.code.startsWith('fastening.') && check.parts.includes(id),
      );
      expect(held.some(({ at, how, glue }) => at.length >= 2 || how === 'glue' || glue > 0) || told, id).toBe(
        true,
      );
    }
  });

  it('weighs its wood and its paint', () => {
    const whole = pieces.reduce((sum, { outline, holes, thickness, notches, stock }) => {
      const material = plan.stocks.get(stock)?.material ?? '';
      const density = SUPPLIES.tables.materials.find(({ id }) => id === material)?.density ?? 0;
      const sunk = notches.reduce(
        (less, { outline: ring, depth }) => less + areaOf([{ outer: ring, holes: [] }]) * depth,
        0,
      );
      return sum + ((areaOf([{ outer: outline, holes: [...holes] }]) * thickness - sunk) / 1e9) * density;
    }, 0);
    // Boards that lap lack at both edges half of their thickness: as much as lies under the next one.
    const laps = own.some(
      ({ kind, spec }) => kind === 'fill' && 'pattern' in spec && spec.pattern.form === 'planks',
    );
    const share = own.reduce((sum, { region }) => sum + areaOf(region), 0);
    const under = own.reduce((sum, laid) => sum + ('wood' in laid ? areaOf(laid.wood) : 0), 0);
    const wood = laps ? whole * (share / under) : whole;
    const told = load.byPart.filter(({ part }) => ids.has(part)).reduce((sum, { mass }) => sum + mass, 0);
    // Paint and brads besides: some grams on each.
    expect(told).toBeGreaterThan(wood * 0.995);
    expect(told).toBeLessThan(wood * 1.35 + 0.05);
  });

  it('is marked, and has its place in the order of work', () => {
    const marked = new Set(
      marks.marks.filter(({ part }) => part === 'it' || ids.has(part)).map(({ axis }) => axis),
    );
    expect(marked).toEqual(new Set(['x', 'y']));
    const steps = marks.steps.filter((step) => step.parts.some((id) => id === 'it' || ids.has(id)));
    const acts = new Set(steps.map(({ act }) => act));
    expect([...acts].some((act) => act === 'cut-boards' || act === 'cut-sheets')).toBe(true);
    // What is bent is fastened as it is bent, and laths that are let into each other as they are put together.
    const fastening = steps.filter(({ act }) => act === 'fix' || act === 'bend' || act === 'assemble');
    for (const id of ids)
      expect(
        fastening.some(({ parts: of }) => of.includes(id) || of.includes('it')),
        id,
      ).toBe(true);
    if (pieces.some(({ bent }) => bent)) expect(acts).toContain('bend');
    if (pieces.some(({ notches }) => notches.length > 0)) expect(acts).toContain('notch');
    expect(acts.has('paint-before') || acts.has('paint-after')).toBe(true);
  });

  it('is printed where no saw cuts it, and drawn in files for machines with its arcs', () => {
    const titles = patterns.map(({ title }) => title).join('; ');
    for (const { label, ends, outline } of pieces) {
      // Chords of a curve turn little and often: what has more corners than a board and a point at each end is curved.
      if (ends.some(({ cut }) => cut === 'sawn') && outline.length > 12)
        expect(titles).toContain(`(${label})`);
    }
    const dxf = dxfOf(faceOutlines(plan));
    expect(dxf).toContain('POLYLINE');
    const curved = own.some(({ region }) => region.some(({ outer }) => outer.length > 20));
    // Group 42 is the bulge of an arc in DXF R12.
    if (curved) expect(/\r?\n *42\r?\n-?0?\.?\d/.test(dxf)).toBe(true);
  });
});
