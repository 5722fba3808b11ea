import DxfParser from 'dxf-parser';
import { describe, expect, it } from 'vitest';
import { benchSteps } from '../../src/cutting/atSaw.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Fill } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { containsPointInRegion } from '../../src/geometry/region.ts';
import { cutListRows } from '../../src/output/csv/cutList.ts';
import { faceDrawing, faceOutlines } from '../../src/output/drawings.ts';
import { dxfOf } from '../../src/output/dxf/dxf.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { svgOf } from '../../src/output/svg/svg.ts';
import { plan } from '../../src/plan/plan.ts';
import type { Plan } from '../../src/plan/types.ts';
import { areaOf, shoelace } from '../shoelace.ts';
import { SUPPLIES } from './starters.ts';

/** One fill of each pattern, in every way that it has, through every stage of the plan. */
const PATTERNS: Readonly<Record<string, Partial<Fill> & Pick<Fill, 'pattern'>>> = {
  planks: { pattern: { form: 'planks', edge: 'square', lap: 0 } },
  lapped: { pattern: { form: 'planks', edge: 'lapped', lap: 9 } },
  tongued: { pattern: { form: 'planks', edge: 'tongued', lap: 6 }, angle: 45 },
  ripped: {
    pattern: { form: 'planks', edge: 'square', lap: 0 },
    stock: 'plywood-quarter',
    width: 90,
    gap: 3,
  },
  battened: { pattern: { form: 'battened', stock: 'lath-quarter' }, gap: 8 },
  grooved: { pattern: { form: 'grooved', face: 38, depth: 3 }, stock: 'mdf-quarter', gap: 3 },
  lattice: { pattern: { form: 'lattice' }, stock: 'lath-quarter', gap: 60, angle: 45 },
  halved: { pattern: { form: 'lattice', halved: true }, stock: 'lath-quarter', gap: 60, angle: 45 },
  courses: { pattern: { form: 'courses', length: 190, bond: 'half' }, angle: 0, gap: 9 },
  bricks: {
    pattern: { form: 'courses', length: 190, bond: 'third', joints: { finish: 'trim' } },
    ...{ stock: 'mdf-quarter', width: 57, angle: 0, gap: 9 },
  },
  basket: { pattern: { form: 'basket', count: 2 }, angle: 0 },
  herringbone: { pattern: { form: 'herringbone', length: 270 }, angle: 45 },
  chevron: { pattern: { form: 'chevron', span: 180, slope: 45 } },
  siding: { pattern: { form: 'louvers', lap: 6 }, stock: 'lath-quarter', angle: 0 },
  louvers: { pattern: { form: 'louvers', lap: 6, tilt: 25 }, stock: 'lath-quarter', angle: 0 },
};

/** A gable: slanted ends, a point, and corners on long edges. */
const GABLE: Fill['shape'] = {
  form: 'polygon',
  points: [
    { u: 0, v: 0 },
    { u: 1, v: 0 },
    { u: 1, v: 0.6 },
    { u: 0.5, v: 1 },
    { u: 0, v: 0.6 },
  ],
};

function planned(more: Partial<Fill>, back: string | null): Plan {
  const design = newDesign();
  const box = { x: 100, y: 300, w: 640, h: 700 };
  const part: Fill = {
    ...newPart('fill', { id: 'fill', name: 'Filled', box, stock: 'pine-1x4' }),
    ...{ shape: GABLE, finish: back, ...more },
  };
  const bed = { ...design.bed, skin: { thickness: 18, material: 'plywood' } };
  const pages = { ...design.pages, also: ['parts' as const] };
  return plan({ ...design, bed, pages, parts: [part] }, SUPPLIES, { effort: { nodes: 50 } });
}

const fillsOf = ({ layout }: Plan) => layout.parts.flatMap((laid) => (laid.kind === 'fill' ? [laid] : []));

