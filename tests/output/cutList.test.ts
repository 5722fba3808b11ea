import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design } from '../../src/design/schema.ts';
import { flatten } from '../../src/drawing/walk.ts';
import type { ShapedStock } from '../../src/materials/types.ts';
import type { Cell } from '../../src/output/csv/csv.ts';
import { cutListRows } from '../../src/output/csv/cutList.ts';
import { planJson } from '../../src/output/json/planJson.ts';
import { packetPages } from '../../src/output/packet/packet.ts';
import { EN } from '../../src/output/packet/words/en.ts';
import { planned } from '../plan/starters.ts';

const CROWN: ShapedStock = {
  form: 'shaped',
  id: 'crown',
  name: 'Crown',
  material: 'pine',
  width: 50,
  thickness: 39,
  girth: 70,
  section: [
    { x: 0, y: 0 },
    { x: 50, y: 0 },
    { x: 50, y: 39 },
  ],
  spring: 38,
  boardWidth: 63.5,
  lengths: [{ length: 2440, price: 9 }],
};

const FREE = { on: 'field', finish: null } as const;

function strip(id: string, lie: 'up' | 'across' | 'rising', x: number, y: number, w: number, h: number) {
  return { ...newPart('strip', { id, name: id, box: { x, y, w, h }, stock: 'pine-1x3' }), ...FREE, lie };
}

function run(id: string, stock: string, x: number, y: number, w: number, h: number) {
  return { ...newPart('run', { id, name: id, box: { x, y, w, h }, stock }), ...FREE };
}

/** A crossing, a frame with a brace of two cuts in its corners, a crown frame and an arch. */
const DESIGN: Design = {
  ...newDesign(),
  name: 'Cuts',
  measure: { unit: 'mm', fraction: '16', currency: '$' },
  stocks: [CROWN],
  parts: [
    strip('stile', 'up', 150, 100, 63.5, 600),
    strip('rail', 'across', 100, 300, 250, 63.5),
    { ...run('frame', 'panel-molding', 400, 100, 450, 400), corner: 'butt-up' },
    strip('brace', 'rising', 440, 140, 370, 320),
    run('crown', 'crown', 100, 800, 400, 300),
    {
      ...run('arch', 'pine-1x3', 550, 800, 300, 500),
      path: { form: 'arched', rise: 100, segments: 6 },
    },
  ],
};

const plan = planned(DESIGN);
const [head = [], ...rows] = cutListRows(plan);
const column = (name: string, row: readonly Cell[] | undefined): Cell | undefined =>
  row?.[head.indexOf(name)];
const rowOf = (part: string): readonly Cell[] | undefined =>
  rows.find((row) => row[0] === plan.joinery.pieces.find((p) => p.part === part)?.label);

/** Texts of the pages under a title; of all pages where sections run on behind each other. */
const textsOn = (title?: string): string[] =>
  packetPages(plan)
    .filter(({ drawing }) => title === undefined || drawing.title === title)
    .flatMap(({ drawing }) => flatten(drawing.items).texts.map((t) => t.item.text));

const words = { check: () => '', step: () => '' };

describe('halved pieces', () => {
  it('tell their notches in the table', () => {
    // The rail crosses 200 up the stile, the stile 50 along the rail; the stock is 19.05 thick (3/4 in).
    expect(column('notches', rowOf('stile'))).toBe('back 200-263.5, 9.525 deep');
    expect(column('notches', rowOf('rail'))).toBe('face 50-113.5, 9.525 deep');
    expect(column('notches', rowOf('crown'))).toBe('');
  });

  it('tell them in plan.json', () => {
    const { pieces } = JSON.parse(planJson(plan, words)) as {
      pieces: { part: string; notches: Record<string, unknown>[] }[];
    };
    const of = (part: string) => pieces.find((p) => p.part === part)?.notches;
    expect(of('stile')).toEqual([
      { from_mm: 200, to_mm: 263.5, depth_mm: 9.525, side: 'back', miter_deg: 0 },
    ]);
    expect(of('rail')).toEqual([{ from_mm: 50, to_mm: 113.5, depth_mm: 9.525, side: 'face', miter_deg: 0 }]);
    expect(of('crown')).toEqual([]);
  });

  it('tell them on the cut list, and are drawn', () => {
    const page = textsOn(EN.titles.cutList);
    const list = page.join(' ');
    expect(list).toContain('square; notched');
    const label = (part: string) => plan.joinery.pieces.find((p) => p.part === part)?.label;
    expect(list).toContain(`${label('stile')} back 200 263.5 9.5`);
    expect(list).toContain(`${label('rail')} face 50 113.5 9.5`);
    expect(list).toContain('keeps its face');
    expect(textsOn(EN.titles.pieces)).toContain('notch on the back 9.5 deep');
  });
});

