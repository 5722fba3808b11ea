import { describe, expect, it } from 'vitest';
import { readSupplies, readTables } from '../../src/command/supplies.ts';
import { DEFAULT_BED, newDesign, newPart } from '../../src/design/defaults.ts';
import { hardwareOf } from '../../src/design/hardware.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import { bitFor } from '../../src/fastening/bit.ts';
import { boxOfPath } from '../../src/geometry/path.ts';
import type { Box, Point } from '../../src/geometry/shape.ts';
import { inches } from '../../src/measure/units.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import type { PatternSet } from '../../src/patterns/result.ts';
import { plan } from '../../src/plan/plan.ts';
import { chanceOf } from '../chance.ts';

const { hardware, screws } = readTables();
const planned = (design: Design) => plan(design, readSupplies(design), { effort: { nodes: 200 } });
const base = newDesign(DEFAULT_BED);
const said = { check: () => '', step: () => '' };

/** All hardware of the table on a board, as it lies and, every other one, a quarter turn to the left, apart from each other. */
function onBoard(paper: string, seed: number): { design: Design; named: Map<string, string[]> } {
  const chance = chanceOf(seed);
  const board = { x: 90, y: 90, w: 800, h: 1730 };
  const sheet = newPart('panel', { id: 'sheet', name: 'Board', box: board, stock: 'mdf-half' });
  const spot = { x: 100 + 20 * chance(), y: 100 + 20 * chance(), row: 0 };
  const named = new Map<string, string[]>();
  const parts = hardware.map((one): Part => {
    const own = hardwareOf(one, chance() < 0.3 && one.shape.form !== 'arched');
    const { w, h } = own.sold;
    if (spot.x + w > 880) Object.assign(spot, { x: 100, y: spot.y + spot.row + 12, row: 0 });
    const box = { x: spot.x, y: spot.y, w, h };
    Object.assign(spot, { x: spot.x + w + 11, row: Math.max(spot.row, h) });
    named.set(one.name, [...(named.get(one.name) ?? []), one.id]);
    return { ...newPart('fitting', { id: one.id, name: one.id, box }), ...own, on: 'sheet' };
  });
  return { design: { ...base, pages: { ...base.pages, paper }, parts: [sheet, ...parts] }, named };
}

interface Template {
  readonly name: string;
  readonly middle: Point;
  readonly holes: readonly { readonly at: Point; readonly wide: number }[];
  /** Bold lines: edges of the wood, across and up from the middle. */
  readonly edges: { readonly x: readonly number[]; readonly y: readonly number[] };
  readonly told: readonly string[];
}

const middleOf = ({ x, y, w, h }: Box): Point => ({ x: x + w / 2, y: y + h / 2 });
const holds = (a: Box, { x, y }: Point) => x > a.x && x < a.x + a.w && y > a.y && y < a.y + a.h;
const once = <T>(all: readonly T[]): T[] => [
  ...new Map(
    all.map((one) => [JSON.stringify(one, (_, v) => (typeof v === 'number' ? v.toFixed(4) : v)), one]),
  ).values(),
];

/** What is on the paper, its pages laid together: all in the coordinates of the pattern. */
function stitched({ pages }: PatternSet, margin: number) {
  const found = pages.map(({ drawing, window }) => {
    const { paths, texts } = flatten(drawing.items);
    const by = { x: window.x - margin, y: window.y - margin };
    const placed = (box: Box) => ({ ...box, x: box.x + by.x, y: box.y + by.y });
    return {
      paths: paths.map(({ layer, item, path }) => ({ layer, dash: item.dash, box: placed(boxOfPath(path)) })),
      texts: texts.map(({ layer, item, matrix }) => {
        return { layer, bold: item.bold, words: item.text, at: { x: matrix.e + by.x, y: matrix.f + by.y } };
      }),
    };
  });
  return { paths: once(found.flatMap((f) => f.paths)), texts: once(found.flatMap((f) => f.texts)) };
}

/** The templates of a pattern, read off its paper: cut lines around, two center lines, rings with crosses, bold lines. */
function templatesOn(set: PatternSet, margin: number): Template[] {
  const { paths, texts } = stitched(set, margin);
  const cuts = paths.filter(({ layer, box }) => layer === 'guides' && box.w > 1 && box.h > 1);
  return cuts.map(({ box: around }) => {
    const inside = paths.filter(({ box }) => holds(around, middleOf(box)));
    const centers = inside.filter(({ layer, box }) => layer === 'guides' && (box.w < 0.01 || box.h < 0.01));
    const [upright] = centers.filter(({ box }) => box.w < 0.01);
    const [level] = centers.filter(({ box }) => box.h < 0.01);
    const middle = { x: upright?.box.x ?? Number.NaN, y: level?.box.y ?? Number.NaN };
    const own = texts.filter(({ at, layer }) => layer === 'labels' && holds(around, at));
    const bold = inside.filter(({ layer }) => layer === 'edges');
    return {
      name: own.find((text) => text.bold)?.words ?? '',
      middle,
      holes: inside
        .filter(({ layer, box }) => layer === 'holes' && Math.abs(box.w - box.h) < 1e-6 && box.w < 5)
        .map(({ box }) => ({ at: middleOf(box), wide: box.w })),
      edges: {
        x: bold.filter(({ box }) => box.w < 0.01).map(({ box }) => box.x - middle.x),
        y: bold.filter(({ box }) => box.h < 0.01).map(({ box }) => box.y - middle.y),
      },
      told: own.filter((text) => !text.bold).map(({ words }) => words),
    };
  });
}

