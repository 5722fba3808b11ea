import { describe, expect, it } from 'vitest';
import type { CheckCode } from '../../src/check/codes.ts';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import { applyEdits } from '../../src/design/edit/edit.ts';
import type { Design, Part } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { mendsFor } from '../../src/editor/edit/mends.ts';
import { PLAN_MENDS } from '../../src/editor/edit/planMends.ts';
import { planned } from '../plan/starters.ts';

const box = (x: number, y: number, w: number, h: number) => ({ x, y, w, h });
const strip = (id: string, x: number, y: number, w: number) =>
  newPart('strip', { id, name: id, box: box(x, y, w, 38.1), stock: 'pine-1x2', finish: 'trim' });
const panel = (id: string, place: Part['box'], stock?: string) =>
  newPart('panel', { id, name: id, box: place, finish: 'trim', ...(stock ? { stock } : {}) });
const board = panel('board', box(300, 300, 400, 400), 'mdf-half');
const base: Design = { ...newDesign(), parts: [board] };
const withParts = (...parts: Part[]): Design => ({ ...base, parts: [...base.parts, ...parts] });
const fastened = (change: Partial<Design['fastening']>): Design => ({
  ...base,
  fastening: { ...base.fastening, ...change },
});
const plank = {
  form: 'flat',
  id: 'plank',
  name: 'Plank',
  material: 'pine',
  width: 140,
  thickness: 19,
  lengths: [{ length: 2400, price: 1 }],
} as const;

/** Faces of which the whole plan says each check that is mended by its code. */
const FACES: Readonly<Partial<Record<CheckCode, Design>>> = {
  'bed.legs': { ...base, bed: { ...base.bed, legs: { ...base.bed.legs, length: 100 } } },
  'fold.hits-side': {
    ...withParts(strip('wide', 700, 1000, 400)),
    bed: { ...base.bed, beside: { left: null, right: 20 } },
  },
  'fastening.through': fastened({ lengths: [90] }),
  'fastening.no-brad': fastened({ lengths: [12.7], bite: 12 }),
  'fastening.few': withParts(panel('small', box(450, 900, 14, 14), 'mdf-half')),
  'fastening.screws': fastened({ screwOver_kg: 0.2 }),
  'fastening.lever': {
    ...withParts({ ...strip('shelf', 200, 880, 600), stock: 'plank', onEdge: true }),
    stocks: [plank],
    fastening: { ...base.fastening, screwOver_kg: 2 },
  },
};

describe('a mend of what only the whole plan finds', () => {
  it('stands for every code of its table', () => {
    expect(Object.keys(FACES).sort()).toEqual(Object.keys(PLAN_MENDS).sort());
  });

  it.each(Object.entries(FACES))('leaves nothing of %s at its part, or makes it a note', (code, design) => {
    const found = planned(design).checks.filter((check) => check.code === code);
    const [check] = found;
    if (!check) throw new Error(`${code} does not come`);
    const [mend] = mendsFor(shownFrom(design), [check]);
    if (!mend) throw new Error(`${code} has no mend`);
    const done = applyEdits(design, mend.edits);
    if (!done.ok) throw new Error('refused');
    const left = planned(done.design).checks.filter(
      (one) => one.code === code && one.parts.join() === check.parts.join() && one.severity !== 'note',
    );
    expect(left).toEqual([]);
  });
});