describe('ends of two cuts', () => {
  const piece = plan.joinery.pieces.find((p) => p.part === 'brace');
  const [start] = piece?.ends ?? [];
  const tenth = (angle: number) => `${Math.abs(angle).toFixed(1)}°`;

  it('tell both in the table', () => {
    expect(start?.second).not.toBeNull();
    expect(column('left_end_miter_deg', rowOf('brace'))).toBeCloseTo(start?.miter ?? 0, 2);
    expect(column('left_end_second_miter_deg', rowOf('brace'))).toBeCloseTo(start?.second?.miter ?? 0, 2);
    expect(column('left_end_second_bevel_deg', rowOf('brace'))).toBe(0);
    expect(column('right_end_second_miter_deg', rowOf('brace'))).not.toBeNull();
    expect(column('left_end_second_miter_deg', rowOf('rail'))).toBeNull();
  });

  it('tell both on the cut list and beside the drawing', () => {
    const [upper, lower] = [tenth(start?.miter ?? 0), tenth(start?.second?.miter ?? 0)];
    expect(textsOn(EN.titles.cutList).join(' ')).toContain(`point, upper ${upper}, lower ${lower}`);
    expect(textsOn(EN.titles.pieces)).toEqual(expect.arrayContaining([upper, lower]));
  });
});

describe('sprung molding', () => {
  it('has its nested setting in the table, on the cut list and among the saw settings', () => {
    // A square frame corner is a plain miter of 45 degrees when it is nested.
    expect(Math.abs(Number(column('left_end_nested_miter_deg', rowOf('crown'))))).toBe(45);
    expect(column('left_end_nested_bevel_deg', rowOf('crown'))).toBe(0);
    expect(column('left_end_nested_miter_deg', rowOf('rail'))).toBeNull();
    expect(textsOn(EN.titles.cutList).join(' ')).toContain('nested 45°');
    const saw = textsOn();
    const after = saw.slice(saw.indexOf(EN.saw.nested));
    const row = after.indexOf('45°');
    const label = plan.joinery.pieces.filter((p) => p.part === 'crown').map((p) => p.label);
    expect(row).toBeGreaterThan(0);
    expect(after.slice(row, row + 4)).toEqual(['45°', '0°', '8', [...new Set(label)].sort().join(', ')]);
  });
});

describe('an arch', () => {
  it('tells the figures of its segments', () => {
    const [arch] = plan.joinery.arches.filter((one) => 'segments' in one);
    const page = textsOn(EN.titles.cutList);
    expect(page).toContain(EN.arches.title);
    // Over a span of 300 with a rise of 100 the radius is 300 * 300 / 800 + 50 = 162.5.
    expect(arch?.radius).toBeCloseTo(162.5, 9);
    const row = page.slice(page.lastIndexOf('arch'));
    expect(row[1]).toBe('162.5');
    expect(row[2]).toBe('6');
    expect(row[3]).toBe(`${arch?.miter.toFixed(1)}°`);
  });
});

describe('an end that stops square', () => {
  it('is called square, not angled', () => {
    const butts = plan.joinery.pieces.filter((p) => p.ends.some((e) => e.cut === 'butt' && e.miter === 0));
    expect(butts.map((p) => p.part)).toContain('frame');
    const list = textsOn(EN.titles.cutList).join(' ');
    expect(list).toContain('square');
    expect(list).not.toContain('angled butt');
  });
});

describe('boards', () => {
  it('go by one number in the packet and in the table', () => {
    const titles = textsOn().filter((words) => /^Board \d+:/.test(words));
    const numbers = titles.map((words) => Number(/^Board (\d+):/.exec(words)?.[1]));
    expect(new Set(plan.cutting.boards.map((b) => b.stock)).size).toBeGreaterThan(1);
    expect([...numbers].sort((a, b) => a - b)).toEqual(plan.cutting.boards.map((_, i) => i + 1));
    plan.cutting.boards.forEach((board, i) => {
      for (const cut of board.cuts) {
        const label = plan.joinery.pieces.find((p) => p.id === cut.piece)?.label;
        const from = String(rows.find((row) => row[0] === label)?.[head.indexOf('boards')]);
        expect(` ${from} `).toContain(` board ${i + 1} `);
      }
    });
  });
});

describe('rows of plan.json', () => {
  it('name the part of the design, of a row of strips the row', () => {
    const box = { x: 100, y: 100, w: 700, h: 500 };
    const battens = {
      ...newPart('array', { id: 'battens', name: 'Battens', box, stock: 'pine-1x3' }),
      ...FREE,
    };
    const p = planned({ ...DESIGN, parts: [battens] });
    expect(p.joinery.pieces.map((piece) => piece.part)).toContain('battens[1,0]');
    const { pieces } = JSON.parse(planJson(p, words)) as { pieces: { part: string; quantity: number }[] };
    expect(pieces.map(({ part, quantity }) => [part, quantity])).toEqual([['battens', 5]]);
  });
});