describe('drilling templates', () => {
  it.each(['letter', 'a5', 'a4', 'a3', 'roll-610'])(
    'have each hole where plan.json has its screw, within 0.01 mm, on %s',
    (paper) => {
      const { design, named } = onBoard(paper, paper.length);
      const made = planned(design);
      const file = JSON.parse(planJson(made, said));
      const templates = made.patterns
        .filter((set) => set.for.startsWith('drilling'))
        .flatMap((set) => templatesOn(set, design.pages.margin.left));
      expect(templates.map(({ name }) => name).sort()).toEqual([...named.keys()].sort());
      for (const { name, middle, holes, edges } of templates) {
        const [id] = named.get(name) ?? [];
        const at = (axis: string): number =>
          file.marks.find(
            (m: { part: string; axis: string; edge: string }) =>
              m.part === id && m.axis === axis && m.edge === 'mid',
          ).at_mm;
        const screwed = file.fastening.filter((one: { part: string }) => one.part === id);
        const told = screwed.flatMap((one: { at_mm: [number, number][] }) => one.at_mm);
        expect(holes.length, name).toBe(told.length);
        for (const [x, y] of told) {
          const near = holes.filter(
            (hole) =>
              Math.abs(hole.at.x - middle.x - (x - at('x'))) < 0.01 &&
              Math.abs(hole.at.y - middle.y - (y - at('y'))) < 0.01,
          );
          expect(near.length, `${name} ${x} ${y}`).toBe(1);
        }
        // The board's edges, those within 75 mm (our own choice).
        const board = { x: [90, 890], y: [90, 1820] } as const;
        for (const axis of ['x', 'y'] as const)
          expect(edges[axis].map((by) => by + at(axis)).sort(), `${name} ${axis}`).toEqual(
            board[axis]
              .filter((edge) => Math.abs(edge - at(axis)) <= 75)
              .map((edge) => expect.closeTo(edge, 2)),
          );
      }
    },
  );

  it('are one for all that are drilled alike, with the place of each, and are counted as paper', () => {
    const knob = hardware.find(({ id }) => id === 'knob-1in');
    if (!knob) throw new Error('no knob');
    const own = hardwareOf(knob, false);
    const { w, h } = own.sold;
    const at = [250, 420, 590].map((x) => ({ x, y: 700, w, h }));
    const knobs = at.map((box, i) => ({
      ...newPart('fitting', { id: `k${i}`, name: `Knob ${i}`, box }),
      ...own,
    }));
    const made = planned({ ...base, parts: knobs });
    const [set, ...more] = made.patterns.filter((one) => one.for.startsWith('drilling'));
    if (!set) throw new Error('no templates');
    expect(more).toEqual([]);
    const [template, other] = templatesOn(set, base.pages.margin.left);
    expect(other).toBeUndefined();
    // 250 mm and half of an inch are 10.34 in, told in sixteenths; 700 mm up and half of an inch 28.06 in.
    expect(template?.told.filter((row) => row.startsWith('Knob'))).toEqual([
      'Knob 0: 10 5/16" across, 28 1/16" up',
      'Knob 1: 17 1/16" across, 28 1/16" up',
      'Knob 2: 23 3/4" across, 28 1/16" up',
    ]);
    const without = planned({
      ...base,
      parts: knobs,
      pages: { ...base.pages, also: ['story-sticks', 'parts'] },
    });
    const paper = ({ shopping }: typeof made) => shopping.find(({ kind }) => kind === 'paper')?.count ?? 0;
    expect(paper(made) - paper(without)).toBe(set.pages.length);
    expect(without.patterns.some((one) => one.for.startsWith('drilling'))).toBe(false);
  });

  it('are not made for hardware that brings its own screws', () => {
    const own = newPart('fitting', { id: 'a', name: 'Lamp', box: { x: 300, y: 700, w: 80, h: 80 } });
    expect(
      planned({ ...base, parts: [own] }).patterns.filter((one) => one.for.startsWith('drilling')),
    ).toEqual([]);
  });
});

describe('what is drilled for a screw', () => {
  const bit = (id: string) => {
    const screw = screws.find((one) => one.id === id);
    if (!screw) throw new Error(`no ${id}`);
    return bitFor(screw);
  };

  // Wood Handbook, text with Eq. 8-10: lead holes about 70 % of the root diameter in softwood, 90 % in hardwood; that root
  // is two thirds of the shank is from memory. Shanks by Table 8-9: 0.060 and 0.013 in for each number.
  it.each([6, 8, 10])('no. %d: a lead hole by the root of its thread', (number) => {
    const root = (inches(0.06 + 0.013 * number) * 2) / 3;
    expect(bit(`screw-${number}`)).toEqual({
      soft: expect.closeTo(0.7 * root, 1),
      hard: expect.closeTo(0.9 * root, 1),
    });
  });

  it('is a hole to pass through for a machine screw', () => {
    // A published chart of clearance holes: 11/64 in for no. 8. ISO 273, medium, from memory: 4.5 mm for M4.
    expect(bit('machine-8-32')).toEqual({ through: expect.closeTo(inches(11 / 64), 6) });
    expect(bit('machine-m4')).toEqual({ through: 4.5 });
  });
});
