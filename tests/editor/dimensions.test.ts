import { describe, expect, it } from 'vitest';
import { newDesign, newPart } from '../../src/design/defaults.ts';
import type { Design, Part, Rule, RuleOf } from '../../src/design/schema.ts';
import { shownFrom } from '../../src/editor/document/shown.ts';
import { dimensionsOf, withoutMeasured } from '../../src/editor/drawing/dimensions.ts';

const BOX = { x: 100, y: 200, w: 500, h: 300 };

function dimensions(parts: readonly Part[], rules: readonly Rule[], id: string) {
  const design: Design = { ...newDesign(), parts, rules };
  const shown = shownFrom(design);
  const box = shown.layout.boxes.get(id);
  if (!box) throw new Error(`no box for ${id}`);
  return dimensionsOf(shown, id, box);
}

describe('dimensions that open a field', () => {
  const array = newPart('array', { id: 'row', name: 'Row', box: BOX, stock: 'pine-1x3' });

  it('the gap of an array opens its spacing, though its first member is left out', () => {
    const parts = [{ ...array, overrides: { '0,0': { omit: true } } }];
    const gap = dimensions(parts, [], 'row').find((d) => d.role === 'gap');
    expect(gap?.edits).toEqual({ array: 'row' });
    // Five dressed 1 x 3 (2 1/2 in, PS 20) in 500 leave 182.5 for six gaps.
    expect((gap?.to ?? 0) - (gap?.from ?? 0)).toBeCloseTo((500 - 5 * 63.5) / 6, 9);
    const locked = dimensions([{ ...array, locked: true }], [], 'row').find((d) => d.role === 'gap');
    expect(locked?.edits).toBeNull();
  });

  it('the gaps of an even rule open what decides them, whatever its kind', () => {
    const parts = ['a', 'b', 'c'].map((id) => newPart('panel', { id, name: id, box: { ...BOX, w: 60 } }));
    const even = (more: Pick<RuleOf<'even'>, 'mode' | 'pitch' | 'most'>): Rule => ({
      id: 'even',
      kind: 'even',
      axis: 'x',
      parts: ['a', 'b', 'c'],
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
      ...more,
    });
    const edits = (rule: Rule) =>
      dimensions(parts, [rule], 'b')
        .filter((d) => d.role === 'gap')
        .map((d) => d.edits);
    expect(edits(even({ mode: 'centers', pitch: 200 }))).toEqual([{ rule: 'even' }, { rule: 'even' }]);
    expect(edits(even({ mode: 'most', most: 400 }))).toEqual([{ rule: 'even' }, { rule: 'even' }]);
    expect(edits(even({ mode: 'gaps' }))).toEqual([{ rule: 'even' }, { rule: 'even' }]);
  });

  it('a part that runs between two opens how far it is held back at that end', () => {
    const rule: Rule = {
      id: 'between',
      kind: 'between',
      axis: 'x',
      part: 'a',
      low: { of: 'face', side: 'low' },
      high: { of: 'face', side: 'high' },
      insetLow: 30,
      insetHigh: 40,
    };
    const found = dimensions([newPart('panel', { id: 'a', name: 'A', box: BOX })], [rule], 'a');
    expect(found.filter((d) => d.role === 'gap').map((d) => d.edits)).toEqual([
      { rule: 'between', measure: 'insetLow' },
      { rule: 'between', measure: 'insetHigh' },
    ]);
  });
});

it('a part in the hand shows a measure that will be held once, though guide and rule both have it', () => {
  const part = newPart('panel', { id: 'a', name: 'a', box: BOX });
  const rule: Rule = {
    id: 'set',
    kind: 'set',
    axis: 'x',
    edge: { of: 'a', side: 'low' },
    from: { of: 'face', side: 'low' },
    distance: 100,
  };
  const own = dimensions([part], [rule], 'a');
  const gap = (from: number, to: number) =>
    ({ kind: 'gap', axis: 'x', from, to, cross: 0, label: '' }) as const;
  const line = { kind: 'line', axis: 'x', at: 100, from: 0, to: 100 } as const;
  const other = gap(0, 600);
  expect(withoutMeasured([gap(0, 100), gap(100, 0), line, other], own)).toEqual([line, other]);
});