describe.each(Object.entries(PATTERNS))('a fill of %s', (name, more) => {
  const made = planned(more, 'ground');
  const { pieces } = made.joinery;
  const boards = fillsOf(made);

  it('is cut into pieces that a saw or a pattern makes, each of which comes from a board or sheet once', () => {
    expect(pieces.length).toBeGreaterThan(0);
    const places = new Set(pieces.map(({ part }) => part));
    expect(places).toEqual(new Set(boards.map(({ id }) => id)));
    for (const { ends, holes, form } of pieces) {
      for (const { miter, second, cut } of ends) {
        if (cut === 'sawn') continue;
        expect(holes).toHaveLength(0);
        for (const angle of [miter, second?.miter ?? 0]) expect(Math.abs(angle)).toBeLessThanOrEqual(50);
        if (form === 'sheet') expect(miter).toBe(0);
      }
    }
    const cut = [
      ...made.cutting.boards.flatMap(({ cuts }) => cuts.map(({ piece }) => piece)),
      ...made.cutting.sheets.flatMap(({ placements }) => placements.map(({ piece }) => piece)),
    ].sort();
    expect(cut).toEqual(pieces.map(({ id }) => id).sort());
    // At the saw each is a step, or the last cut of one.
    const bench = JSON.stringify(benchSteps(made.cutting, pieces));
    for (const { id } of pieces) expect(bench).toContain(JSON.stringify(id));
    const rows = cutListRows(made).slice(1);
    expect(rows.reduce((sum, row) => sum + Number(row[1]), 0)).toBe(pieces.length);
  });

  it('weighs what its pieces weigh', () => {
    const bare = planned({ ...more, ...(name === 'bricks' && { finish: 'ground' }) }, null);
    const density = (stock: string): number => {
      const material = bare.stocks.get(stock)?.material;
      return SUPPLIES.tables.materials.find(({ id }) => id === material)?.density ?? Number.NaN;
    };
    const wood = bare.joinery.pieces.reduce((sum, { outline, holes, notches, thickness, stock }) => {
      const whole =
        Math.abs(shoelace(outline)) - holes.reduce((all, hole) => all + Math.abs(shoelace(hole)), 0);
      const out = notches.reduce((all, notch) => all + Math.abs(shoelace(notch.outline)) * notch.depth, 0);
      return sum + ((whole * thickness - out) * density(stock)) / 1e9;
    }, 0);
    const paint = name === 'bricks' ? 0.25 : 0;
    // Laps and tongues hold each other in one layer; a slat's ends are counted square to the face.
    const slack = ['lapped', 'tongued'].includes(name)
      ? 0.12
      : ['siding', 'louvers'].includes(name)
        ? 0.01
        : 1e-6;
    expect(bare.load.added).toBeGreaterThan(wood * (1 - slack) - 1e-9);
    expect(bare.load.added).toBeLessThan(wood * (1 + slack) + paint + 1e-9);
  });

  it('is painted where it is seen, and on its edges', () => {
    const use = made.finish.uses.find(({ finish }) => finish === 'ground');
    const shown = made.finish.shown.filter(
      ({ part, finish }) => part.startsWith('fill') && finish === 'ground',
    );
    expect(use?.face).toBeCloseTo(shown.reduce((sum, one) => sum + areaOf(one.region), 0) / 1e6, 5);
    if (name === 'bricks') expect(use?.tape).toBeGreaterThan(1000);
    else expect(use?.edge).toBeGreaterThan(0);
    expect(use?.volume).toBeGreaterThan(0);
  });

  it('is held by brads that lie in their pieces', () => {
    const held = made.fastening.parts.filter(({ at }) => at.length > 0);
    if (name === 'louvers') expect(held).toEqual([]);
    else expect(held.length).toBeGreaterThan(boards.length / 2);
    for (const { part, at } of held) {
      const laid = boards.find(({ id }) => id === part);
      for (const p of at) expect(containsPointInRegion(laid?.region ?? [], p), part).toBe(true);
    }
  });

  it('is marked, and made in order', () => {
    const outside = made.marks.marks.filter(({ part }) => part === 'fill');
    expect(outside.map(({ axis, edge }) => `${axis} ${edge}`)).toEqual([
      'x low',
      'x high',
      'y low',
      'y high',
    ]);
    const acts = made.marks.steps.map(({ act }) => act);
    const own = [
      pieces.some(({ form }) => form === 'sheet') && 'cut-sheets',
      pieces.some(({ form }) => form !== 'sheet') && 'cut-boards',
      name === 'halved' && 'notch',
      name === 'grooved' && 'groove',
      name === 'bricks' && 'mask-joints',
      'paint-before',
      'mark',
      name === 'halved' ? 'assemble' : 'fix',
    ].filter((act) => act !== false);
    expect(acts.includes('mask-joints')).toBe(name === 'bricks');
    const order = own.map((act) => acts.indexOf(act as (typeof acts)[number]));
    expect(order).not.toContain(-1);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
  });

  it('has full-size patterns of what is sawn along a line, one of a kind', () => {
    const sawn = new Set(pieces.filter(({ ends }) => ends[0].cut === 'sawn').map(({ label }) => label));
    const printed = made.patterns.map(({ title }) => title);
    for (const label of sawn) expect(printed.filter((of) => of.includes(`(${label})`))).toHaveLength(1);
  });

  it('is in the packet with a map, and in every drawing', () => {
    const maps = packetPages(made).filter(({ drawing }) => drawing.title === 'Where each board goes');
    const words = maps.flatMap(({ drawing }) => flatten(drawing.items).texts.map(({ item }) => item.text));
    const large = pieces.filter(({ placed, length }) => areaOf(placed) > 4000 && length > 80);
    for (const { label } of large) expect(words.join(' ')).toContain(label);
    // Every laid piece is a closed outline of its own, and so is each groove.
    const entities = new DxfParser().parseSync(dxfOf(faceOutlines(made)))?.entities ?? [];
    const drawn = made.joinery.solids.reduce(
      (sum, { region, relief }) => sum + region.length + (relief?.side === 'groove' ? relief.sunk.length : 0),
      0,
    );
    expect(entities.length).toBeGreaterThanOrEqual(drawn);
    expect(svgOf(faceDrawing(made)).match(/<path/g)?.length).toBeGreaterThanOrEqual(
      made.joinery.solids.length,
    );
    expect(made.checks.filter(({ severity }) => severity === 'error')).toEqual([]);
  });
});
