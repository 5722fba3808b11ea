import type { Face } from '../../src/bed/face.ts';
import { faceOf } from '../../src/bed/faceOf.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part, Rule } from '../../src/design/schema.ts';
import type { Box } from '../../src/geometry/shape.ts';
import type { Layout } from '../../src/layout/laid.ts';
import { type LayoutInput, laidFrom, layOut } from '../../src/layout/layout.ts';
import type { Remembered } from '../../src/layout/remembered.ts';
import type { Stock } from '../../src/materials/types.ts';

/** Stock of round measures in millimeters, so that expected numbers can be done in the head. */
export const STOCKS: ReadonlyMap<string, Stock> = new Map<string, Stock>([
  [
    'lath',
    { form: 'flat', id: 'lath', name: 'Lath', material: 'pine', width: 40, thickness: 6, lengths: [] },
  ],
  [
    'board',
    { form: 'flat', id: 'board', name: 'Board', material: 'pine', width: 90, thickness: 19, lengths: [] },
  ],
  [
    'sheet',
    { form: 'sheet', id: 'sheet', name: 'Sheet', material: 'mdf', thickness: 12, grain: false, sizes: [] },
  ],
]);

export const at = (x: number, y: number, w: number, h: number): Box => ({ x, y, w, h });

export const panel = (id: string, box: Box) => newPart('panel', { id, name: id, box, stock: 'sheet' });
export const fitting = (id: string, box: Box) => newPart('fitting', { id, name: id, box });
export const strip = (id: string, box: Box, lie: 'across' | 'up' = 'up', stock = 'lath') => ({
  ...newPart('strip', { id, name: id, box, stock }),
  lie,
});
export const run = (id: string, box: Box) => newPart('run', { id, name: id, box, stock: 'lath' });

export const design = (parts: readonly Part[], rules: readonly Rule[] = []): Design => ({
  ...newDesign(),
  parts,
  rules,
});

/** A face that is one flat plane of the given size. */
export function plainFace(width = 1000, height = 2000): Face {
  const box = at(0, 0, width, height);
  const { face } = faceOf(newDesign().bed);
  const outer = [
    { x: 0, y: 0 },
    { x: width, y: 0 },
    { x: width, y: height },
    { x: 0, y: height },
  ];
  return {
    ...face,
    width,
    height,
    box,
    levels: [
      { id: 'skin', z: 0, box, inner: null, region: [{ outer, holes: [] }], behind: 12, material: 'plywood' },
    ],
  };
}

/** A rim 100 wide around a field 30 deep. */
export function recessedFace(width = 1000, height = 2000): Face {
  const plain = plainFace(width, height);
  const inner = at(100, 100, width - 200, height - 200);
  const hole = [
    { x: 100, y: 100 },
    { x: 100, y: height - 100 },
    { x: width - 100, y: height - 100 },
    { x: width - 100, y: 100 },
  ];
  const outer = plain.levels[0]?.region[0]?.outer ?? [];
  return {
    ...plain,
    levels: [
      {
        id: 'rim',
        z: 0,
        box: plain.box,
        inner,
        region: [{ outer, holes: [hole] }],
        behind: 140,
        material: 'spruce',
      },
      {
        id: 'field',
        z: -30,
        box: inner,
        inner: null,
        region: [{ outer: [...hole].reverse(), holes: [] }],
        behind: 12,
        material: 'plywood',
      },
    ],
  };
}

export const lay = (d: Design, more: Partial<LayoutInput> = {}): Layout =>
  layOut({ design: d, face: plainFace(), keepClears: [], stocks: STOCKS, ...more });

/** Lays out one input after the other, each from the one before. */
export function layingAgain(): (input: LayoutInput) => Layout {
  let last: Remembered | null = null;
  return (input) => {
    last = laidFrom(input, last);
    return last.layout;
  };
}

export function boxOfPart(layout: Layout, id: string): Box {
  const box = layout.boxes.get(id);
  if (!box) throw new Error(`no box for ${id}`);
  return box;
}

export const codes = (layout: Layout): string[] => layout.checks.map((check) => check.code);
